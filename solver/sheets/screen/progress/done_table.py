"""What was done beside what was planned: a row a session, and weekly sets of each muscle."""

from __future__ import annotations

from collections.abc import Sequence

from setwright.solver.evaluation.evaluated_week import EvaluatedWeek
from setwright.solver.sheets.common.grid import grid
from setwright.solver.sheets.common.words import day_name, page_width, span, wrapped
from setwright.solver.sheets.screen.progress.amounts import day_month
from setwright.solver.uses.progress.done_against_planned import MuscleDone, SessionDone

WHAT_COLUMNS_ARE = (
    "Done / planned. Load: load times repetitions of all sets, as far as every set says its load. Sets: a side that is "
    "logged by itself is half a set."
)
WHAT_SETS_ARE = "Weekly sets, done / planned: 1 where a muscle is trained directly, 1/2 where indirectly."


HEADINGS = ["Date", "Session", "Sets", "Reps", "Load", "Minutes"]


def sessions_text(sessions: Sequence[SessionDone], evaluated: EvaluatedWeek, unit: str, width: int = 100) -> str:
    """A row for each session: sets, repetitions, load and minutes, done against planned."""
    rows = [session_row(session, evaluated, unit) for session in sessions]
    table = grid(HEADINGS, rows, "llrrrr")
    return "\n".join([*table, *wrapped(WHAT_COLUMNS_ARE, page_width(width))]) + "\n"


def session_row(session: SessionDone, evaluated: EvaluatedWeek, unit: str) -> list[str]:
    """One session: its date, its day, then done / planned."""
    low = sum(line.planned_reps[0] for line in session.lines)
    high = sum(line.planned_reps[1] for line in session.lines)
    loads = [line.load for line in session.lines if line.load is not None]
    minutes = "-" if session.minutes is None else f"{session.minutes:.0f}"
    planned = "-" if session.planned_minutes is None else f"{session.planned_minutes:.0f}"
    return [
        day_month(session.on),
        "none of the week" if session.day is None else day_name(evaluated.resolved.days[session.day]),
        f"{session.sets:g} / {session.planned_sets}",
        f"{sum(line.reps for line in session.lines)} / {span(low, high)}",
        f"{sum(loads):,.0f} {unit}" if loads else "-",
        f"{minutes} / {planned}",
    ]


def muscles_text(muscles: Sequence[MuscleDone], evaluated: EvaluatedWeek, width: int = 100) -> str:
    """A row for each muscle, a column for each calendar week."""
    weeks = sorted({one.week for one in muscles})
    known = {(one.week, one.muscle): one for one in muscles}
    names = evaluated.resolved.catalogue.muscles
    rows = []
    for muscle in dict.fromkeys(one.muscle for one in muscles):
        cells = [known.get((week, muscle)) for week in weeks]
        rows.append(
            [names[muscle].name, *("" if one is None else f"{one.sets:g} / {one.planned_sets:g}" for one in cells)]
        )
    headings = ["Muscle", *(f"From {day_month(week)}" for week in weeks)]
    table = grid(headings, rows, "l" + "r" * len(weeks))
    return "\n".join([*table, *wrapped(WHAT_SETS_ARE, page_width(width))]) + "\n"
