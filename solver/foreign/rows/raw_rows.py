"""The lines of a table as rows of cells by column, whichever line the heading stands on."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from typing import Any, Final

from setwright.catalogue.faults import Fault, UsageFault
from setwright.solver.brief.fault_words import shown
from setwright.solver.foreign.notes import Notes
from setwright.solver.foreign.rows.header import (
    BESIDE,
    OF_A_DOCUMENT,
    READ,
    REST_IN_MINUTES,
    REST_IN_SECONDS,
    WEEK,
    check_heading,
    fields_of,
    is_heading,
)

TableRow = tuple[str, Mapping[str, Any]]
"""Where a row stands, and its cells by column."""
RawLine = tuple[str, Sequence[Any]]
"""Where a line stands, and its cells in order."""
ALSO_READ: Final = ("rpe", REST_IN_MINUTES, REST_IN_SECONDS, "sets x reps", WEEK)
"""Columns that are turned into those of `READ`."""
OTHER_MARKS: Final = frozenset(";\t,")
"""What may stand between the cells of a line: where it is left inside a lone cell, the marks are mixed."""


def columns_passed_over(rows: Sequence[TableRow]) -> list[str]:
    """The columns that are neither read nor known to be for people."""
    names = dict.fromkeys(name for _, row in rows for name in row if name)
    return [name for name in names if name not in (*READ, *ALSO_READ, *BESIDE, *OF_A_DOCUMENT)]


def rows_of_lines(lines: Sequence[RawLine], where: str, notes: Notes, day: str = "") -> list[TableRow]:
    """The rows of a table by column; a line with one cell is the name of the day of the lines below it.

    `day` is that of lines under no such name, where no column says it. Raises UsageFault.
    """
    filled = [(at, cells) for at, cells in lines if any(_there(cell) for cell in cells)]
    if not filled:
        raise UsageFault(Fault(where, "is empty", f"write a heading of {', '.join(READ)}, then a row for each line"))
    start = next((i for i, (_, cells) in enumerate(filled) if is_heading(texts_of(cells))), 0)
    head = texts_of(filled[start][1])
    fields = fields_of(head)
    title, said_day = day, "day" in fields
    found: list[TableRow] = []
    faults: list[Fault] = []
    for place, (at, cells) in enumerate(filled):
        alone = [cell for cell in cells if _there(cell)]
        if place == start or is_heading(texts_of(cells)):
            continue
        if len(alone) == 1 and not said_day:
            title = str(alone[0]).strip()
        elif said_day and len(alone) == 1 and OTHER_MARKS.intersection(str(alone[0])):
            faults.append(Fault(f"{where}: {at}", "has other marks between its cells than the heading", "use one mark"))
        elif place < start or (len(alone) == 1 and alone[0] != _cell(cells, fields, "exercise")):
            notes.add(f"not read: {shown(alone[0])}", at)
        else:
            row = dict(zip(fields, cells, strict=False))
            found.append((at, row if said_day else {**row, "day": title}))
    check_heading(head, where, day_needed=not said_day and not (found and all(row["day"] for _, row in found)))
    if faults:
        raise UsageFault(faults)
    return found


def _cell(cells: Sequence[Any], fields: Sequence[str], name: str) -> Any:
    """The cell of a line under a field, or None."""
    return next((cell for field, cell in zip(fields, cells, strict=False) if field == name), None)


def texts_of(cells: Sequence[Any]) -> list[str]:
    """The cells of a line as texts, an empty one for none."""
    return ["" if cell is None else str(cell).strip() for cell in cells]


def _there(cell: Any) -> bool:
    return cell is not None and str(cell).strip() != ""
