"""The lines of a week in CSV, whatever mark stands between its cells and whatever letters it is written in."""

from __future__ import annotations

import csv as standard
import io

from setwright.catalogue.faults import Fault, UsageFault
from setwright.solver.foreign.notes import Notes
from setwright.solver.foreign.rows.header import is_heading
from setwright.solver.foreign.rows.raw_rows import RawLine
from setwright.solver.sheets.common.json_values import MOST_BYTES
from setwright.solver.sheets.plain.csv_file import unguarded


def lines_of_csv(data: bytes, where: str, notes: Notes) -> list[RawLine]:
    """The lines of a text with commas, semicolons or tabs; raises UsageFault where it is none."""
    if len(data) > MOST_BYTES:
        raise UsageFault(Fault(where, "is larger than 4 MB, expected one week", "name the file of one week"))
    text = decoded(data, where, notes)
    head_line = next((line for line in text.splitlines() if is_heading(_split(line))), "") or next(
        (line for line in text.splitlines() if line.strip()), ""
    )
    mark = max(",;\t", key=head_line.count)
    try:
        table = standard.reader(io.StringIO(text, newline=""), delimiter=mark, strict=True)
        return [(f"line {table.line_num}", [unguarded(cell).strip() for cell in cells]) for cells in table]
    except standard.Error as error:
        raise UsageFault(Fault(where, f"is not CSV: {error}", "save it as CSV with commas")) from None


def _split(line: str) -> list[str]:
    """The cells of a heading, whichever mark stands between them."""
    return line.split(max(",;\t", key=line.count))


def decoded(data: bytes, where: str, notes: Notes) -> str:
    """The text of a file in UTF-8, UTF-16 with its mark, or else in the letters of a western Windows."""
    if b"\0" in data and not data.startswith((b"\xff\xfe", b"\xfe\xff")):
        raise UsageFault(Fault(where, "is not text", "save it as CSV, JSON or XLSX"))
    try:
        return data.decode("utf-16" if data.startswith((b"\xff\xfe", b"\xfe\xff")) else "utf-8-sig")
    except UnicodeDecodeError:
        pass
    try:
        text = data.decode("cp1252")
    except UnicodeDecodeError:
        raise UsageFault(Fault(where, "is not UTF-8 text", "save it as CSV in UTF-8")) from None
    notes.add("the file is not in UTF-8; its letters were read as those of Windows-1252")
    return text
