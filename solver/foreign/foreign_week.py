"""A week of any file: a document of our own, or a table or JSON that was made elsewhere."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from typing import Any

from setwright.catalogue.entries import Catalogue
from setwright.solver.brief.parsed_brief import ParsedBrief
from setwright.solver.evaluation.week import Week
from setwright.solver.foreign.notes import Notes
from setwright.solver.foreign.rows.csv_lines import lines_of_csv
from setwright.solver.foreign.rows.json_rows import looks_like_json, rows_of_json
from setwright.solver.foreign.rows.raw_rows import rows_of_lines
from setwright.solver.foreign.rows.workbook_lines import PACKAGE, rows_of_workbook
from setwright.solver.foreign.table_week import week_of_table
from setwright.solver.sheets.common.json_values import parse_json
from setwright.solver.sheets.document.week_reader import read_document


@dataclass(frozen=True)
class LoadedWeek:
    """A week as read: its brief, its lines, the document it came from if it was one, and what was taken as said."""

    parsed: ParsedBrief
    week: Week
    document: dict[str, Any]
    notes: tuple[str, ...] = ()


def read_any(
    data: bytes, where: str, catalogue: Catalogue, asked: ParsedBrief | None = None, accept_near: bool = False
) -> LoadedWeek:
    """The week of a JSON document, a table or a workbook, held against the brief `asked`, by default the week's own.

    A table without a brief takes days and minutes from the week, all else by default. Raises UsageFault with every
    fault found; a name that is only near a known one is a fault unless `accept_near`, and then a note.
    """
    notes = Notes()
    document = parse_json(data, where) if looks_like_json(data) else None
    if isinstance(document, Mapping) and ("schema" in document or "brief" in document):
        found = read_document(document, catalogue, where, asked)
        return LoadedWeek(found.parsed, found.week, dict(document))
    if document is not None:
        rows = rows_of_json(document, where)
    elif data.startswith(PACKAGE):
        rows = rows_of_workbook(data, where, notes)
    else:
        rows = rows_of_lines(lines_of_csv(data, where, notes), where, notes)
    table = week_of_table(rows, where, catalogue, asked, accept_near, notes.sentences())
    return LoadedWeek(table.parsed, table.week, {}, table.notes)
