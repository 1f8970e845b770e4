"""What a template can vary: each axis a tuple of labelled values, each value a change to the brief."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from typing import Any

from setwright.catalogue.faults import Fault
from setwright.solver.brief.defaults import SPREAD, WEEKDAYS

AXES = ("days", "kits", "goals", "emphases", "experience", "minutes")
"""Minutes come last: along them variants extend each other, so a chain stands together."""
SINGULAR = {"kits": "kit", "goals": "goal", "emphases": "emphasis"}
MOST_VALUES = 1000


@dataclass(frozen=True)
class Value:
    """One value of an axis: its label in names, and what it means to the brief."""

    label: str
    means: Any


@dataclass(frozen=True)
class Axis:
    """One thing that varies."""

    name: str
    values: tuple[Value, ...]

    @property
    def labels(self) -> tuple[str, ...]:
        return tuple(value.label for value in self.values)


def one_of(axis: str) -> str:
    """An axis' name for one of its values: kits -> kit."""
    return SINGULAR.get(axis, axis)


def axis_of(name: str, raw: Any, faults: list[Fault]) -> Axis | None:
    """The axis a list, a named table or one value alone stands for; None where a fault was kept."""
    before = len(faults)
    named = isinstance(raw, Mapping) and name in ("kits", "emphases")
    rows = list(raw.items()) if named else [(None, one) for one in (raw if isinstance(raw, list) else [raw])]
    where = f"vary.{name}"
    if not 1 <= len(rows) <= MOST_VALUES:
        faults.append(Fault(where, f"has {len(rows)} values, expected 1 to {MOST_VALUES}"))
        return None
    values = [value_of(name, label, said, where, faults) for label, said in rows]
    labels = [value.label for value in values]
    for label in sorted({label for label in labels if labels.count(label) > 1}):
        faults.append(Fault(where, f"{label!r} stands there twice", "say it once"))
    if name == "minutes" and not faults[before:]:
        values.sort(key=lambda value: int(value.means))
    return Axis(name, tuple(values)) if len(faults) == before else None


def value_of(name: str, label: Any, said: Any, where: str, faults: list[Fault]) -> Value:
    """One value with its label; what it means is a raw part of a brief."""
    if name == "days":
        return days_value(said, where, faults)
    if name == "minutes":
        if isinstance(said, bool) or not isinstance(said, int):
            faults.append(Fault(where, f"got {said!r}, expected whole minutes", "write minutes = [30, 45]"))
        return Value(str(said), said)
    if name == "emphases" and isinstance(said, str):
        return Value(said, {} if said == "even" else {said: "priority"})
    if name == "emphases" and isinstance(said, Mapping) and label:
        return Value(str(label), dict(said))
    if name == "kits" and label and isinstance(said, str | list):
        return Value(str(label), said)
    if isinstance(said, str) and said.strip() and said.isprintable():
        return Value(said, said)
    remedy = "give each list a name in a table, [vary.kits]" if name == "kits" else ""
    faults.append(Fault(where, f"got {said!r}, expected words in quotes", remedy))
    return Value(str(said), said)


def days_value(said: Any, where: str, faults: list[Fault]) -> Value:
    """A count of days, or weekdays in one text."""
    if isinstance(said, str) and said.split() and all(word in WEEKDAYS for word in said.split()):
        return Value(said, tuple(said.split()))
    if not isinstance(said, bool) and isinstance(said, int) and said in SPREAD:
        return Value(str(said), SPREAD[said])
    faults.append(Fault(where, f"got {said!r}, expected 1 to 7 or weekdays", "write days = [2, 3] or ['mon thu']"))
    return Value(str(said), ())
