"""Fixed weeks for the sheets: built by hand, never by the solver."""

from __future__ import annotations

from collections.abc import Callable

import pytest

from setwright.catalogue.entries import Catalogue
from setwright.catalogue.load import load_catalogue
from setwright.solver.auditing import audit
from setwright.solver.brief.file import parse_phrase
from setwright.solver.brief.parsed_brief import ParsedBrief
from setwright.solver.evaluation.finding import UNITS
from setwright.solver.evaluation.prescriptions import reps_of, rir_of
from setwright.solver.evaluation.week import Entry, Week
from setwright.solver.planning import Solved
from setwright.solver.rulebook import resolve
from setwright.solver.search.limits import SEARCHES

Row = tuple[str, int, int] | tuple[str, int, int, str, int] | tuple[str, int, int, str]
"""(exercise, sets, rest), then (technique, drops) or the partner of a pair."""

PHRASE = "mon thu 40 min, grow delts, with pairs, commercial gym"
DAYS: tuple[tuple[Row, ...], ...] = (
    (
        ("barbell-back-squat", 3, 120),
        ("dumbbell-bench-press", 3, 90),
        ("cable-face-pull", 3, 60, "drop", 2),
        ("dumbbell-side-raise", 2, 60, "dumbbell-curl"),
        ("dumbbell-curl", 2, 60, "dumbbell-side-raise"),
    ),
    (
        ("barbell-romanian-deadlift", 3, 120),
        ("wide-grip-pulldown", 3, 90),
        ("machine-reverse-fly", 2, 60),
        ("machine-side-raise", 2, 60, "rest-pause", 0),
        ("one-arm-dumbbell-row", 2, 60),
    ),
)


@pytest.fixture(scope="session")
def catalogue() -> Catalogue:
    return load_catalogue()


@pytest.fixture(scope="session")
def solved_as(catalogue: Catalogue) -> Callable[..., Solved]:
    """A week of these rows as a solved one, its bound half a point above the score."""

    def build(
        phrase: str = PHRASE,
        days: tuple[tuple[Row, ...], ...] = DAYS,
        ended_by: str = "work limit",
        above: int = UNITS // 2,
        parsed: ParsedBrief | None = None,
    ) -> Solved:
        parsed = parsed or parse_phrase(phrase, catalogue)
        resolved = resolve(parsed.brief, catalogue)

        def entry(row: Row, day: int) -> Entry:
            exercise = catalogue.exercises[row[0]]
            reps, rir = reps_of(resolved, exercise, resolved.days[day]), rir_of(resolved, exercise)
            technique, drops = (row[3], row[4]) if len(row) == 5 else ("straight", 0)
            return Entry(row[0], row[1], reps, rir, row[2], technique, drops, row[3] if len(row) == 4 else None)

        week = Week(tuple(tuple(entry(row, day) for row in rows) for day, rows in enumerate(days)))
        found = audit(resolved, week)
        return Solved(parsed, resolved, found, found.score_units + above, ended_by, SEARCHES["quick"])

    return build


@pytest.fixture(scope="session")
def solved(solved_as: Callable[..., Solved]) -> Solved:
    """The fixed week of two days."""
    return solved_as()
