"""The matrix of variants: what each came to and what changes between neighbours, as text, CSV and a page."""

from __future__ import annotations

import csv
import io
from collections import Counter
from collections.abc import Iterator
from dataclasses import dataclass
from html import escape
from sys import intern
from typing import Any

from setwright.solver.sheets.caution import CAUTION
from setwright.solver.sheets.grid import grid
from setwright.solver.sheets.words import held, listed, whole_minutes, wrapped
from setwright.solver.uses.variants.matrix import Cell, Matrix
from setwright.solver.uses.variants.record import document_of
from setwright.solver.uses.variants.store import Store
from setwright.solver.uses.variants.task import CLASH, SOLVED

STATUS = "setwright.variants-status/1"
MOST_ROWS = 60
"""Rows of a table on screen; the files have them all."""
TOLD = ("variant", "end", "index", "score", "gap_percent", "minutes", "extends", "lines_kept", "lines_of", "given_up")
CHANGED = ("from", "to", "varies", "index", "score", "minutes", "exercises_in_common", "exercises")


@dataclass(frozen=True)
class Row:
    """One variant as the matrix shows it; numbers are None where there is no week."""

    cell: Cell
    end: str
    said: str
    index: float | None = None
    score: float | None = None
    gap_share: float | None = None
    minutes: int | None = None
    exercises: tuple[str, ...] = ()
    extends: str = ""
    kept: int = 0
    dropped: tuple[str, ...] = ()
    given_up: float = 0.0

    @property
    def before(self) -> int:
        """Lines of the shorter variant."""
        return self.kept + len(self.dropped)


@dataclass(frozen=True)
class Change:
    """What a step along one axis changes."""

    before: Row
    after: Row
    axis: str

    @property
    def common(self) -> int:
        return len(set(self.before.exercises) & set(self.after.exercises))


def rows_of(matrix: Matrix, store: Store) -> tuple[Row, ...]:
    """Every variant as it stands in the folder; one without a result is `to do`."""
    return tuple(row_of(cell, store.read(cell.key)) for cell in matrix.cells)


def row_of(cell: Cell, data: bytes | None) -> Row:
    found = document_of(data, cell.key) if data else None
    if found is None:
        return Row(cell, "to do", "")
    week: dict[str, Any] | None = found["week"]
    if week is None:
        return Row(cell, found["end"], found["said"])
    kept = found["extends"] or {"name": "", "kept": (), "dropped": (), "given_up": 0.0}
    return Row(
        cell=cell,
        end=found["end"],
        said="",
        index=week["stimulus"],
        score=week["score"],
        gap_share=week["gap_share"],
        minutes=sum(whole_minutes(day["seconds"]) for day in week["days"] if day["entries"]),
        exercises=tuple(sorted({intern(e["exercise"]) for day in week["days"] for e in day["entries"]})),
        extends=kept["name"],
        kept=len(kept["kept"]),
        dropped=tuple(kept["dropped"]),
        given_up=kept["given_up"],
    )


def changes_of(matrix: Matrix, rows: tuple[Row, ...]) -> Iterator[Change]:
    """Each pair of solved variants that are one step apart on one axis, the axes in order."""
    at = {tuple(row.cell.values.items()): row for row in rows}
    for row in rows:
        for axis, labels in matrix.axes:
            for label in reversed(labels[: labels.index(row.cell.values[axis])]):
                other = at.get(tuple({**row.cell.values, axis: label}.items()))
                if other is not None:
                    if row.end == other.end == SOLVED:
                        yield Change(other, row, axis)
                    break


# ---- on screen


def matrix_text(matrix: Matrix, rows: tuple[Row, ...], width: int = 100) -> str:
    """The matrix for a coach: a table, what is impossible and why, what does not extend, what changes."""
    width = held(width)
    parts = [
        wrapped(summary(matrix, rows), width),
        table(rows, width),
        reasons(rows, width),
        exceptions(matrix, rows, width),
        steps(list(changes_of(matrix, rows)), width),
        wrapped(f"Caution: {CAUTION}", width),
    ]
    return "\n\n".join("\n".join(part) for part in parts if part) + "\n"


