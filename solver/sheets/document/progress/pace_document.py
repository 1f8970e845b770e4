"""A client's pace as JSON, `setwright.pace/1`, as models."""

from __future__ import annotations

from typing import Any, Literal

from pydantic import Field

from setwright.solver.brief.schema import Clock
from setwright.solver.sheets.common.json_values import rounded
from setwright.solver.sheets.document.week_fields import Many
from setwright.solver.sheets.document.week_fields import Part as Model
from setwright.solver.uses.pace.client_pace import Basis, ClientPace, NotEnough, Part


class PacePart(Model):
    """One part of the clock in seconds, with its 90 % interval and what the plan took it to be."""

    part: Part
    seconds: float
    low: float
    high: float
    planned: float
    intervals: int


class PaceRest(Model):
    """A rest that was asked for and the median of what was taken, in seconds."""

    asked: float
    taken: float
    intervals: int


class PaceCheck(Model):
    """Minutes taken less planned in sessions held back: on average, and without the sign, before and after."""

    fitted_on: int
    sessions: int
    error_before: float
    error_after: float
    distance_before: float
    distance_after: float


class PaceLacking(Model):
    """What is logged and what is needed, where too little is."""

    sessions_with_set_ends: int
    intervals: int
    sessions_with_minutes: int
    sessions_needed: int
    intervals_needed: int


class PaceDocument(Model):
    """A client's pace, or what is lacking to tell it; `clock` is the table of a brief, without what is unsaid."""

    # `schema` is a method of pydantic's models: the field has another name inside, and its own in JSON.
    schema_name: Literal["setwright.pace/1"] = Field(alias="schema", default="setwright.pace/1")
    lacking: PaceLacking | None = None
    basis: Basis | None = None
    sessions: int = 0
    intervals: int = 0
    left_out: int = 0
    parts: Many[PacePart] = ()
    untold: Many[Part] = ()
    rests: Many[PaceRest] = ()
    limited: Many[Part] = ()
    held_back: PaceCheck | None = None
    clock: Clock = Clock()


def pace_document(pace: ClientPace | NotEnough) -> dict[str, Any]:
    """The pace as JSON values."""
    document = _lacking(pace) if isinstance(pace, NotEnough) else _told(pace)
    found = document.model_dump(mode="json", by_alias=True)
    found["clock"] = document.clock.model_dump(mode="json", exclude_none=True)
    return found


def _lacking(pace: NotEnough) -> PaceDocument:
    return PaceDocument(lacking=PaceLacking.model_validate(pace, from_attributes=True))


def _told(pace: ClientPace) -> PaceDocument:
    parts = tuple(
        PacePart(
            part=part.part,
            seconds=rounded(part.value, 2),
            low=rounded(part.low, 2),
            high=rounded(part.high, 2),
            planned=rounded(part.planned, 2),
            intervals=part.intervals,
        )
        for part in pace.parts
    )
    rests = tuple(
        PaceRest(asked=rest.asked, taken=rounded(rest.taken, 1), intervals=rest.intervals) for rest in pace.rests
    )
    return PaceDocument(
        basis=pace.basis,
        sessions=pace.sessions,
        intervals=pace.intervals,
        left_out=pace.left_out,
        parts=parts,
        untold=pace.untold,
        rests=rests,
        limited=pace.limited,
        held_back=_check(pace),
        clock=pace.clock,
    )


def _check(pace: ClientPace) -> PaceCheck | None:
    found = pace.held_back
    if found is None:
        return None
    return PaceCheck(
        fitted_on=found.fitted_on,
        sessions=found.sessions,
        error_before=rounded(found.error_before, 2),
        error_after=rounded(found.error_after, 2),
        distance_before=rounded(found.distance_before, 2),
        distance_after=rounded(found.distance_after, 2),
    )
