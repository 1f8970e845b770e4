"""Twenty small random briefs held against all that should agree on them; `python -m tests.bench.wide` has 200."""

from __future__ import annotations

import pytest
from crossing import crossed
from drawn import SMALL, drawn

from setwright.catalogue.load import load_catalogue

CATALOGUE = load_catalogue()


@pytest.mark.parametrize("seed", range(SMALL))
def test_search_engines_audit_and_sheets_agree(seed: int) -> None:
    found = crossed(drawn(seed, CATALOGUE), CATALOGUE)
    assert not found.faults
    assert found.ended in ("solved", "clash")
