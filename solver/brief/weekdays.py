"""The weekdays on which a brief trains."""

from __future__ import annotations

from setwright.solver.brief.defaults import SPREAD
from setwright.solver.brief.schema import Brief


def weekdays_of(brief: Brief) -> tuple[str, ...]:
    """The weekday of each day in the brief's order: its own, or that of the usual spread of so many days."""
    return tuple(day.weekday or spread for day, spread in zip(brief.days, SPREAD[len(brief.days)], strict=True))
