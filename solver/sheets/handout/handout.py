"""A week's document turned into the one value from which every format is written."""

from __future__ import annotations

from collections.abc import Mapping
from datetime import date, timedelta
from typing import Any

from setwright.catalogue.entries import Catalogue
from setwright.catalogue.faults import Fault, SetwrightError, UsageFault
from setwright.solver.brief.parsed_brief import ParsedBrief
from setwright.solver.evaluation.evaluated_week import EvaluatedWeek
from setwright.solver.evaluation.uncertainty import week_interval
from setwright.solver.rulebook import resolve
from setwright.solver.sheets.common.caution import CAUTION, CLEARANCE, clearance_needed
from setwright.solver.sheets.common.sanitise import one_line
from setwright.solver.sheets.document.planned import planned_of
from setwright.solver.sheets.document.redaction import open_part
from setwright.solver.sheets.document.week_reader import read_week
from setwright.solver.sheets.handout.coach import DEFAULT_COACH, Coach
from setwright.solver.sheets.handout.muscle_rows import asked_words, goal_words, muscle_names, muscle_rows
from setwright.solver.sheets.handout.reasons import reasons
from setwright.solver.sheets.handout.session_cards import exercise_name, session_of
from setwright.solver.sheets.handout.values import CardLine, Handout, MuscleRow, Session

__all__ = ["CardLine", "Handout", "MuscleRow", "Session", "handout_of"]
UNTITLED = "Training week"


def handout_of(
    document: Any,
    catalogue: Catalogue,
    coach: Coach = DEFAULT_COACH,
    start: date | None = None,
    where: str = "week",
    clearance_due: bool = True,
) -> Handout:
    """The handout of a week's document; raises UsageFault with every fault.

    While its client needs a clearance that is not recorded it raises SetwrightError, unless `clearance_due` is
    False: for a copy that stays with the coach.
    """
    parsed, week = read_week(document, catalogue, where)
    if clearance_due:
        refuse_uncleared(document, parsed, catalogue, where)
    evaluated = EvaluatedWeek(resolve(parsed.brief, catalogue), week)
    planned = planned_of(document, evaluated, where)
    brief, resolved, start = parsed.brief, evaluated.resolved, start or coach.start
    return Handout(
        title=one_line(open_part(document, catalogue)["brief"]["title"]) or UNTITLED,
        client=one_line(brief.client.code),
        week=f"{coach.words['week']} 1",
        goal=goal_words(resolved, coach),
        asked=asked_words(brief),
        sessions=tuple(session_of(evaluated, day, coach, planned) for day in resolved.days),
        muscles=muscle_rows(evaluated, coach),
        index=round(evaluated.stimulus, 1),
        interval=week_interval(evaluated),
        why=reasons(evaluated, planned.costs, muscle_names(catalogue, coach)),
        left_out=tuple(exercise_name(catalogue.exercises[e], coach) for e in brief.avoid if e in catalogue.exercises),
        caution=f"{CAUTION} {coach.caution}".strip(),
        review=review_day(start, coach),
        start=start,
        coach=coach,
        made_by=made_by_words(document),
        document=open_part(document, catalogue),
        any_order=brief.any_order,
    )


def refuse_uncleared(document: Mapping[str, Any], parsed: ParsedBrief, catalogue: Catalogue, where: str) -> None:
    """Raise while the week's client needs a clearance that is not recorded, or while nothing is said of it."""
    flag, brief = document.get("clearance_needed"), parsed.brief
    if not isinstance(flag, bool):
        said = f"got {flag!r}, expected true or false"
        raise UsageFault(Fault(f"{where}: clearance_needed", said, "name a week written with --json"))
    if clearance_needed(brief, catalogue) or (flag and brief.client.clearance is None):
        raise SetwrightError(Fault(where, "no sheet is written: a clearance is missing", f"{CLEARANCE} Plan it again"))


def review_day(start: date | None, coach: Coach) -> date | None:
    """When the coach looks at the plan again, where start and span are both said."""
    if start is None or coach.review_weeks is None:
        return None
    return start + timedelta(weeks=coach.review_weeks)


def made_by_words(document: Mapping[str, Any]) -> str:
    made = document.get("made_by")
    number = made.get("version") if isinstance(made, Mapping) else None
    return f"setwright {number}" if isinstance(number, str) else "setwright"
