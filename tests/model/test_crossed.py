"""Twenty random briefs through every engine and back from paper; `python -m tests.bench.cross` has two hundred."""

from __future__ import annotations

import pytest
from crossed import crossed

SEEDS = range(20)


@pytest.mark.parametrize("seed", SEEDS)
def test_every_look_at_a_random_brief_agrees(seed: int) -> None:
    assert crossed(seed).wrong == ()