def summary(matrix: Matrix, rows: tuple[Row, ...]) -> str:
    """How many of which end."""
    ends = [row.end for row in rows]
    words = {CLASH: "impossible"}
    counted = [
        f"{ends.count(end)} {words.get(end, end)}" for end in dict.fromkeys(sorted(ends, key=lambda e: e != SOLVED))
    ]
    title = f"{matrix.title}: " if matrix.title else ""
    return f"{title}{len(rows)} variants, {listed(counted)}."


def table(rows: tuple[Row, ...], width: int) -> list[str]:
    """One line for each variant."""
    shown = [
        [
            row.cell.name,
            number(row.index),
            number(row.score),
            "" if row.gap_share is None else f"{100 * row.gap_share:.2f} %",
            "" if row.minutes is None else str(row.minutes),
            f"{row.kept} of {row.before} lines" if row.extends else ("" if row.end == SOLVED else ended(row)),
        ]
        for row in rows[:MOST_ROWS]
    ]
    widest = [max(20, width - 60), None, None, None, None, 22]
    lines = grid(["Variant", "Index", "Score", "Gap", "Min", "Keeps of the shorter"], shown, "lrrrrl", widest)
    return [*lines, *more(len(rows), "matrix.csv")]


def ended(row: Row) -> str:
    return "impossible" if row.end == CLASH else row.end


def more(count: int, name: str) -> list[str]:
    return [f"... and {count - MOST_ROWS} more in {name}"] if count > MOST_ROWS else []


def number(value: float | None) -> str:
    return "" if value is None else f"{value:.1f}"


def reasons(rows: tuple[Row, ...], width: int) -> list[str]:
    """Why a variant has no week."""
    found = [row for row in rows if row.said]
    lines = [line for row in found[:MOST_ROWS] for line in wrapped(f"  {row.cell.name}: {row.said}", width, "    ")]
    return ["Without a week:", *lines, *more(len(found), "matrix.csv")] if lines else []


def exceptions(matrix: Matrix, rows: tuple[Row, ...], width: int) -> list[str]:
    """Variants that do not hold every line of the shorter one, because that would cost more than the share."""
    found = [row for row in rows if row.dropped]
    if not found or matrix.share is None:
        return []
    head = (
        f"These drop lines of the shorter variant; keeping more was not found within {100 * matrix.share:g} % of the "
        "week index:"
    )
    lines = wrapped(head, width)
    for row in found[:MOST_ROWS]:
        lines += wrapped(f"  {row.cell.name} drops {'; '.join(map(line_words, row.dropped))}", width, "    ")
    return [*lines, *more(len(found), "matrix.csv")]


def line_words(line: str) -> str:
    """A line as words: mon hanging-knee-raise -> Mon hanging knee raise."""
    return line.replace("-", " ").capitalize()


