"""Next loads as JSON, `setwright.next/1`, as models: what is written and what may be read."""

from __future__ import annotations

from collections.abc import Sequence
from datetime import date
from typing import Annotated, Any, Literal

from pydantic import Field

from setwright.solver.brief.schema import Unit, Weekday
from setwright.solver.evaluation.evaluated_week import EvaluatedWeek
from setwright.solver.sheets.common.json_values import rounded
from setwright.solver.sheets.document.week_fields import Many, Part, Repetitions, RepRange, Rir, Sets
from setwright.solver.uses.loads.buildable import Built
from setwright.solver.uses.progress.exposure import Exposure
from setwright.solver.uses.progress.next_targets import NextTarget
from setwright.solver.uses.progress.reason import Reason, Why

IsoDay = Annotated[str, Field(pattern=r"^\d{4}-\d{2}-\d{2}$")]


class NextLoad(Part):
    """A load that can be built, and for a bar the plates of one end."""

    load: float
    plates_a_side: Many[float] = ()


class NextReason(Part):
    """Why, with the sessions that decided and the amounts; shares are parts of one."""

    why: Why
    sessions: Many[IsoDay] = ()
    by_reps_alone: bool = False
    step_share: float | None = None
    reps_needed: int | None = None
    nothing_lighter: bool = False
    days: int | None = None


class LastTime(Part):
    """The session that a target goes on from: the sets with its working load."""

    on: IsoDay
    load: float | None
    reps: Many[int]
    left: Many[int | None]
    easier_sets: int = 0


class NextLine(Part):
    """One line of the week: what to do next time; `day` is counted from 1, `aims` are repetitions of each set."""

    day: Annotated[int, Field(ge=1)]
    weekday: Weekday | None = None
    exercise: str
    name: str = ""
    sets: Sets
    reps: RepRange
    rir: Rir
    aims: Many[Repetitions]
    load: NextLoad | None
    reason: NextReason
    last: LastTime | None


class NextDocument(Part):
    """The next target of every line of a week, with every load in `unit`."""

    # `schema` is a method of pydantic's models: the field has another name inside, and its own in JSON.
    schema_name: Literal["setwright.next/1"] = Field(alias="schema", default="setwright.next/1")
    on: IsoDay
    unit: Unit
    lines: Many[NextLine]


def next_document(targets: Sequence[NextTarget], evaluated: EvaluatedWeek, unit: Unit, on: date) -> dict[str, Any]:
    """The targets as JSON values, in the week's order."""
    lines = tuple(next_line(target, evaluated) for target in targets)
    return NextDocument(on=on.isoformat(), unit=unit, lines=lines).model_dump(mode="json", by_alias=True)


def next_line(target: NextTarget, evaluated: EvaluatedWeek) -> NextLine:
    """One target as a line of the document."""
    weekday: Any = evaluated.resolved.days[target.day].weekday
    return NextLine(
        day=target.day + 1,
        weekday=weekday,
        exercise=target.exercise,
        name=evaluated.resolved.catalogue.exercises[target.exercise].name,
        sets=target.sets,
        reps=target.reps,
        rir=target.rir,
        aims=target.aims,
        load=None if target.load is None else load_part(target.load),
        reason=_reason(target.reason),
        last=None if target.last is None else _last(target.last),
    )


def load_part(built: Built) -> NextLoad:
    """A load that can be built as the document has it."""
    return NextLoad(load=built.load, plates_a_side=built.plates)


def _reason(reason: Reason) -> NextReason:
    return NextReason(
        why=reason.why,
        sessions=tuple(on.isoformat() for on in reason.sessions),
        by_reps_alone=reason.by_reps_alone,
        step_share=None if reason.step is None else rounded(reason.step),
        reps_needed=reason.reps_needed,
        nothing_lighter=reason.nothing_lighter,
        days=reason.days,
    )


def _last(last: Exposure) -> LastTime:
    return LastTime(
        on=last.on.isoformat(), load=last.load, reps=last.reps, left=last.rirs, easier_sets=last.easier_sets
    )
