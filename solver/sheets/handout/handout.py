"""A week's document turned into the one value from which every format is written."""

from __future__ import annotations

from collections.abc import Mapping
from datetime import date, timedelta
from typing import Any

from setwright.catalogue.entries import Catalogue
from setwright.catalogue.faults import Fault, SetwrightError, UsageFault
from setwright.solver.brief.parsed_brief import raw_of
from setwright.solver.brief.schema import Brief
from setwright.solver.evaluation.evaluated_week import EvaluatedWeek
from setwright.solver.evaluation.resolved_brief import ResolvedBrief
from setwright.solver.evaluation.uncertainty import week_interval
from setwright.solver.rulebook import resolve
from setwright.solver.sheets.common.caution import CAUTION, CLEARANCE, clearance_needed
from setwright.solver.sheets.common.loads.load_words import notes_on_loads
from setwright.solver.sheets.common.sanitise import one_line
from setwright.solver.sheets.document.own_figures import foreign_figures
from setwright.solver.sheets.document.redaction import redacted
from setwright.solver.sheets.document.week_model import WeekDocument
from setwright.solver.sheets.document.week_reader import WRITE_ONE, read_document
from setwright.solver.sheets.handout.coach import DEFAULT_COACH, Coach
from setwright.solver.sheets.handout.muscle_words import asked_words, goal_words, muscle_names, muscle_rows
from setwright.solver.sheets.handout.reasons import why_this_week
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
    resolved: ResolvedBrief | None = None,
) -> Handout:
    """The handout of a week's document; raises UsageFault with every fault.

    `resolved` is its brief as it was resolved, where that is at hand.

    While its client needs a clearance that is not recorded it raises SetwrightError, unless `clearance_due` is
    False: for a copy that stays with the coach.
    """
    read = read_document(document, catalogue, where)
    brief, said = read.parsed.brief, read.document
    if clearance_due:
        _refuse_uncleared(said, brief, catalogue, where)
    evaluated = EvaluatedWeek(resolved or resolve(brief, catalogue), read.week)
    faults = foreign_figures(said, evaluated, where)
    if faults:
        raise UsageFault(faults)
    resolved, start, open_part = evaluated.resolved, start or coach.start, redacted(document, brief, catalogue)
    return Handout(
        title=one_line(open_part["brief"]["title"]) or UNTITLED,
        client=one_line(brief.client.code),
        week=f"{coach.words['week']} 1",
        goal=goal_words(resolved, coach),
        asked=asked_words(brief),
        sessions=tuple(session_of(evaluated, day, coach, said.days[day.index]) for day in resolved.days),
        muscles=muscle_rows(evaluated, coach),
        index=round(evaluated.stimulus, 1),
        interval=week_interval(evaluated),
        why=why_this_week(evaluated, {row.rule: row.cost for row in said.costs}, muscle_names(catalogue, coach)),
        left_out=tuple(exercise_name(catalogue.exercises[e], coach) for e in brief.avoid if e in catalogue.exercises),
        caution=f"{CAUTION} {coach.caution}".strip(),
        review=_review_day(start, coach),
        start=start,
        coach=coach,
        made_by=f"setwright {said.made_by.version}".strip(),
        document=open_part,
        any_order=brief.any_order,
        on_loads=() if brief.lifts is None else notes_on_loads(line.load for day in said.days for line in day.entries),
    )


def private_document(document: Mapping[str, Any], brief: Brief) -> dict[str, Any]:
    """A week's document with the brief that it was planned by, health notes included, by which its figures are
    checked; the handout takes them out again."""
    return {**document, "brief": raw_of(brief), "private_left_out": False}


def _refuse_uncleared(said: WeekDocument, brief: Brief, catalogue: Catalogue, where: str) -> None:
    """Raise while the week's client needs a clearance that is not recorded, or while nothing is said of it."""
    if "clearance_needed" not in said.model_fields_set:
        fault = Fault(f"{where}: clearance_needed", "is missing, expected true or false", WRITE_ONE)
        raise UsageFault(fault)
    if clearance_needed(brief, catalogue) or (said.clearance_needed and brief.client.clearance is None):
        raise SetwrightError(Fault(where, "no sheet is written: a clearance is missing", f"{CLEARANCE} Plan it again"))


def _review_day(start: date | None, coach: Coach) -> date | None:
    """When the coach looks at the plan again, where start and span are both said."""
    if start is None or coach.review_weeks is None:
        return None
    return start + timedelta(weeks=coach.review_weeks)
