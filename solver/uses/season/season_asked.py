"""What is asked of a season, read as values: its weeks by date, and the turns of its muscles."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from datetime import date

from setwright.catalogue.entries import Catalogue
from setwright.catalogue.faults import Fault, UsageFault
from setwright.solver.brief.schema import Brief
from setwright.solver.uses.season.block_spans import checked_spans
from setwright.solver.uses.season.season_weeks import CalendarRow, SeasonWeek, weeks_of
from setwright.solver.uses.season.turns import turns_of


@dataclass(frozen=True)
class SeasonAsked:
    """The weeks of a season with their sessions, the muscles that take turns, and how long a block may be."""

    weeks: tuple[SeasonWeek, ...]
    turns: Mapping[str, int]
    block_weeks: tuple[int, int]


def season_asked(
    brief: Brief,
    start: date,
    count: int,
    block_weeks: tuple[int, int],
    rows: Sequence[CalendarRow],
    words: Sequence[str],
    catalogue: Catalogue,
) -> SeasonAsked:
    """A season of so many weeks from a day on; raises UsageFault with the faults of turns and blocks together."""
    weeks, faults = weeks_of(brief, start, count, rows), list[Fault]()
    turns: Mapping[str, int] = {}
    try:
        turns = turns_of(brief, words, catalogue)
    except UsageFault as error:
        faults += error.faults
    try:
        checked_spans(weeks, block_weeks, catalogue.defaults.block.lighter_sets)
    except UsageFault as error:
        faults += error.faults
    if faults:
        raise UsageFault(faults)
    return SeasonAsked(weeks, dict(turns), block_weeks)
