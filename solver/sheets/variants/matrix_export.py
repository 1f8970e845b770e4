"""The matrix of variants as files: CSV for a spreadsheet, and one page."""

from __future__ import annotations

import csv
import io
from html import escape
from typing import Any

from setwright.solver.sheets.common.caution import CAUTION
from setwright.solver.sheets.variants.variant_rows import VariantRow, axis_steps, ended, line_words, signed, summary
from setwright.solver.uses.variants.matrix import VariantMatrix

TOLD = ("variant", "end", "index", "score", "gap_percent", "minutes", "extends", "lines_kept", "lines_of", "given_up")
CHANGED = ("from", "to", "varies", "index", "score", "minutes", "exercises_in_common", "exercises")


def matrix_files(matrix: VariantMatrix, rows: tuple[VariantRow, ...]) -> dict[str, bytes]:
    """matrix.csv, changes.csv and matrix.html, the same bytes for the same results."""
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
    return {
        "matrix.csv": _separated(heads, told),
        "changes.csv": _separated(list(CHANGED), changed),
        "matrix.html": _page(matrix, rows, (heads, told), (list(CHANGED), changed)),
    }


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


STYLE = (
    "body{font-family:sans-serif;margin:2em;max-width:75em}table{border-collapse:collapse;margin:1em 0}"
    "th,td{border:1px solid #777;padding:.25em .6em;text-align:left}td.n{text-align:right}"
    "td:first-child{white-space:nowrap}th{background:#eee}"
)


def _page(
    matrix: VariantMatrix,
    rows: tuple[VariantRow, ...],
    told: tuple[list[str], list[list[Any]]],
    changed: tuple[list[str], list[list[Any]]],
) -> bytes:
    """One page that needs nothing else."""
    title = escape(matrix.title or "Variants")
    parts = [
        f'<!DOCTYPE html>\n<html lang="en">\n<head>\n<meta charset="utf-8">\n<title>{title}</title>',
        '<meta name="viewport" content="width=device-width, initial-scale=1">',
        f"<style>{STYLE}</style>\n</head>\n<body>\n<h1>{title}</h1>",
        f"<p>{escape(summary(matrix, rows))}</p>",
        _html_table(*told),
        "<h2>Between neighbours</h2>",
        _html_table(*changed),
        f"<p>Caution: {escape(CAUTION)}</p>\n</body>\n</html>\n",
    ]
    return "\n".join(parts).encode()


def _html_table(heads: list[str], rows: list[list[Any]]) -> str:
    head = "".join(f"<th>{escape(name.replace('_', ' '))}</th>" for name in heads)
    body = "\n".join(f"<tr>{''.join(_html_cell(value) for value in row)}</tr>" for row in rows)
    return f"<table>\n<tr>{head}</tr>\n{body}\n</table>"


def _html_cell(value: Any) -> str:
    said = "" if value is None else f"{value:.1f}" if isinstance(value, float) and abs(value) >= 10 else str(value)
    plain = said.lstrip("+-").replace(".", "", 1).isdigit()
    return f'<td class="n">{escape(said)}</td>' if plain else f"<td>{escape(said)}</td>"