def steps(found: list[Change], width: int) -> list[str]:
    """What changes between neighbours."""
    shown = [
        [
            c.before.cell.name,
            c.after.cell.name,
            signed(c.before.index, c.after.index),
            signed(c.before.score, c.after.score),
            f"{(c.after.minutes or 0) - (c.before.minutes or 0):+d}",
            f"{c.common} of {len(c.before.exercises)}",
        ]
        for c in found[:MOST_ROWS]
    ]
    if not shown:
        return []
    name = max(16, (width - 36) // 2)
    heads = ["From", "to", "Index", "Score", "Min", "Same lifts"]
    return ["Between neighbours:", *grid(heads, shown, "llrrrr", [name, name, None, None, None, None]),
            *more(len(found), "changes.csv")]  # fmt: skip


def signed(before: float | None, after: float | None) -> str:
    return f"{(after or 0.0) - (before or 0.0):+.1f}"


def status_document(rows: tuple[Row, ...], old: int) -> dict[str, Any]:
    """How the folder stands, as JSON."""
    ends = Counter(ended(row) for row in rows)
    left = [{"name": row.cell.name, "end": ended(row), "said": row.said} for row in rows if row.end != SOLVED]
    return {"schema": STATUS, "variants": len(rows), "ends": dict(ends), "without_a_week": left, "earlier_results": old}


# ---- files


def matrix_files(matrix: Matrix, rows: tuple[Row, ...]) -> dict[str, bytes]:
    """matrix.csv, changes.csv and matrix.html, the same bytes for the same results."""
    told = [
        [
            r.cell.name,
            ended(r),
            r.index,
            r.score,
            percent(r),
            r.minutes,
            r.extends,
            *lines_of(r),
            "; ".join(map(line_words, r.dropped)),
            r.said,
        ]
        for r in rows
    ]
    changed = [
        [
            c.before.cell.name, c.after.cell.name, c.axis, signed(c.before.index, c.after.index),
            signed(c.before.score, c.after.score), (c.after.minutes or 0) - (c.before.minutes or 0), c.common,
            len(c.before.exercises),
        ]
        for c in changes_of(matrix, rows)
    ]  # fmt: skip
    heads = [*TOLD, "dropped", "why_no_week"]
    return {
        "matrix.csv": separated(heads, told),
        "changes.csv": separated(list(CHANGED), changed),
        "matrix.html": page(matrix, rows, (heads, told), (list(CHANGED), changed)),
    }


def percent(row: Row) -> float | None:
    return None if row.gap_share is None else round(100 * row.gap_share, 2)


def lines_of(row: Row) -> list[Any]:
    """Lines kept, lines there were, index points given up for it; empty where nothing is extended."""
    return [row.kept, row.before, round(row.given_up, 2)] if row.extends else ["", "", ""]


def separated(heads: list[str], rows: list[list[Any]]) -> bytes:
    """Comma-separated values as RFC 4180 has them, in UTF-8; no cell can start a formula."""
    text = io.StringIO()
    writer = csv.writer(text, lineterminator="\r\n")
    writer.writerow(heads)
    writer.writerows([[harmless(value) for value in row] for row in rows])
    return text.getvalue().encode()


def harmless(value: Any) -> Any:
    """A text that a spreadsheet takes as text, whatever it begins with; signed numbers stay numbers."""
    if not isinstance(value, str) or not value.startswith(("=", "+", "-", "@", "\t", "\r")):
        return "" if value is None else value
    return value if value[1:].replace(".", "", 1).isdigit() else f"'{value}"


STYLE = (
    "body{font-family:sans-serif;margin:2em;max-width:75em}table{border-collapse:collapse;margin:1em 0}"
    "th,td{border:1px solid #777;padding:.25em .6em;text-align:left}td.n{text-align:right}"
    "td:first-child{white-space:nowrap}th{background:#eee}"
)


def page(
    matrix: Matrix,
    rows: tuple[Row, ...],
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
        html_table(*told),
        "<h2>Between neighbours</h2>",
        html_table(*changed),
        f"<p>Caution: {escape(CAUTION)}</p>\n</body>\n</html>\n",
    ]
    return "\n".join(parts).encode()


def html_table(heads: list[str], rows: list[list[Any]]) -> str:
    head = "".join(f"<th>{escape(name.replace('_', ' '))}</th>" for name in heads)
    body = "\n".join(f"<tr>{''.join(html_cell(value) for value in row)}</tr>" for row in rows)
    return f"<table>\n<tr>{head}</tr>\n{body}\n</table>"


def html_cell(value: Any) -> str:
    said = "" if value is None else f"{value:.1f}" if isinstance(value, float) and abs(value) >= 10 else str(value)
    plain = said.lstrip("+-").replace(".", "", 1).isdigit()
    return f'<td class="n">{escape(said)}</td>' if plain else f"<td>{escape(said)}</td>"
