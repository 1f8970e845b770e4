"""The kinds of values that `coach.toml` holds; whatever is amiss is refused in the words of a fault."""

from __future__ import annotations

import re
from collections.abc import Mapping
from datetime import date, time
from typing import Annotated, Any, Final, Literal

from pydantic import AfterValidator, BeforeValidator, Field, ValidationInfo

from setwright.catalogue.entries import Catalogue
from setwright.catalogue.near import did_you_mean
from setwright.solver.brief.fault_words import shown
from setwright.solver.brief.schema import Weekday
from setwright.solver.brief.validation_faults import refusal
from setwright.solver.sheets.common.labels import LABELS

MOST_LETTERS: Final = 300
_LANGUAGE: Final = re.compile(r"[a-z]{2,3}(-[A-Za-z0-9]{2,8})*\Z")
"""The usual shape of a language tag (BCP 47, RFC 5646)."""
_ISO_DATE: Final = re.compile(r"\d{4}-\d{2}-\d{2}")
_CLOCK_TIME: Final = re.compile(r"([01]\d|2[0-3]):[0-5]\d")


def _one_line(value: object) -> str:
    """Words in quotes; none of their letters steers a printer."""
    if not isinstance(value, str):
        raise refusal(f"got {shown(value, 'toml')}, expected text in quotes")
    if len(value) > MOST_LETTERS:
        raise refusal(f"is {len(value)} letters long, expected at most {MOST_LETTERS}")
    if any(ord(letter) < 32 or ord(letter) == 127 for letter in value):
        raise refusal("holds a line break or another control character", "write one line")
    return value.strip()


def _not_empty(value: str) -> str:
    """A label or a name; an empty one would leave a heading or a line bare."""
    if not value:
        raise refusal("is empty", "write the word, or leave the line out")
    return value


def _language_tag(value: object) -> str:
    if not isinstance(value, str) or not _LANGUAGE.match(value):
        raise refusal(f"got {shown(value, 'toml')}, expected a language tag such as 'en' or 'de-CH'")
    return value


def _day(value: object) -> date:
    """A date as TOML has it or in quotes; a date with a time is none."""
    if isinstance(value, str) and _ISO_DATE.fullmatch(value):
        try:
            return date.fromisoformat(value)
        except ValueError:
            pass
    if type(value) is date:
        return value
    raise refusal(f"got {str(value)!r}, expected a date such as 2026-01-05")


def _time_of_day(value: object) -> time:
    """A time as TOML has it or in quotes, in whole minutes."""
    found = value if isinstance(value, time) else None
    if isinstance(value, str) and _CLOCK_TIME.fullmatch(value):
        found = time.fromisoformat(value)
    if found is None or found.second or found.microsecond:
        raise refusal(f'got {str(value)!r}, expected a time such as "18:00"')
    return found


def _known_label(value: str) -> str:
    if value not in LABELS:
        raise refusal("is not known here", did_you_mean(value, LABELS) or f"known: {', '.join(LABELS)}")
    return value


def _known_muscle(value: str, info: ValidationInfo) -> str:
    catalogue: Catalogue | None = info.context
    return _in_catalogue(value, {value: None} if catalogue is None else catalogue.muscles)


def _known_exercise(value: str, info: ValidationInfo) -> str:
    catalogue: Catalogue | None = info.context
    return _in_catalogue(value, {value: None} if catalogue is None else catalogue.exercises)


def _in_catalogue(value: str, known: Mapping[str, Any]) -> str:
    if value not in known:
        raise refusal("is not in the catalogue", did_you_mean(value, known))
    return value


def _each_once_in_order(value: tuple[date, ...]) -> tuple[date, ...]:
    return tuple(sorted(set(value)))


def _with_every_label(value: Mapping[str, str]) -> Mapping[str, str]:
    return {**LABELS, **value}


Line = Annotated[str, BeforeValidator(_one_line)]
Name = Annotated[Line, AfterValidator(_not_empty)]
Language = Annotated[str, BeforeValidator(_language_tag)]
Paper = Literal["a4", "letter"]
Day = Annotated[date, BeforeValidator(_day)]
Days = Annotated[tuple[Day, ...], Field(strict=False), AfterValidator(_each_once_in_order)]
TimeOfDay = Annotated[time, BeforeValidator(_time_of_day)]
Times = Mapping[Weekday, TimeOfDay]
Weeks = Annotated[int, Field(ge=1, le=52)]
Revision = Annotated[int, Field(ge=0, le=10_000)]
Alarm = Annotated[int, Field(ge=0, le=24 * 60)]
Labels = Annotated[Mapping[Annotated[str, AfterValidator(_known_label)], Name], AfterValidator(_with_every_label)]
MuscleNames = Mapping[Annotated[str, AfterValidator(_known_muscle)], Name]
ExerciseNames = Mapping[Annotated[str, AfterValidator(_known_exercise)], Name]
