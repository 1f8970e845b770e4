"""Small random briefs held against all that should agree on them; `python -m tests.bench.wide` has two hundred."""

from __future__ import annotations

import pytest
from crossing import crossed
from drawn import SMALL, drawn

from setwright.catalogue.load import load_catalogue

CATALOGUE = load_catalogue()
CHEAP = (1, 6, 11, 15, 19)
"""Seeds whose briefs are done in a second or two; the others are run with the slow tests."""
SEEDS = [seed if seed in CHEAP else pytest.param(seed, marks=pytest.mark.slow) for seed in range(SMALL)]


@pytest.mark.parametrize("seed", SEEDS)
def test_search_engines_audit_and_sheets_agree(seed: int) -> None:
    found = crossed(drawn(seed, CATALOGUE), CATALOGUE)
    assert not found.faults
    assert found.ended in ("solved", "clash")
