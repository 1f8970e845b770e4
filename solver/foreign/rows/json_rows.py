"""The lines of a foreign week in JSON as rows of cells by column."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any

from setwright.catalogue.faults import Fault, UsageFault
from setwright.solver.brief.fault_words import shown
from setwright.solver.foreign.rows.header import OF_A_DOCUMENT, READ, fields_of
from setwright.solver.foreign.rows.raw_rows import TableRow


def looks_like_json(data: bytes) -> bool:
    """Whether a file's first letter, after blanks and a byte order mark, opens an object or a list."""
    return data.lstrip(b"\xef\xbb\xbf \t\r\n")[:1] in (b"{", b"[")


def rows_of_json(document: Any, where: str) -> list[TableRow]:
    """The rows of a list of lines, or of days with their entries; raises UsageFault where it is neither."""
    if isinstance(document, Mapping) and isinstance(document.get("days"), list):
        return [row for place, day in enumerate(document["days"]) for row in _rows_of_day(day, place, where)]
    if isinstance(document, list) and all(isinstance(row, Mapping) for row in document):
        return [(f"[{place}]", _lowered(row)) for place, row in enumerate(document)]
    said = f"is {shown(document)}, expected a list of lines or an object with days"
    raise UsageFault(Fault(where, said, f"each line has {', '.join(READ)}"))


def _rows_of_day(day: Any, place: int, where: str) -> list[TableRow]:
    if not isinstance(day, Mapping) or not isinstance(day.get("entries"), list):
        raise UsageFault(Fault(f"{where}: days[{place}]", "expected an object with entries"))
    name = day.get("weekday") or day.get("day") or place + 1
    found: list[TableRow] = []
    for number, entry in enumerate(day["entries"]):
        if not isinstance(entry, Mapping):
            raise UsageFault(Fault(f"{where}: days[{place}].entries[{number}]", f"is {shown(entry)}"))
        found.append((f"days[{place}].entries[{number}]", {**_lowered(entry), "day": name}))
    return found


def _lowered(row: Mapping[Any, Any]) -> dict[str, Any]:
    """A line by the fields that its names stand for; a week's own field names stand for the columns."""
    keys = [str(key).strip().lower() for key in row]
    fields = [key if key in OF_A_DOCUMENT else field for key, field in zip(keys, fields_of(keys), strict=True)]
    return dict(zip(fields, row.values(), strict=True))
