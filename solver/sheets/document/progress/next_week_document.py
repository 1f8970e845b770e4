"""A week gone on with as JSON: next loads with what was done before, which lifts stand still, and estimated maxima."""

from __future__ import annotations

from typing import Any, Literal

from pydantic import Field

from setwright.solver.sheets.common.json_values import rounded
from setwright.solver.sheets.document.progress.next_document import IsoDay, NextDocument, NextLoad, load_part, next_line
from setwright.solver.sheets.document.week_fields import Many, Part
from setwright.solver.uses.progress.done_against_planned import SessionDone
from setwright.solver.uses.progress.maximum_course import MaximumEstimate
from setwright.solver.uses.progress.next_week import NextWeek, maximum_courses
from setwright.solver.uses.progress.stalls import Advice, Effort, SetsAdvice, Stall


class DoneSession(Part):
    """A logged session beside the planned day it was, counted from 1; null where it is none of the week's."""

    on: IsoDay
    day: int | None
    sets: float
    sets_planned: int
    reps: int
    reps_planned: Many[int]
    """The fewest and the most of all planned sets together."""
    load: float | None
    """Load times repetitions of all sets that say both."""
    minutes: float | None
    minutes_planned: float | None


class DoneMuscle(Part):
    """A muscle's weekly sets, done and planned, in the week from a Monday."""

    week: IsoDay
    muscle: str
    sets: float
    sets_planned: float


class EstimatedMaximum(Part):
    """What the best set of a session says of a lift's maximum."""

    on: IsoDay
    value: float
    low: float
    high: float


class StalledLift(Part):
    """A lift that stands still, with what to try, in order."""

    exercise: str
    since: IsoDay
    until: IsoDay
    sessions: int
    rise: float
    effort: Effort
    advice: Many[Advice]
    back_to: NextLoad | None
    others: Many[str]
    sets: SetsAdvice


class NextWeekDocument(NextDocument):
    """Next targets, and what they rest on; `week` and `kind` are the week's place in the block."""

    week: int | None = None
    kind: Literal["build", "lighter", "return", "minimum", "travel", "short"] | None = None
    done: Many[DoneSession] = ()
    muscles: Many[DoneMuscle] = ()
    stalls: Many[StalledLift] = ()
    maxima: dict[str, Many[EstimatedMaximum]] = Field(default_factory=dict)


def next_week_document(found: NextWeek) -> dict[str, Any]:
    """A week gone on with as JSON values."""
    kind: Any = found.week.kind
    return NextWeekDocument(
        on=found.on.isoformat(),
        unit=found.evaluated.resolved.brief.client.unit,
        lines=tuple(next_line(target, found.evaluated) for target in found.targets),
        week=found.week.number,
        kind=kind,
        done=tuple(_session(one) for one in found.done),
        muscles=tuple(
            DoneMuscle(
                week=one.week.isoformat(),
                muscle=one.muscle,
                sets=rounded(one.sets),
                sets_planned=rounded(one.planned_sets),
            )
            for one in found.muscles
        ),
        stalls=tuple(_stall(one) for one in found.stalls),
        maxima={lift: tuple(_maximum(one) for one in course) for lift, course in maximum_courses(found).items()},
    ).model_dump(mode="json", by_alias=True)


def _session(done: SessionDone) -> DoneSession:
    loads = [line.load for line in done.lines if line.load is not None]
    low, high = (sum(line.planned_reps[end] for line in done.lines) for end in (0, 1))
    return DoneSession(
        on=done.on.isoformat(),
        day=None if done.day is None else done.day + 1,
        sets=rounded(done.sets),
        sets_planned=done.planned_sets,
        reps=sum(line.reps for line in done.lines),
        reps_planned=(low, high),
        load=rounded(sum(loads)) if loads else None,
        minutes=None if done.minutes is None else rounded(done.minutes, 1),
        minutes_planned=None if done.planned_minutes is None else rounded(done.planned_minutes, 1),
    )


def _maximum(one: MaximumEstimate) -> EstimatedMaximum:
    value, low, high = (rounded(part, 1) for part in (one.value, one.low, one.high))
    return EstimatedMaximum(on=one.on.isoformat(), value=value, low=low, high=high)


def _stall(stall: Stall) -> StalledLift:
    return StalledLift(
        exercise=stall.exercise,
        since=stall.since.isoformat(),
        until=stall.until.isoformat(),
        sessions=len(stall.course),
        rise=rounded(stall.rise),
        effort=stall.effort,
        advice=stall.advice,
        back_to=None if stall.back_to is None else load_part(stall.back_to),
        others=stall.others,
        sets=stall.sets,
    )
