"""The matrix of variants as files: CSV for a spreadsheet, and one page where Jinja2 is installed."""

from __future__ import annotations

import csv
import io
from importlib.util import find_spec
from typing import Any, Final

from setwright.solver.sheets.variants.matrix_document import matrix_document
from setwright.solver.sheets.variants.matrix_page import Link, matrix_page
from setwright.solver.sheets.variants.variant_rows import VariantRow, axis_steps, ended, line_words, signed
from setwright.solver.uses.variants.matrix import VariantMatrix

TOLD = ("variant", "end", "index", "score", "gap_percent", "minutes", "extends", "lines_kept", "lines_of", "given_up")
CHANGED = ("from", "to", "varies", "index", "score", "minutes", "exercises_in_common", "exercises")


PAGE: Final = "matrix.html"


def page_can_be_written() -> bool:
    """Whether Jinja2 is installed, the extra `page`."""
    return find_spec("jinja2") is not None


def matrix_files(
    matrix: VariantMatrix, rows: tuple[VariantRow, ...], link: Link = lambda field: ""
) -> dict[str, bytes]:
    """matrix.csv and changes.csv, and matrix.html where Jinja2 is installed; the same bytes for the same results.

    `link` says where a field's week has its page.
    """
    told = [
        [
            r.variant.name,
            ended(r),
            r.index,
            r.score,
            _percent(r),
            r.minutes,
            r.extends,
            *_lines_of(r),
            "; ".join(map(line_words, r.dropped)),
            r.said,
        ]
        for r in rows
    ]
    changed = [
        [
            c.before.variant.name, c.after.variant.name, c.axis, signed(c.before.index, c.after.index),
            signed(c.before.score, c.after.score), (c.after.minutes or 0) - (c.before.minutes or 0), c.common,
            len(c.before.exercises),
        ]
        for c in axis_steps(matrix, rows)
    ]  # fmt: skip
    heads = [*TOLD, "dropped", "why_no_week"]
    files = {"matrix.csv": _separated(heads, told), "changes.csv": _separated(list(CHANGED), changed)}
    if page_can_be_written():
        files[PAGE] = matrix_page(matrix_document(matrix, rows), link)
    return files


def _percent(row: VariantRow) -> float | None:
    return None if row.gap_share is None else round(100 * row.gap_share, 2)


def _lines_of(row: VariantRow) -> list[Any]:
    """Lines kept, lines there were, index points given up for it; empty where nothing is extended."""
    return [row.kept, row.before, round(row.given_up, 2)] if row.extends else ["", "", ""]


def _separated(heads: list[str], rows: list[list[Any]]) -> bytes:
    """Comma-separated values as RFC 4180 has them, in UTF-8; no field can start a formula."""
    text = io.StringIO()
    writer = csv.writer(text, lineterminator="\r\n")
    writer.writerow(heads)
    writer.writerows([[_harmless(value) for value in row] for row in rows])
    return text.getvalue().encode()


def _harmless(value: Any) -> Any:
    """A text that a spreadsheet takes as text, whatever it begins with; signed numbers stay numbers."""
    if not isinstance(value, str) or not value.startswith(("=", "+", "-", "@", "\t", "\r")):
        return "" if value is None else value
    return value if value[1:].replace(".", "", 1).isdigit() else f"'{value}"
