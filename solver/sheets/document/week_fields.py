"""The kinds of values that a week's lines hold, with the limits above which a number is a slip of the pen."""

from __future__ import annotations

from typing import Annotated, Literal, Protocol, TypeVar

from pydantic import AfterValidator, BaseModel, ConfigDict, Field, ValidationInfo

from setwright.solver.brief.validation_faults import refusal

T = TypeVar("T")
Many = Annotated[tuple[T, ...], Field(strict=False)]
"""A JSON array: the array may be a list, its items keep to their own type."""
Technique = Literal["straight", "drop", "rest-pause"]
Sets = Annotated[int, Field(ge=1, le=20)]
Rir = Annotated[int, Field(ge=0, le=10)]
RestSeconds = Annotated[int, Field(ge=0, le=3600)]
Drops = Annotated[int, Field(ge=0, le=5)]
Repetitions = Annotated[int, Field(ge=1, le=100)]
"""The limits of these are a convention."""
Seconds = Annotated[int, Field(ge=0)]


class Part(BaseModel):
    """What every part of a document shares: frozen and strict; a field that is not known here is passed over."""

    model_config = ConfigDict(
        frozen=True,
        strict=True,
        extra="ignore",
        defer_build=True,
        allow_inf_nan=False,
        json_schema_serialization_defaults_required=True,
    )


class Names(Protocol):
    """Who knows the exercises by name: handed to a model's validation as its context."""

    def exercise_id(self, text: str) -> str:
        """The id of the exercise that a text names; raises PydanticCustomError where it names none."""


def _low_first(value: tuple[int, ...]) -> tuple[int, ...]:
    if value[0] > value[1]:
        raise refusal(f"got {list(value)}, expected the lower number first")
    return value


def _named(value: str, info: ValidationInfo) -> str:
    names: Names | None = info.context
    return value if names is None else names.exercise_id(value)


RepRange = Annotated[Many[Repetitions], Field(min_length=2, max_length=2), AfterValidator(_low_first)]
"""The fewest and the most repetitions of a set."""
ExerciseId = Annotated[str, AfterValidator(_named)]
"""An exercise by its id, name or alias, read as its id."""
