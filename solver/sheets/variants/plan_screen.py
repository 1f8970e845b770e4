"""What a template makes, before it is run: the matrix laid out, the count and the expected time."""

from __future__ import annotations

import math
from collections.abc import Iterator
from typing import Any

from setwright.solver.sheets.common.grid import grid
from setwright.solver.sheets.common.words import counted, page_width, wrapped
from setwright.solver.uses.variants.matrix import VariantMatrix

SCHEMA = "setwright.variants-plan/1"
MOST_ROWS = 60


def plan_document(matrix: VariantMatrix, search: str, workers: int, seconds: float) -> dict[str, Any]:
    """The same as JSON."""
    return {
        "schema": SCHEMA,
        "title": matrix.title,
        "search": search,
        "workers": workers,
        "expected_seconds": round(seconds),
        "share": matrix.share,
        "variants": [
            {
                "name": variant.name,
                "values": dict(variant.values),
                "key": variant.key,
                "extends": None if variant.extends is None else matrix.variants[variant.extends].name,
            }
            for variant in matrix.variants
        ],
    }


def plan_text(matrix: VariantMatrix, search: str, workers: int, seconds: float, width: int = 100) -> str:
    """The matrix for a coach: what varies, every variant with the one it extends, count and time."""
    width = page_width(width)
    count, chains = len(matrix.variants), len(matrix.chains)
    title = f"{matrix.title}: " if matrix.title else ""
    head = f"{title}{counted(count, 'variant')} in {counted(chains, 'chain')}."
    time = (
        f"Expected time with --search {search} on {counted(workers, 'worker')}: about "
        f"{duration(seconds)}, by times measured on one machine; yours may take half or twice that."
    )
    rows = [
        [variant.name, "" if variant.extends is None else matrix.variants[variant.extends].name]
        for variant in matrix.variants[:MOST_ROWS]
    ]
    cut = [f"... and {count - MOST_ROWS} more (all with --json)"] if count > MOST_ROWS else []
    parts = [
        wrapped(head, width),
        wrapped(time, width),
        *([wrapped(_sharing(matrix), width)] if any(c.extends is not None for c in matrix.variants) else []),
        [f"  {axis}: {', '.join(labels)}" for axis, labels in matrix.axes],
        [*grid(["Variant", "Extends"], rows, "ll", [width // 2 - 2, width // 2 - 2]), *cut],
        *_layout(matrix, width),
    ]
    return "\n\n".join("\n".join(part) for part in parts) + "\n"


def _sharing(matrix: VariantMatrix) -> str:
    share = 100 * (matrix.share or 0.0)
    return f"A longer variant stays near the shorter one where that costs at most {share:g} % of the week index."


def _layout(matrix: VariantMatrix, width: int) -> Iterator[list[str]]:
    """Days down and minutes across, with how many variants there are of each, where both vary."""
    axes = dict(matrix.axes)
    if "days" not in axes or "minutes" not in axes:
        return
    counts: dict[tuple[str, str], int] = {}
    for variant in matrix.variants:
        at = (variant.values["days"], variant.values["minutes"])
        counts[at] = counts.get(at, 0) + 1
    if 12 + 8 * len(axes["minutes"]) > width:
        return
    rows = [[d, *(str(counts.get((d, m), "-")) for m in axes["minutes"])] for d in axes["days"]]
    heads = ["Days", *(f"{m} min" for m in axes["minutes"])]
    yield ["Variants of each:", *grid(heads, rows, "l" + "r" * len(axes["minutes"]))]


def duration(seconds: float) -> str:
    """A time as a person says it."""
    if seconds < 90:
        return f"{math.ceil(seconds)} s"
    if seconds < 5400:
        return f"{math.ceil(seconds / 60)} min"
    return f"{seconds / 3600:.1f} h"
