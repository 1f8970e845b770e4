"""A block of a season in the words of a brief's phrase."""

from __future__ import annotations

from collections.abc import Sequence

from setwright.catalogue.entries import Catalogue
from setwright.solver.brief.defaults import SPREAD
from setwright.solver.brief.schema import DayAsk
from setwright.solver.sheets.common.words import counted, listed, muscle_name
from setwright.solver.uses.season.season import SeasonBlock


def block_words(block: SeasonBlock, catalogue: Catalogue) -> str:
    """Days, minutes and emphases of a block as a phrase says them: 3 days x 40 min, grow quads, hold calves."""
    parts = [days_words(block.days)]
    for verb, muscles in (("grow", block.specialised), ("hold", block.held)):
        if muscles:
            parts.append(f"{verb} {listed(muscle_name(catalogue, m) for m in muscles)}")
    return ", ".join(parts)


def days_words(days: Sequence[DayAsk]) -> str:
    """3 days x 40 min where the days are alike and usual for their number, else each by its weekday."""
    weekdays = tuple(day.weekday or "" for day in days)
    minutes = {day.minutes for day in days}
    if len(minutes) > 1:
        return ", ".join(f"{day.weekday} {day.minutes}" for day in days)
    if weekdays == SPREAD[len(days)]:
        return f"{counted(len(days), 'day')} x {days[0].minutes} min"
    return f"{' '.join(weekdays)} {days[0].minutes} min"
