"""The matrix of variants on screen: what each came to and what changes between neighbours."""

from __future__ import annotations

from collections import Counter
from typing import Any

from setwright.solver.sheets.common.caution import CAUTION
from setwright.solver.sheets.common.grid import grid
from setwright.solver.sheets.common.words import page_width, wrapped
from setwright.solver.sheets.variants.variant_rows import (
    AxisStep,
    VariantRow,
    axis_steps,
    ended,
    line_words,
    signed,
    summary,
)
from setwright.solver.uses.variants.matrix import VariantMatrix
from setwright.solver.uses.variants.task import SOLVED

STATUS = "setwright.variants-status/1"
MOST_ROWS = 60
"""Rows of a table on screen; the files have them all."""


def matrix_text(matrix: VariantMatrix, rows: tuple[VariantRow, ...], width: int = 100) -> str:
    """The matrix for a coach: a table, what is impossible and why, what does not extend, what changes."""
    width = page_width(width)
    parts = [
        wrapped(summary(matrix, rows), width),
        _table(rows, width),
        _reasons(rows, width),
        _exceptions(matrix, rows, width),
        _steps(list(axis_steps(matrix, rows)), width),
        wrapped(f"Caution: {CAUTION}", width),
    ]
    return "\n\n".join("\n".join(part) for part in parts if part) + "\n"


def _table(rows: tuple[VariantRow, ...], width: int) -> list[str]:
    """One line for each variant."""
    shown = [
        [
            row.variant.name,
            _number(row.index),
            _number(row.score),
            "" if row.gap_share is None else f"{100 * row.gap_share:.2f} %",
            "" if row.minutes is None else str(row.minutes),
            f"{row.kept} of {row.before} lines" if row.extends else ("" if row.end == SOLVED else ended(row)),
        ]
        for row in rows[:MOST_ROWS]
    ]
    widest = [max(20, width - 60), None, None, None, None, 22]
    lines = grid(["Variant", "Index", "Score", "Gap", "Min", "Keeps of the shorter"], shown, "lrrrrl", widest)
    return [*lines, *_more(len(rows), "matrix.csv")]


def _more(count: int, name: str) -> list[str]:
    return [f"... and {count - MOST_ROWS} more in {name}"] if count > MOST_ROWS else []


def _number(value: float | None) -> str:
    return "" if value is None else f"{value:.1f}"


def _reasons(rows: tuple[VariantRow, ...], width: int) -> list[str]:
    """Why a variant has no week."""
    found = [row for row in rows if row.said]
    lines = [line for row in found[:MOST_ROWS] for line in wrapped(f"  {row.variant.name}: {row.said}", width, "    ")]
    return ["Without a week:", *lines, *_more(len(found), "matrix.csv")] if lines else []


def _exceptions(matrix: VariantMatrix, rows: tuple[VariantRow, ...], width: int) -> list[str]:
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
        lines += wrapped(f"  {row.variant.name} drops {'; '.join(map(line_words, row.dropped))}", width, "    ")
    return [*lines, *_more(len(found), "matrix.csv")]


def _steps(found: list[AxisStep], width: int) -> list[str]:
    """What changes between neighbours."""
    shown = [
        [
            c.before.variant.name,
            c.after.variant.name,
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
            *_more(len(found), "changes.csv")]  # fmt: skip


def status_document(rows: tuple[VariantRow, ...], old: int) -> dict[str, Any]:
    """How the folder stands, as JSON."""
    ends = Counter(ended(row) for row in rows)
    left = [{"name": row.variant.name, "end": ended(row), "said": row.said} for row in rows if row.end != SOLVED]
    return {"schema": STATUS, "variants": len(rows), "ends": dict(ends), "without_a_week": left, "earlier_results": old}
