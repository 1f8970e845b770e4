"""The fields of one raw table, taken by kind; whatever is amiss becomes a fault, never an exception."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any

from setwright.catalogue.faults import Fault
from setwright.catalogue.near import did_you_mean


class Fields:
    """One table's fields: each is taken once, and `finish` faults those that nobody asked for."""

    def __init__(self, row: Mapping[str, Any], where: str, faults: list[Fault]) -> None:
        self.row = row if isinstance(row, Mapping) else {}
        self.where = where
        self.faults = faults
        self.taken: set[str] = {"_from"}

    def fault(self, said: str, remedy: str = "") -> None:
        self.faults.append(Fault(self.where, said, remedy))

    def _take(self, key: str, kind: type | tuple[type, ...], expected: str, default: Any) -> Any:
        self.taken.add(key)
        if key not in self.row:
            if default is ...:
                self.fault(f"{key} is missing", f"give {expected}")
                return None
            return default
        value = self.row[key]
        if not isinstance(value, kind) or (isinstance(value, bool) and kind is not bool):
            self.fault(f"{key} is {value!r}", f"expected {expected}")
            return None if default is ... else default
        return value

    def text(self, key: str) -> str:
        return self._take(key, str, "a text", ...) or ""

    def optional_text(self, key: str) -> str | None:
        value: str | None = self._take(key, str, "a text", None)
        return value

    def texts(self, key: str) -> tuple[str, ...]:
        value = self._take(key, list, "a list of texts", [])
        bad = [v for v in value if not isinstance(v, str)]
        if bad:
            self.fault(f"{key} holds {bad[0]!r}", "expected texts only")
        return tuple(v for v in value if isinstance(v, str))

    def rows(self, key: str) -> list[dict[str, Any]]:
        return [row for row in self._take(key, list, "a list of tables", []) if isinstance(row, dict)]

    def table(self, key: str) -> dict[str, Any]:
        value: dict[str, Any] = self._take(key, dict, "a table", {})
        return value

    def flag(self, key: str) -> bool:
        return bool(self._take(key, bool, "true or false", False))

    def whole(self, key: str) -> int:
        return int(self._take(key, int, "a whole number", ...) or 0)

    def number(self, key: str, default: float | None) -> float:
        value = self._take(key, (int, float), "a number", ... if default is None else default)
        return float(value or 0.0)

    def optional_number(self, key: str) -> float | None:
        value = self._take(key, (int, float), "a number", None)
        return None if value is None else float(value)

    def span(self, key: str) -> tuple[int, int]:
        value = self._take(key, list, "[least, most]", ...)
        if value is None or len(value) != 2 or not all(isinstance(v, int) for v in value):
            self.fault(f"{key} is {value!r}", "expected [least, most] in whole numbers")
            return (1, 1)
        if value[0] > value[1]:
            self.fault(f"{key} is {value!r}: upside down", f"write [{value[1]}, {value[0]}]")
        return (value[0], value[1])

    def choice(self, key: str, known: tuple[str, ...]) -> Any:
        value = self._take(key, str, f"one of {', '.join(known)}" if len(known) < 9 else "a known word", ...)
        if value is not None and value not in known:
            self.fault(f"{key} {value!r} is not known", did_you_mean(value, known))
        return value or known[0]

    def finish(self) -> None:
        for key in self.row:
            if key not in self.taken:
                self.fault(f"{key!r} is no field here", did_you_mean(key, self.taken - {"_from"}))
