"""What a coach asks of a week, solved anew for an answer, as a task of a search process."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from types import MappingProxyType
from typing import Any, Final

from setwright.catalogue.entries import Catalogue
from setwright.solver.auditing import Audit, audit
from setwright.solver.brief.lifts.named import exercise_named
from setwright.solver.desk.searches.task import Telling
from setwright.solver.planning import Unsolved
from setwright.solver.rulebook import resolve
from setwright.solver.search.limits import DEFAULT, SEARCHES, Limits
from setwright.solver.sheets.common.words import day_name
from setwright.solver.sheets.document.week_reader import read_week
from setwright.solver.sheets.screen.addresses import line_at
from setwright.solver.sheets.screen.explain.answers import unsolved_document, unsolved_words
from setwright.solver.sheets.screen.explain.more_minutes import SCHEMA as MINUTES
from setwright.solver.sheets.screen.explain.more_minutes import minutes_document, minutes_text
from setwright.solver.sheets.screen.explain.why import why_document
from setwright.solver.sheets.screen.explain.with_exercise import with_document, with_text
from setwright.solver.sheets.screen.explain.without_line import without_document, without_text
from setwright.solver.uses.explain.bottlenecks import bottlenecks_of
from setwright.solver.uses.explain.reasons import reason_of
from setwright.solver.uses.explain.what_if import more_minutes, solved_with, solved_without

WIDTH: Final = 100
Answer = tuple[dict[str, Any], str]
"""The command's own document, and its text."""


def answer(arguments: Mapping[str, Any], catalogue: Catalogue, telling: Telling) -> Mapping[str, Any]:
    """The document that answers `question` (below, without, with, minutes) with `value` of the week of `document`.

    It has the answer's text besides, as the command prints it. Raises UsageFault.
    """
    parsed, week = read_week(arguments["document"], catalogue)
    found = audit(resolve(parsed.brief, catalogue), week)
    limits = SEARCHES[arguments.get("search", DEFAULT)]
    document, text = QUESTIONS[arguments["question"]](found, str(arguments["value"]), limits, telling)
    return {**document, "text": text}


def _below(found: Audit, value: str, limits: Limits, telling: Telling) -> Answer:
    """What keeps each muscle below its band."""
    document = why_document(found, tuple(reason_of(found, x) for x in found.evaluated.lines), bottlenecks_of(found))
    return document, "\n\n".join(one["sentence"] for one in document["below"])


def _without(found: Audit, value: str, limits: Limits, telling: Telling) -> Answer:
    """A line's exercise left out and the week solved anew."""
    line = line_at(found.evaluated, value)
    rows = [(reason_of(found, line), solved_without(found, line, limits, telling.stopped))]
    return without_document(rows), without_text(rows, WIDTH)


def _with(found: Audit, value: str, limits: Limits, telling: Telling) -> Answer:
    """The best week that holds an exercise."""
    exercise = exercise_named(value, found.evaluated.resolved.catalogue)
    days = tuple(day_name(line.day) for line in found.evaluated.lines if line.exercise.id == exercise.id)
    end = solved_with(found, exercise, limits, telling.stopped)
    return with_document(exercise, end, days), with_text(exercise, end, days, WIDTH)


def _minutes(found: Audit, value: str, limits: Limits, telling: Telling) -> Answer:
    """More minutes on each day in turn."""
    end = more_minutes(found, int(value), limits, telling.stopped)
    if isinstance(end, Unsolved):
        return unsolved_document(MINUTES, end), unsolved_words(end)
    return minutes_document(end), minutes_text(end, WIDTH)


QUESTIONS: Final[Mapping[str, Callable[[Audit, str, Limits, Telling], Answer]]] = MappingProxyType(
    {"below": _below, "without": _without, "with": _with, "minutes": _minutes}
)
