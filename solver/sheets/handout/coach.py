"""`coach.toml`: whose letterhead the sheets carry, which words they use, and what they fall back on."""

from __future__ import annotations

import tomllib
from collections.abc import Mapping
from datetime import time
from typing import Annotated, Any, Final

from pydantic import BaseModel, ConfigDict, Field, ValidationError

from setwright.catalogue.entries import Catalogue
from setwright.catalogue.faults import Fault, UsageFault
from setwright.solver.brief.validation_faults import model_faults
from setwright.solver.sheets.common.labels import LABELS
from setwright.solver.sheets.handout.coach_fields import (
    Alarm,
    Day,
    Days,
    ExerciseNames,
    Labels,
    Language,
    Line,
    MuscleNames,
    Paper,
    Revision,
    TimeOfDay,
    Times,
    Weeks,
)

MOST_BYTES: Final = 200_000


class CoachFile(BaseModel):
    """Letterhead, words and defaults as `coach.toml` has them; minutes are whole."""

    model_config = ConfigDict(frozen=True, strict=True, extra="forbid", defer_build=True)

    name: Line = ""
    lines: Annotated[tuple[Line, ...], Field(strict=False, max_length=6)] = ()
    language: Language = "en"
    caution: Line = ""
    """Said after the usual caution, never in its place."""
    paper: Paper = "a4"
    weeks: Weeks = 1
    start: Day | None = None
    review_weeks: Weeks | None = None
    time: TimeOfDay = time(18, 0)
    times: Times = Field(default_factory=dict)
    """Weekday -> when its session starts, where that is not `time`."""
    alarm: Alarm | None = None
    """Minutes before a session at which the calendar reminds; None: never."""
    holidays: Days = ()
    words: Labels = Field(default_factory=lambda: LABELS)
    """Every label of `LABELS`, in the client's language where the file has it so."""
    muscles: MuscleNames = Field(default_factory=dict)
    exercises: ExerciseNames = Field(default_factory=dict)
    """Ids -> names in the client's language."""


class Coach(CoachFile):
    """The coach's file with what only an option says."""

    revision: Revision = 0
    """How often the calendar was written anew."""


DEFAULT_COACH: Final = Coach()


def parse_coach(data: bytes, catalogue: Catalogue, where: str = "coach.toml") -> Coach:
    """The coach of one TOML file; raises UsageFault with every fault found."""
    raw = _tables(data, where)
    try:
        found = CoachFile.model_validate(raw, context=catalogue)
    except ValidationError as error:
        raise UsageFault(model_faults(error, CoachFile, raw, where, form="toml")) from None
    return DEFAULT_COACH.model_copy(update={name: getattr(found, name) for name in found.model_fields_set})


def overlaid(coach: Coach, options: Mapping[str, Any]) -> Coach:
    """The coach with the options start, paper, weeks and revision laid over; raises UsageFault with every fault."""
    asked = {name: value for name, value in options.items() if value is not None}
    try:
        found = Coach.model_validate(asked)
    except ValidationError as error:
        faults = model_faults(error, Coach, asked, form="toml")
        raise UsageFault([fault.at(f"--{fault.where}") for fault in faults]) from None
    return coach.model_copy(update={name: getattr(found, name) for name in asked})


def _tables(data: bytes, where: str) -> dict[str, Any]:
    if len(data) > MOST_BYTES:
        raise UsageFault(Fault(where, "is larger than 200 kB, expected a page", "name the coach's own file"))
    try:
        return tomllib.loads(data.decode("utf-8-sig"))
    except UnicodeDecodeError:
        raise UsageFault(Fault(where, "is not UTF-8 text", "save it as UTF-8")) from None
    except (tomllib.TOMLDecodeError, RecursionError) as error:
        raise UsageFault(Fault(where, f"is not TOML: {error}", "mend that line")) from None
