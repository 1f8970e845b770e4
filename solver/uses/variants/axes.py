"""What a template can vary: each axis a tuple of labelled values, each value a change to the brief."""

from __future__ import annotations

import json
from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from typing import Any

from setwright.catalogue.faults import Fault
from setwright.solver.brief.defaults import SPREAD, WEEKDAYS

AXES = ("days", "kits", "goals", "emphases", "experience", "minutes")
"""Minutes come last: along them variants extend each other, so a chain stands together."""
SINGULAR = {"kits": "kit", "goals": "goal", "emphases": "emphasis"}
MOST_VALUES = 1000
MOST_LETTERS = 100


@dataclass(frozen=True)
class AxisValue:
    """One value of an axis: its label in names, and what it means to the brief."""

    label: str
    means: Any


@dataclass(frozen=True)
class Axis:
    """One thing that varies."""

    name: str
    values: tuple[AxisValue, ...]

    @property
    def labels(self) -> tuple[str, ...]:
        return tuple(value.label for value in self.values)


def one_of(axis: str) -> str:
    """An axis' name for one of its values: kits -> kit."""
    return SINGULAR.get(axis, axis)


def axis_of(name: str, raw: Any, faults: list[Fault]) -> Axis:
    """The axis a list, a named table or one value alone stands for; without a value where their number is a fault."""
    before = len(faults)
    named = isinstance(raw, Mapping) and name in ("kits", "emphases")
    rows = list(raw.items()) if named else [(None, one) for one in (raw if isinstance(raw, list) else [raw])]
    where = f"vary.{name}"
    if not 1 <= len(rows) <= MOST_VALUES:
        faults.append(Fault(where, f"has {len(rows)} values, expected 1 to {MOST_VALUES}"))
        return Axis(name, ())
    values = [value_of(name, label, said, where, faults) for label, said in rows]
    if len(faults) == before:
        faults += [*unfit(values, where), *twice(values, where)]
        if name == "minutes":
            values.sort(key=lambda value: int(value.means))
    return Axis(name, tuple(values))


def unfit(values: list[AxisValue], where: str) -> Iterator[Fault]:
    """Labels that cannot stand in a variant's name."""
    for value in values:
        if not value.label.strip() or not value.label.isprintable() or len(value.label) > MOST_LETTERS:
            said = f"{value.label[:MOST_LETTERS]!r} cannot stand in a name"
            yield Fault(where, said, f"name it with 1 to {MOST_LETTERS} letters that can be printed")


def twice(values: list[AxisValue], where: str) -> Iterator[Fault]:
    """What stands there twice: under one label, or under two that mean the same and would be solved twice."""
    met: dict[str, AxisValue] = {}
    for value in values:
        other = met.setdefault(meaning(value.means), value)
        if other is not value and other.label != value.label:
            yield Fault(where, f"{value.label!r} means the same as {other.label!r}", "say it once")
    labels = [value.label for value in values]
    for label in sorted({label for label in labels if labels.count(label) > 1}):
        yield Fault(where, f"{label!r} stands there twice", "say it once")


def meaning(means: Any) -> str:
    """One text for all values that ask for the same, in whatever order they list it."""
    return json.dumps(
        sorted(map(str, means)) if isinstance(means, list | tuple) else means, sort_keys=True, default=str
    )


def value_of(name: str, label: Any, said: Any, where: str, faults: list[Fault]) -> AxisValue:
    """One value with its label; what it means is a raw part of a brief."""
    if name == "days":
        return days_value(said, where, faults)
    if name == "minutes":
        if isinstance(said, bool) or not isinstance(said, int):
            faults.append(Fault(where, f"got {said!r}, expected whole minutes", "write minutes = [30, 45]"))
        return AxisValue(str(said), said)
    if name == "emphases" and isinstance(said, str):
        return AxisValue(said, {} if said == "even" else {said: "priority"})
    if name == "emphases" and isinstance(said, Mapping) and label:
        return AxisValue(str(label), dict(said))
    if name == "kits" and label and isinstance(said, str | list):
        return AxisValue(str(label), said)
    if isinstance(said, str) and said.strip() and said.isprintable():
        return AxisValue(said, said)
    remedy = "give each list a name in a table, [vary.kits]" if name == "kits" else ""
    faults.append(Fault(where, f"got {said!r}, expected words in quotes", remedy))
    return AxisValue(str(said), said)


def days_value(said: Any, where: str, faults: list[Fault]) -> AxisValue:
    """A count of days, or weekdays in one text."""
    if isinstance(said, str) and said.split() and all(word in WEEKDAYS for word in said.split()):
        return AxisValue(said, tuple(said.split()))
    if not isinstance(said, bool) and isinstance(said, int) and said in SPREAD:
        return AxisValue(str(said), SPREAD[said])
    faults.append(Fault(where, f"got {said!r}, expected 1 to 7 or weekdays", "write days = [2, 3] or ['mon thu']"))
    return AxisValue(str(said), ())
