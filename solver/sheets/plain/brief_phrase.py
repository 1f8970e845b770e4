"""A brief said as a phrase: one line that is read as the same brief again, and the names of what no phrase can hold."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from itertools import groupby
from typing import Any, Final

from setwright.catalogue.entries import Catalogue
from setwright.catalogue.faults import UsageFault
from setwright.solver.brief.defaults import SPREAD
from setwright.solver.brief.file import parse_phrase
from setwright.solver.brief.parsed_brief import raw_of
from setwright.solver.brief.schema import Brief, DayAsk
from setwright.solver.sheets.common.words import counted
from setwright.solver.sheets.plain.phrase_clauses import clauses_of, muscle_days
from setwright.solver.sheets.plain.phrase_names import place_words

PARTS: Final = ("client", "owned", "clock")
"""Fields of a brief whose own fields are said, or left out, one by one."""
UNORDERED: Final = ("without", "avoid", "dislike", "like")
"""Lists whose order says nothing."""


@dataclass(frozen=True)
class Phrase:
    """A brief as one line, and the fields that it leaves out, such as title, lifts, owned.plates."""

    text: str
    left_out: tuple[str, ...]


def brief_phrase(brief: Brief, catalogue: Catalogue, named: bool = False) -> Phrase:
    """A brief as a phrase; `named` writes the weekdays out even where a count of days stands for them.

    Every clause was read back: a field that would not come back as it is, is not said and stands in `left_out`.
    """
    brief = _one_place(brief)
    wanted = _fields(raw_of(brief))
    clauses = dict(clauses_of(brief, catalogue))
    days = ", ".join([*_day_clauses(brief, catalogue, named), *_muscle_days(brief, catalogue)])
    while True:
        text = ", ".join([days, *(said for said in clauses.values() if said)])
        read = _read(text, catalogue)
        if read is None:
            clauses = _readable(days, clauses, catalogue, wanted)
            text = ", ".join([days, *(said for said in clauses.values() if said)])
            read = _read(text, catalogue) or {}
        wrong = {field for field in wanted.keys() | read.keys() if wanted.get(field) != read.get(field)}
        spoilt = wrong & clauses.keys()
        if not spoilt:
            return Phrase(text, tuple(sorted(wrong)))
        clauses = {field: said for field, said in clauses.items() if field not in spoilt}


def _one_place(brief: Brief) -> Brief:
    """The brief with the place that every day has as its own said of the week, which is the same."""
    places = {day.equipment for day in brief.days}
    if len(places) > 1 or None in places:
        return brief
    days = tuple(day.model_copy(update={"equipment": None}) for day in brief.days)
    return brief.model_copy(update={"days": days, "equipment": places.pop()})


def _readable(days: str, clauses: dict[str, str], catalogue: Catalogue, wanted: dict[str, Any]) -> dict[str, str]:
    """The clauses that are read as what they are to say when each stands alone with the days."""
    found: dict[str, str] = {}
    for field, said in clauses.items():
        read = _read(", ".join([days, *found.values(), said]), catalogue)
        if read is not None and read.get(field) == wanted.get(field):
            found[field] = said
    return found


def _read(text: str, catalogue: Catalogue) -> dict[str, Any] | None:
    """The fields of the brief that a phrase is read as; None where it is refused."""
    try:
        return _fields(raw_of(parse_phrase(text, catalogue).brief))
    except UsageFault:
        return None


def _fields(raw: dict[str, Any]) -> dict[str, Any]:
    """A raw brief as one table: field, or part.field, to value."""
    flat = {field: sorted(value) if field in UNORDERED else value for field, value in raw.items() if field not in PARTS}
    return flat | {f"{part}.{field}": value for part in PARTS for field, value in raw.get(part, {}).items()}


def _day_clauses(brief: Brief, catalogue: Catalogue, named: bool) -> Iterator[str]:
    """The days: a count where the weekdays are those that it stands for, else the weekdays, alike ones together."""
    counted = brief.any_order or (
        not named
        and tuple(day.weekday for day in brief.days) == SPREAD[len(brief.days)]
        and all(day.equipment is None for day in brief.days)
    )
    for _, group in groupby(brief.days, key=lambda day: (day.minutes, day.focus, day.equipment)):
        alike = list(group)
        yield _counted(alike) if counted else _named(alike, catalogue)


def _muscle_days(brief: Brief, catalogue: Catalogue) -> Iterator[str]:
    """What the days say of their muscles, which a phrase names weekdays for."""
    return iter(()) if brief.any_order else muscle_days(brief, catalogue)


def _counted(days: list[DayAsk]) -> str:
    count = f"{counted(len(days), 'day')} {_theme(days[0])}".rstrip()
    return f"{count} x {days[0].minutes} min"


def _named(days: list[DayAsk], catalogue: Catalogue) -> str:
    said = f"{' '.join(day.weekday or '' for day in days)} {days[0].minutes} min {_theme(days[0])}".rstrip()
    equipment = days[0].equipment
    return said if equipment is None else f"{said} with {place_words(equipment, catalogue)}"


def _theme(day: DayAsk) -> str:
    return (day.focus or "").replace("-", " ")
