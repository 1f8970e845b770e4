"""The fields of `coach.toml`, read one by one; whatever is amiss becomes a fault, never an exception."""

from __future__ import annotations

import re
from collections.abc import Mapping
from datetime import date, time
from datetime import time as TimeOfDay
from types import MappingProxyType
from typing import Any, Final, Literal

from setwright.catalogue.faults import Fault
from setwright.catalogue.near import did_you_mean
from setwright.solver.brief.defaults import WEEKDAYS
from setwright.solver.sheets.common.labels import LABELS

Paper = Literal["a4", "letter"]
MOST_LETTERS: Final = 300
MOST_LINES: Final = 6
MOST_WEEKS: Final = 52
MOST_REVISION: Final = 10_000
MOST_ALARM: Final = 24 * 60
LANGUAGE: Final = re.compile(r"[a-z]{2,3}(-[A-Za-z0-9]{2,8})*\Z")
"""The usual shape of a language tag (BCP 47, RFC 5646)."""


class FieldReader:
    """Reads values and keeps the faults met."""

    def __init__(self, where: str) -> None:
        self.where = where
        self.faults: list[Fault] = []

    def fault(self, path: str, said: str, remedy: str = "") -> None:
        self.faults.append(Fault(f"{self.where}: {path}" if self.where else path, said, remedy))

    def known(self, name: str, names: Any, table: str = "") -> bool:
        if name in names:
            return True
        self.fault(f"{table}{name}", "is not known here", did_you_mean(name, names) or f"known: {', '.join(names)}")
        return False

    def text(self, path: str, value: Any) -> str:
        """One line of words; none of its letters steers a printer."""
        if not isinstance(value, str):
            self.fault(path, f"got {value!r}, expected text in quotes")
            return ""
        if len(value) > MOST_LETTERS:
            self.fault(path, f"is {len(value)} letters long, expected at most {MOST_LETTERS}")
        if any(ord(letter) < 32 or ord(letter) == 127 for letter in value):
            self.fault(path, "holds a line break or another control character", "write one line")
        return value.strip()

    def lines(self, path: str, value: Any) -> tuple[str, ...]:
        if not isinstance(value, list) or len(value) > MOST_LINES:
            self.fault(path, f"expected a list of at most {MOST_LINES} lines")
            return ()
        return tuple(self.text(f"{path}[{place}]", line) for place, line in enumerate(value))

    def language(self, path: str, value: Any) -> str:
        if not isinstance(value, str) or not LANGUAGE.match(value):
            self.fault(path, f"got {value!r}, expected a language tag such as 'en' or 'de-CH'")
            return "en"
        return value

    def paper(self, path: str, value: Any) -> Paper:
        if value == "letter":
            return "letter"
        if value != "a4":
            self.fault(path, f"got {value!r}, expected 'a4' or 'letter'")
        return "a4"

    def whole(self, path: str, value: Any, low: int, high: int) -> int:
        if type(value) is not int or not low <= value <= high:
            self.fault(path, f"got {value!r}, expected a whole number from {low} to {high}")
            return low
        return value

    def weeks(self, path: str, value: Any) -> int:
        return self.whole(path, value, 1, MOST_WEEKS)

    def revision(self, path: str, value: Any) -> int:
        return self.whole(path, value, 0, MOST_REVISION)

    def alarm(self, path: str, value: Any) -> int:
        return self.whole(path, value, 0, MOST_ALARM)

    def day(self, path: str, value: Any) -> date:
        """A date as TOML has it or in quotes; a date with a time is none."""
        found = day_of(value)
        if found is None:
            self.fault(path, f"got {str(value)!r}, expected a date such as 2026-01-05")
        return found or date.min

    def days(self, path: str, value: Any) -> tuple[date, ...]:
        if not isinstance(value, list):
            self.fault(path, f"got {value!r}, expected a list of dates")
            return ()
        return tuple(sorted({self.day(f"{path}[{place}]", one) for place, one in enumerate(value)}))

    def time(self, path: str, value: Any) -> TimeOfDay:
        """A time of day as TOML has it or in quotes, whole minutes."""
        found = value if isinstance(value, time) else None
        if isinstance(value, str) and re.fullmatch(r"([01]\d|2[0-3]):[0-5]\d", value):
            found = time.fromisoformat(value)
        if found is None or found.second or found.microsecond:
            self.fault(path, f'got {str(value)!r}, expected a time such as "18:00"')
            return time(18, 0)
        return found

    def table(self, path: str, value: Any) -> dict[str, Any]:
        if not isinstance(value, dict):
            self.fault(path, f"got {value!r}, expected a table [{path}]")
            return {}
        return value

    def times(self, path: str, value: Any) -> Mapping[str, TimeOfDay]:
        rows = self.table(path, value).items()
        found = {day: self.time(f"{path}.{day}", at) for day, at in rows if self.known(day, WEEKDAYS, f"{path}.")}
        return MappingProxyType(found)

    def words(self, path: str, value: Any) -> dict[str, str]:
        """Labels in the client's language; an empty one would leave a heading bare."""
        rows = self.table(path, value).items()
        found = {name: self.text(f"{path}.{name}", said) for name, said in rows if self.known(name, LABELS, f"{path}.")}
        for name in (name for name, said in found.items() if not said and isinstance(value[name], str)):
            self.fault(f"{path}.{name}", "is empty", "write the word, or leave the line out")
        return found

    def names(self, path: str, value: Any) -> Mapping[str, str]:
        rows = self.table(path, value).items()
        return MappingProxyType({name: self.text(f"{path}.{name}", said) for name, said in rows})

    def ids(self, path: str, found: Mapping[str, str], known: Mapping[str, Any]) -> None:
        for name, said in found.items():
            if name not in known:
                self.fault(f"{path}.{name}", "is not in the catalogue", did_you_mean(name, known))
            elif not said:
                self.fault(f"{path}.{name}", "is empty", "write the name, or leave the line out")


def day_of(value: Any) -> date | None:
    """A date from a date or its ISO text, else None."""
    if isinstance(value, str) and re.fullmatch(r"\d{4}-\d{2}-\d{2}", value):
        try:
            return date.fromisoformat(value)
        except ValueError:
            return None
    return value if type(value) is date else None
