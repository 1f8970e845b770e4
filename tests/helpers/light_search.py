"""A search of little work, for tests that ask what a search does and not how good its week is."""

from __future__ import annotations

from collections.abc import Iterator
from contextlib import contextmanager
from dataclasses import replace
from typing import Final

import pytest

from setwright.solver.search import limits
from setwright.solver.search.limits import SEARCHES, Limits

LIGHT: Final[Limits] = replace(
    SEARCHES["quick"], first_work=0.2, columns=50, short_times=1.0, fixing_nodes=0, fixing_columns=0
)
"""A quick search of less work for the first week, fewer columns open, and no branching on what is left open."""
LITTLE: Final[Limits] = replace(LIGHT, rounds=1, work=0.05, columns=25, nodes=0, pattern_nodes=0)
"""A first week, made better once by little work, and a bound that stays at the relaxation."""


@contextmanager
def little_searches() -> Iterator[None]:
    """While it lasts, every named search of this process does as little as that: for tests of what a command does."""
    with pytest.MonkeyPatch.context() as patch:
        for name in SEARCHES:
            patch.setitem(limits._NAMED, name, replace(LITTLE, name=name))
        yield
