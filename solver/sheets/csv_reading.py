"""A week's entries read back from its CSV, every fault at once."""

from __future__ import annotations

import csv as standard
import io
import re
from collections.abc import Mapping
from typing import Any, Final

from setwright.catalogue.entries import Catalogue
from setwright.catalogue.faults import Fault, UsageFault
from setwright.solver.brief.defaults import WEEKDAYS
from setwright.solver.reckoning.week import Entry
from setwright.solver.sheets.csv import MAY, NEEDED, unguarded
from setwright.solver.sheets.reading import MOST_BYTES, Reader

MOST_ROWS: Final = 500
_SPAN: Final = re.compile(r"(\d{1,4})(?:\s*(?:to|-|\u2013)\s*(\d{1,4}))?(?:/side)?", re.IGNORECASE)
_CLOCK: Final = re.compile(r"(\d{1,3}):([0-5]\d)")


def read_csv(data: bytes, catalogue: Catalogue, where: str = "week.csv") -> tuple[tuple[str, Entry], ...]:
    """Each row's day (mon ... sun, or the session's number) with its entry; raises UsageFault with every fault."""
    rows = rows_of(data, where)
    reader = Reader(catalogue, where)
    found = [(day_of(row, reader, number), entry_of(row, reader, number)) for number, row in rows]
    if reader.faults:
        raise UsageFault(reader.faults)
    return tuple((day, entry) for day, entry in found if entry is not None)


def rows_of(data: bytes, where: str) -> list[tuple[int, dict[str, str]]]:
    """Every row that holds anything, with its line number, by the columns' usual names."""
    if len(data) > MOST_BYTES:
        raise UsageFault(Fault(where, "is larger than 4 MB, expected one week", "name the file of one week"))
    try:
        text = data.decode("utf-8-sig")
        table = standard.reader(io.StringIO(text, newline=""), strict=True)
        head = [name.strip().lower() for name in next(table, [])]
        lines = [(table.line_num, cells) for cells in table if any(cell.strip() for cell in cells)]
    except UnicodeDecodeError:
        raise UsageFault(Fault(where, "is not UTF-8 text", "save it as CSV in UTF-8")) from None
    except standard.Error as error:
        raise UsageFault(Fault(where, f"is not CSV: {error}", "save it as CSV with commas")) from None
    check_head(head, where)
    if len(lines) > MOST_ROWS:
        raise UsageFault(Fault(where, f"has {len(lines)} rows, at most {MOST_ROWS} are read", "name one week"))
    return [(number, by_name(head, cells)) for number, cells in lines]


def check_head(head: list[str], where: str) -> None:
    faults = [
        Fault(f"{where}: line 1", f"the column {name!r} is missing") for name in NEEDED if name.lower() not in head
    ]
    faults += [
        Fault(f"{where}: line 1", f"the column {n!r} stands twice") for n in sorted(set(head)) if head.count(n) > 1
    ]
    if faults:
        raise UsageFault(faults)


def by_name(head: list[str], cells: list[str]) -> dict[str, str]:
    """The cells that are read, those that a spreadsheet's guard leads set free of it."""
    values = dict(zip(head, cells, strict=False))
    return {name: unguarded(values.get(name.lower(), "")).strip() for name in (*NEEDED, *MAY)}


def day_of(row: Mapping[str, str], reader: Reader, line: int) -> str:
    """The weekday's first three letters, or the session's number."""
    said = row["day"].lower()
    if said[:3] in WEEKDAYS or (said.isdecimal() and 1 <= int(said) <= len(WEEKDAYS)):
        return said[:3]
    reader.fault(f"line {line}, day", f"got {row['day']!r}, expected mon to sun or a session's number")
    return ""


def entry_of(row: Mapping[str, str], reader: Reader, line: int) -> Entry | None:
    """One row as an entry, read as strictly as one of a week's document."""
    return reader.entry(raw_of(row), f"line {line}")


def raw_of(row: Mapping[str, str]) -> dict[str, Any]:
    """The row as an entry of a week's document has it; what is no number stays text and is faulted there."""
    technique, _, drops = row["technique"].lower().partition(" ")
    return {
        "exercise": row["exercise"],
        "sets": number(row["sets"]),
        "reps": span(row["reps"]),
        "rir": number(row["RIR"]),
        "rest_seconds": seconds(row["rest"]),
        "technique": technique or "straight",
        "drops": number(drops) if technique == "drop" else 0,
        "paired_with": row["pair"] or None,
    }


def number(text: str) -> int | str:
    """A whole number, or the text that is none."""
    return int(text) if text.isdecimal() and len(text) < 6 else text


def span(text: str) -> list[int] | str:
    """8 to 12, 8-12 or 8 as its two ends."""
    found = _SPAN.fullmatch(text)
    return [int(found[1]), int(found[2] or found[1])] if found else text


def seconds(text: str) -> int | str:
    """Whole seconds, or minutes and seconds as 1:30."""
    found = _CLOCK.fullmatch(text)
    return 60 * int(found[1]) + int(found[2]) if found else number(text)
