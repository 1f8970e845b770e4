"""A season solved once: a year of two short sessions with a summer of less time, and days off."""

from __future__ import annotations

from collections.abc import Sequence
from datetime import date
from io import StringIO

import pytest

from setwright.catalogue.load import load_catalogue
from setwright.solver.brief.file import read_brief
from setwright.solver.rulebook import RULES
from setwright.solver.uses.season.season import Season
from setwright.solver.uses.season.season_search import season_of
from setwright.solver.uses.season.season_weeks import CalendarRow, weeks_of
from setwright.solver.uses.season.turns import turns_of

START = date(2026, 1, 5)
ROWS = (CalendarRow(date(2026, 4, 6), date(2026, 4, 19), 0, 0), CalendarRow(date(2026, 6, 1), date(2026, 7, 5), 2, 24))


def season(phrase: str, words: Sequence[str], count: int, rows: Sequence[CalendarRow] = ()) -> Season:
    """The season of a phrase."""
    catalogue = load_catalogue()
    parsed = read_brief(phrase, catalogue, StringIO(), tuple(RULES))
    weeks = weeks_of(parsed.brief, START, count, rows)
    return season_of(parsed, weeks, turns_of(parsed.brief, words, catalogue), (4, 7), catalogue)


@pytest.fixture(scope="session")
def short_sessions() -> Season:
    """30 weeks of two sessions of 30 minutes."""
    return season("2 days x 30 min, hold calves", ("delts", "quads"), 30, ROWS)
