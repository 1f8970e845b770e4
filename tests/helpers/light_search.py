"""A search of little work, for tests that ask what a search does and not how good its week is."""

from __future__ import annotations

from dataclasses import replace
from typing import Final

from setwright.solver.search.limits import SEARCHES, Limits

LIGHT: Final[Limits] = replace(
    SEARCHES["quick"], first_work=0.2, columns=50, short_times=1.0, fixing_nodes=0, fixing_columns=0
)
"""A quick search of less work for the first week, fewer columns open, and no branching on what is left open."""
