"""One row of a week that was made elsewhere, as a model: its cells read the way a coach writes them."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Annotated, Any, Final

from pydantic import BeforeValidator, ValidationError, ValidationInfo, field_validator

from setwright.catalogue.faults import Fault
from setwright.solver.brief.fault_words import shown
from setwright.solver.brief.validation_faults import model_faults, refusal
from setwright.solver.foreign.near_names import NearNames
from setwright.solver.foreign.rows.cells import (
    day_key,
    hold_seconds,
    rep_range,
    rest_seconds,
    technique_parts,
    whole_number,
)
from setwright.solver.sheets.common.words import breaths
from setwright.solver.sheets.document.week_fields import (
    Drops,
    ExerciseId,
    Part,
    RepRange,
    RestSeconds,
    Rir,
    Sets,
    Technique,
)

COLUMNS: Final[Mapping[str, str]] = {"rir": "RIR", "drops": "technique"}
"""Field -> the column that it stands in, where that is not its own name."""


def _day(value: Any) -> str:
    found = day_key(value)
    if found is None:
        raise refusal(f"got {shown(value)}, expected a weekday, a session's number, 1 to 7, or its name")
    return found


def _name(value: Any) -> str:
    if value is None or value == "":
        raise refusal("is empty, expected an exercise's name")
    if not isinstance(value, str) or not value.strip():
        raise refusal(f"got {shown(value)}, expected an exercise's name")
    return value.strip()


def _rest(value: Any) -> int:
    found = rest_seconds(value)
    if found is None:
        raise refusal(f"got {shown(value)}, expected a rest such as 90, 1:30 or 2 min")
    return found


class TableLine(Part):
    """One line; what its row does not say is None."""

    day: Annotated[str, BeforeValidator(_day)]
    """mon to sun, or a session's number from 1."""
    exercise: Annotated[ExerciseId, BeforeValidator(_name)]
    sets: Annotated[Sets, BeforeValidator(whole_number)]
    reps: RepRange | None = None
    rir: Annotated[Rir, BeforeValidator(whole_number)] | None = None
    rest: Annotated[RestSeconds, BeforeValidator(_rest)] | None = None
    technique: Technique = "straight"
    drops: Drops = 0
    pair: Annotated[ExerciseId, BeforeValidator(_name)] | None = None

    @field_validator("reps", mode="before")
    @classmethod
    def _as_counted(cls, value: Any, info: ValidationInfo) -> Any:
        """A range of repetitions; the seconds of a hold as the slow breaths it is counted in."""
        names: NearNames | None = info.context
        assert names is not None
        exercise = names.catalogue.exercises.get(info.data.get("exercise", ""))
        held = hold_seconds(value) if exercise is None or exercise.timed else None
        found = rep_range(value) if held is None else breaths(held)
        if found is None:
            example = "30-45 s" if exercise is not None and exercise.timed else "8-12"
            raise refusal(f"got {shown(value)}, expected repetitions such as {example}")
        return found

    @field_validator("drops", mode="before")
    @classmethod
    def _at_least_one(cls, value: Any, info: ValidationInfo) -> Any:
        if value == 0 and info.data.get("technique") == "drop":
            raise refusal("got 0, expected how many drops, 1 or more")
        return value


def line_of_row(row: Mapping[str, Any], at: str, names: NearNames, where: str, faults: list[Fault]) -> TableLine | None:
    """A row's line, or None where faults were kept; each is led by the row's place `at` and its column."""
    technique, number = technique_parts(row.get("technique"))
    drops = (number if number is not None else whole_number(row.get("drops") or 1)) if technique == "drop" else 0
    said = {name: row.get(name) for name in ("day", "exercise", "sets", "reps", "rir", "rest", "pair")}
    raw = {
        name: value for name, value in said.items() if value not in (None, "") or name in ("day", "exercise", "sets")
    }
    raw |= {"technique": technique, "drops": drops}
    try:
        return TableLine.model_validate(raw, context=names)
    except ValidationError as error:
        for fault in model_faults(error, TableLine, raw, form="table"):
            field = fault.where.partition("[")[0]
            faults.append(fault.at(f"{where}: {at}, {COLUMNS.get(field, field)}"))
        return None
