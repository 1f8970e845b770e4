"""The lines of a foreign week as rows of cells by column, from CSV or JSON."""

from __future__ import annotations

import csv as standard
import io
from collections.abc import Mapping, Sequence
from typing import Any, Final

from setwright.catalogue.faults import Fault, UsageFault
from setwright.catalogue.near import nearest
from setwright.solver.brief.fault_words import shown
from setwright.solver.sheets.common.json_values import MOST_BYTES
from setwright.solver.sheets.plain.csv_file import unguarded

NEEDED: Final = ("day", "exercise", "sets")
MAY: Final = ("reps", "rir", "rest", "technique", "pair")
READ: Final = (*NEEDED, *MAY)
BESIDE: Final = ("label", "name", "side", "load", "swaps", "ramp-up", "setting", "cue", "why")
"""Columns of a week's own CSV that are for people: passed over without a word."""
OF_A_DOCUMENT: Final = ("order", "group", "place", "seconds", "ramp_up_sets", "limb", "drops", "weekday")
"""Fields of a week's own document that are passed over without a word, but for the drops of a technique."""

TableRow = tuple[str, Mapping[str, Any]]
"""Where a row stands, and its cells by column."""


def columns_passed_over(rows: Sequence[TableRow]) -> list[str]:
    """The columns that are neither read nor known to be for people."""
    names = dict.fromkeys(name for _, row in rows for name in row if name)
    return [name for name in names if name not in (*READ, *BESIDE, *OF_A_DOCUMENT)]


def looks_like_json(data: bytes) -> bool:
    """Whether a file's first letter, after blanks and a byte order mark, opens an object or a list."""
    return data.lstrip(b"\xef\xbb\xbf \t\r\n")[:1] in (b"{", b"[")


def rows_of_csv(data: bytes, where: str) -> list[TableRow]:
    """The rows of a table with commas, semicolons or tabs, by column; raises UsageFault where it is none."""
    if len(data) > MOST_BYTES:
        raise UsageFault(Fault(where, "is larger than 4 MB, expected one week", "name the file of one week"))
    try:
        text = data.decode("utf-8-sig")
        head_line = next((line for line in text.splitlines() if line.strip()), "")
        mark = max(",;\t", key=head_line.count)
        table = standard.reader(io.StringIO(text, newline=""), delimiter=mark, strict=True)
        lines = [(table.line_num, cells) for cells in table if any(cell.strip() for cell in cells)]
    except UnicodeDecodeError:
        raise UsageFault(Fault(where, "is not UTF-8 text", "save it as CSV in UTF-8")) from None
    except standard.Error as error:
        raise UsageFault(Fault(where, f"is not CSV: {error}", "save it as CSV with commas")) from None
    if not lines:
        raise UsageFault(Fault(where, "is empty", f"write a heading of {', '.join(READ)}, then a row for each line"))
    head = [name.strip().lower() for name in lines[0][1]]
    _check_columns(head, where)
    return [
        (f"line {number}", {name: unguarded(cell).strip() for name, cell in zip(head, cells, strict=False)})
        for number, cells in lines[1:]
    ]


def _check_columns(head: Sequence[str], where: str) -> None:
    """Raise where a column that is needed is missing or one stands twice."""
    faults = [
        Fault(f"{where}: heading", f"the column {name!r} is missing", _mistyped(name, head))
        for name in NEEDED
        if name not in head
    ]
    twice = sorted({name for name in head if name and head.count(name) > 1})
    faults += [Fault(f"{where}: heading", f"the column {name!r} stands twice", "keep one") for name in twice]
    if faults:
        raise UsageFault(faults)


def _mistyped(name: str, head: Sequence[str]) -> str:
    near = nearest(name, [h for h in head if h and h not in READ])
    return f"is it {near!r}?" if near else f"the columns are {', '.join(READ)}"


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
    """A line with its columns in small letters; a week's own field names stand for the columns."""
    named = {"rest_seconds": "rest", "paired_with": "pair"}
    found = {str(key).strip().lower(): value for key, value in row.items()}
    return {named.get(key, key): value for key, value in found.items()}
