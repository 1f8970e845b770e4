"""Which column of a coach's table is which, by the headings that people write over them."""

from __future__ import annotations

import re
from collections.abc import Iterator, Mapping, Sequence
from types import MappingProxyType
from typing import Final

from setwright.catalogue.faults import Fault, UsageFault
from setwright.catalogue.near import nearest

NEEDED: Final = ("day", "exercise", "sets")
MAY: Final = ("reps", "rir", "rest", "technique", "pair")
READ: Final = (*NEEDED, *MAY)
BESIDE: Final = ("label", "name", "side", "load", "swaps", "ramp-up", "setting", "cue", "why")
"""Columns of a week's own CSV that are for people: passed over without a word."""
OF_A_DOCUMENT: Final = ("order", "group", "place", "seconds", "ramp_up_sets", "limb", "drops", "weekday")
"""Fields of a week's own document that are passed over without a word, but for the drops of a technique."""
WEEK: Final = "week"
"""A column that says to which of several weeks a line belongs."""
REST_IN_MINUTES: Final = "rest min"
REST_IN_SECONDS: Final = "rest s"
"""The fields of a rest whose heading says its unit."""
_WRITTEN: Final[Mapping[str, str]] = MappingProxyType(
    {
        "day": "day days session workout training date when",
        "exercise": "exercise exercises lift lifts movement movements name",
        "sets": "sets set work_sets working_sets no_of_sets number_of_sets",
        "reps": "reps rep repetitions rep_range reps_range target_reps",
        "rir": "rir reps_in_reserve",
        "rpe": "rpe target_rpe effort intensity",
        "rest": "rest rests rest_time rest_period rest_between_sets",
        "technique": "technique method set_type intensifier technique_or_method",
        "pair": "pair pairs superset supersets ss paired_with pair_with paired",
        "label": "label order group no nr block",
        "sets x reps": "sets_x_reps sets_reps sets_and_reps scheme prescription",
        WEEK: "week week_no week_number wk",
    }
)
_FIELDS: Final = {word.replace("_", " "): field for field, words in _WRITTEN.items() for word in words.split()}
_UNITS: Final = re.compile(r"^(rest(?:s| time| period| between sets)?) (s|sec|secs|seconds|m|min|mins|minutes)$")
_HIDDEN: Final = ("name", "order", "group")
"""Headings that stand for a field only where no other column is that field."""


def field_of(heading: str) -> str:
    """The field that a heading stands for, in small letters; a rest by its unit where it says one; else the heading."""
    plain = " ".join(re.findall(r"[a-z#]+", heading.lower().replace("\N{MULTIPLICATION SIGN}", "x")))
    if found := _UNITS.fullmatch(plain):
        return REST_IN_MINUTES if found[2].startswith("m") else REST_IN_SECONDS
    return _FIELDS.get(plain, "label" if plain == "#" else heading.strip().lower())


def fields_of(headings: Sequence[str]) -> list[str]:
    """The field of each heading; a heading of two meanings keeps its own name where a plainer one is there."""
    found = [field_of(heading) for heading in headings]
    for place, (heading, field) in enumerate(zip(headings, found, strict=True)):
        own = heading.strip().lower()
        if own in _HIDDEN and own != field and found.count(field) > 1:
            found[place] = own
    return found


def is_heading(cells: Sequence[str]) -> bool:
    """Whether a line of cells is a heading: it names the exercise and the sets."""
    found = set(fields_of(cells))
    return "exercise" in found and bool(found & {"sets", "sets x reps"})


def check_heading(headings: Sequence[str], where: str, day_needed: bool) -> None:
    """Raise UsageFault with each column that is needed and missing, and each field that two columns stand for."""
    if faults := list(_heading_faults(headings, where, day_needed)):
        raise UsageFault(faults)


def _heading_faults(headings: Sequence[str], where: str, day_needed: bool) -> Iterator[Fault]:
    fields = fields_of(headings)
    for name in NEEDED:
        there = name in fields or (name == "sets" and "sets x reps" in fields)
        if not there and (name != "day" or day_needed):
            yield Fault(f"{where}: heading", f"the column {name!r} is missing", _mistyped(name, fields))
    for name in sorted({field for field in fields if field and fields.count(field) > 1}):
        yield Fault(f"{where}: heading", f"the column {name!r} stands twice", "keep one")


def _mistyped(name: str, head: Sequence[str]) -> str:
    near = nearest(name, [h for h in head if h and h not in READ])
    return f"is it {near!r}?" if near else f"the columns are {', '.join(READ)}"
