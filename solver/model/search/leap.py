"""The leap: HiGHS on all days at once finds a better start; short weeks by branching, longer ones at the root."""

from __future__ import annotations

import time

from setwright.solver.model.build import day_sheet
from setwright.solver.model.engines import highs
from setwright.solver.model.limits import SHORT_DAYS
from setwright.solver.model.search.climb import Climb

COLUMNS = 320
"""Columns of a longer week that HiGHS sees: with more, its root alone takes over ten seconds."""


def leap(climb: Climb) -> None:
    """Take HiGHS's week after so many nodes if it is better than the climb's; the climb's week is no start for it."""
    days = len(climb.board.terms.days)
    short = days <= SHORT_DAYS
    nodes = climb.limits.short_leap_nodes if short else climb.limits.leap_nodes
    if not nodes:
        return
    ranked = climb.candidates.ranked
    kept = sorted({j for day in ranked for j in (day if short else day[: COLUMNS // days])} | climb.candidates.must)
    sheet = day_sheet(climb.board, [climb.candidates.columns[j] for j in kept])
    left = max(0.1, climb.until - time.monotonic())
    found = highs.bound(sheet, nodes, left, None, climb.stopped)
    if found.amounts is not None and climb.take(
        frozenset(j for j, amount in zip(kept, found.amounts, strict=True) if amount > 0.5)
    ):
        climb.closed.clear()
