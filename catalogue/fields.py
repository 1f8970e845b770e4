"""The fields of one raw table, taken by kind; whatever is amiss becomes a fault, never an exception."""

from __future__ import annotations

import math
from collections.abc import Mapping
from types import MappingProxyType
from typing import Any

from setwright.catalogue.faults import Fault, shown
from setwright.catalogue.near import did_you_mean


class Fields:
    """One table's fields: each is taken once, and `finish` faults those that nobody asked for.

    A field that is missing or of the wrong kind is faulted and answered with an empty value of its kind.
    """

    def __init__(self, row: object, where: str, faults: list[Fault]) -> None:
        self.row: Mapping[str, Any] = row if isinstance(row, Mapping) else {}
        self.where = where
        self.faults = faults
        self._taken: set[str] = {"_from"}
        self._nested: list[Fields] = []

    def fault(self, said: str, remedy: str = "") -> None:
        """Keep a fault of this table."""
        self.faults.append(Fault(self.where, said, remedy))

    def text(self, key: str) -> str:
        """A text that must be there."""
        return self._take(key, str, "a text", ...) or ""

    def optional_text(self, key: str) -> str | None:
        """A text, or None where it is left out."""
        value: str | None = self._take(key, str, "a text", None)
        return value

    def texts(self, key: str) -> tuple[str, ...]:
        """A list of texts, empty where it is left out."""
        value = self._take(key, list, "a list of texts", [])
        bad = [v for v in value if not isinstance(v, str)]
        if bad:
            self.fault(f"{key} holds {shown(bad[0])}", "expected texts only")
        return tuple(v for v in value if isinstance(v, str))

    def rows(self, key: str) -> list[dict[str, Any]]:
        """A list of tables, empty where it is left out."""
        value = self._take(key, list, "a list of tables", [])
        bad = [row for row in value if not isinstance(row, dict)]
        if bad:
            self.fault(f"{key} holds {shown(bad[0])}", "expected tables only")
        return [row for row in value if isinstance(row, dict)]

    def table(self, key: str) -> Fields:
        """The fields of a table inside this one, checked with it; empty where it is left out."""
        row = self._take(key, dict, "a table", {})
        nested = Fields(row, f"{self.where}: {key}", self.faults)
        self._nested.append(nested)
        return nested

    def numbers(self, key: str) -> Mapping[str, float]:
        """A table of numbers by name, empty where it is left out."""
        found: dict[str, float] = {}
        for name, value in self._take(key, dict, "a table", {}).items():
            number = self._finite(f"{key}.{name}", value)
            if number is not None:
                found[name] = number
        return MappingProxyType(found)

    def sentences(self, key: str) -> Mapping[str, str]:
        """A table of texts by name, empty where it is left out."""
        found: dict[str, str] = {}
        for name, value in self._take(key, dict, "a table", {}).items():
            if isinstance(value, str) and value:
                found[name] = value
            else:
                self.fault(f"{key}.{name} is {shown(value)}", "expected a text")
        return MappingProxyType(found)

    def flag(self, key: str) -> bool:
        """True or false; false where it is left out."""
        return bool(self._take(key, bool, "true or false", False))

    def whole(self, key: str) -> int:
        """A whole number that must be there."""
        return int(self._take(key, int, "a whole number", ...) or 0)

    def number(self, key: str, default: float | None) -> float:
        """A finite number; without a default it must be there."""
        return self._number(key, ... if default is None else default) or 0.0

    def optional_number(self, key: str) -> float | None:
        """A finite number, or None where it is left out."""
        return self._number(key, None)

    def span(self, key: str) -> tuple[int, int]:
        """Two whole numbers, the least and the most."""
        value = self._take(key, list, "[least, most]", ...)
        if value is None:
            return (1, 1)
        if len(value) != 2 or not all(type(v) is int for v in value):
            self.fault(f"{key} is {shown(value)}", "expected [least, most] in whole numbers")
            return (1, 1)
        if value[0] > value[1]:
            self.fault(f"{key} is {shown(value)}: upside down", f"write [{value[1]}, {value[0]}]")
        return (value[0], value[1])

    def wholes(self, key: str) -> tuple[int, ...]:
        """A list of whole numbers, one at least."""
        value = self._take(key, list, "a list of whole numbers", ...)
        if value is None:
            return ()
        if not value or not all(type(v) is int for v in value):
            self.fault(f"{key} is {shown(value)}", "expected a list of whole numbers")
            return ()
        return tuple(value)

    def pairs(self, key: str) -> tuple[tuple[int, int], ...]:
        """A list of pairs of whole numbers, one at least."""
        value = self._take(key, list, "a list of pairs of whole numbers", ...)
        if value is None:
            return ()
        if not value or not all(isinstance(v, list) and len(v) == 2 and all(type(n) is int for n in v) for v in value):
            self.fault(f"{key} is {shown(value)}", "expected a list of pairs of whole numbers")
            return ()
        return tuple((first, second) for first, second in value)

    def choice(self, key: str, known: tuple[str, ...]) -> Any:
        """One of the known words; the first of them where it is faulted."""
        value = self._take(key, str, f"one of {', '.join(known)}" if len(known) < 9 else "a known word", ...)
        if value is not None and value not in known:
            self.fault(f"{key} {shown(value)} is not known", did_you_mean(value, known))
        return value or known[0]

    def finish(self) -> None:
        """Fault every field of this table, and of the tables taken from it, that was not taken."""
        for key in self.row:
            if key not in self._taken:
                self.fault(f"{shown(key)} is no field here", did_you_mean(key, self._taken - {"_from"}))
        for nested in self._nested:
            nested.finish()

    def _take(self, key: str, kind: type | tuple[type, ...], expected: str, default: Any) -> Any:
        self._taken.add(key)
        if key not in self.row:
            if default is ...:
                self.fault(f"{key} is missing", f"give {expected}")
                return None
            return default
        value = self.row[key]
        if not isinstance(value, kind) or (isinstance(value, bool) and kind is not bool):
            self.fault(f"{key} is {shown(value)}", f"expected {expected}")
            return None if default is ... else default
        return value

    def _number(self, key: str, default: Any) -> float | None:
        value = self._take(key, (int, float), "a number", default)
        return None if value is None else self._finite(key, value)

    def _finite(self, key: str, value: object) -> float | None:
        """The value as a float; None, and a fault, where it is no number, too large or not finite."""
        if not isinstance(value, int | float) or isinstance(value, bool):
            self.fault(f"{key} is {shown(value)}", "expected a number")
            return None
        try:
            number = float(value)
        except OverflowError:
            number = math.inf
        if math.isfinite(number):
            return number
        self.fault(f"{key} is {shown(value)}", "expected a finite number")
        return None
