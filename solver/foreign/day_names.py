"""The days of a table by the names that people give them: weekdays, numbers, or names of sessions such as Upper A."""

from __future__ import annotations

import re
from collections.abc import Sequence
from typing import Any, Final

from setwright.catalogue.faults import Fault
from setwright.solver.brief.defaults import WEEKDAYS
from setwright.solver.foreign.notes import Notes
from setwright.solver.foreign.rows.cells import day_key
from setwright.solver.sheets.common.words import listed

_LED: Final = re.compile(r"([a-z]+)\b\W*.*")
_NUMBERED: Final = re.compile(r"(?:day|session|workout|training|d|s)?\s*#?\s*([1-9])\b(?:[\s:,(/-].*)?")


def weekday_or_number(value: Any) -> str | None:
    """mon to sun or 1 to 7, also where more follows: Mon - Upper, Day 2: pull; None where it is neither."""
    said = str(value).strip().lower()
    if found := day_key(said):
        return found
    if (led := _LED.fullmatch(said)) and (key := day_key(led[1])) and not key.isdecimal():
        return key
    if (numbered := _NUMBERED.fullmatch(said)) and int(numbered[1]) <= len(WEEKDAYS):
        return numbered[1]
    return None


def numbered_days(said: Sequence[Any], where: str, notes: Notes, faults: list[Fault]) -> dict[str, str]:
    """Name of a day -> mon to sun, or its number; names of sessions are numbered in the order in which they stand."""
    names = list(dict.fromkeys(str(name) for name in said if name is not None and str(name).strip()))
    known = {name: weekday_or_number(name) for name in names}
    if all(known.values()):
        return {name: key for name, key in known.items() if key}
    weekdays = [name for name, key in known.items() if key and not key.isdecimal()]
    if weekdays:
        odd = [name for name, key in known.items() if key is None]
        told = f"has weekdays ({listed(weekdays)}) and {listed(repr(name) for name in odd)}"
        faults.append(Fault(f"{where}: day", told, "use weekdays for all, or names or numbers of sessions for all"))
        return {name: key or "1" for name, key in known.items()}
    if len(names) > len(WEEKDAYS):
        told = f"names {len(names)} days, at most {len(WEEKDAYS)} are read"
        faults.append(Fault(f"{where}: day", told, "name one week"))
        return dict.fromkeys(names, "1")
    numbers = {name: str(number) for number, name in enumerate(names, 1)}
    notes.add(f"days: {listed(f'{name} is day {number}' for name, number in numbers.items())}")
    return numbers
