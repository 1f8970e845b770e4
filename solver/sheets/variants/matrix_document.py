"""The matrix of variants as a document, `setwright.matrix/1`: a grid of days by minutes for each of all else."""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Mapping, Sequence
from itertools import product
from statistics import mean
from typing import Any, Final

from setwright.solver.sheets.common.json_values import rounded
from setwright.solver.sheets.variants.variant_rows import (
    AxisStep,
    VariantRow,
    axis_steps,
    counted_ends,
    ended,
    line_words,
)
from setwright.solver.uses.variants.matrix import VariantMatrix, file_stem

SCHEMA: Final = "setwright.matrix/1"
DOWN, ACROSS = "days", "minutes"
WEIGHED_ANEW: Final = ("emphasis",)
"""What varies the weights of the muscles: the week index on one side of such a step means another thing."""


def matrix_document(matrix: VariantMatrix, rows: tuple[VariantRow, ...]) -> dict[str, Any]:
    """The variants by their labels: each field's index, interval, minutes and what a step to it buys; the steps."""
    axes = dict(matrix.axes)
    others = [axis for axis in axes if axis not in (DOWN, ACROSS)]
    at = {tuple(row.variant.values.items()): row for row in rows}
    steps = list(axis_steps(matrix, rows))
    to: dict[str, list[AxisStep]] = defaultdict(list)
    for step in steps:
        to[step.after.variant.key].append(step)

    def field(labels: Mapping[str, str]) -> dict[str, Any] | None:
        row = at.get(tuple((axis, labels[axis]) for axis in axes))
        return None if row is None else _field(row, to[row.variant.key])

    grids = []
    for chosen in product(*(axes[axis] for axis in others)):
        of = dict(zip(others, chosen, strict=True))
        fields = [
            {
                "label": down,
                "fields": [field({**of, DOWN: down, ACROSS: across}) for across in axes.get(ACROSS, ("",))],
            }
            for down in axes.get(DOWN, ("",))
        ]
        if any(found is not None for line in fields for found in line["fields"]):
            grids.append({"of": of, "rows": fields})
    return {
        "schema": SCHEMA,
        "title": matrix.title,
        "summary": counted_ends(rows),
        "share": matrix.share,
        "axes": [{"axis": axis, "labels": list(labels)} for axis, labels in matrix.axes],
        "across": list(axes.get(ACROSS, ("",))),
        "grids": grids,
        "steps": _steps(matrix, steps),
        "done": sum(row.end != "to do" for row in rows),
        "variants": len(rows),
    }


def _field(row: VariantRow, steps: Sequence[AxisStep]) -> dict[str, Any]:
    """One variant."""
    return {
        "name": row.variant.name,
        "file": file_stem(row.variant.name),
        "key": row.variant.key,
        "end": ended(row),
        "why_none": row.said,
        "index": row.index,
        "interval": None if row.interval is None else list(row.interval),
        "score": row.score,
        "gap_share": row.gap_share,
        "minutes": row.minutes,
        "given": row.given,
        "exercises": len(row.exercises),
        "extends": row.extends,
        "kept": row.kept,
        "lines_of": row.before,
        "dropped": [line_words(line) for line in row.dropped],
        "given_up": row.given_up,
        "steps": [
            {"axis": step.axis, "from": step.before.variant.values[step.axis], "index": _index_gained(step)}
            for step in steps
            if step.axis not in WEIGHED_ANEW
        ],
    }


def _steps(matrix: VariantMatrix, steps: Sequence[AxisStep]) -> list[dict[str, Any]]:
    """What each step along an axis buys over all pairs of weeks that it lies between."""
    found: dict[tuple[str, str, str], list[AxisStep]] = defaultdict(list)
    for step in steps:
        found[step.axis, step.before.variant.values[step.axis], step.after.variant.values[step.axis]].append(step)
    order = {axis: place for place, (axis, _) in enumerate(matrix.axes)}
    labels = dict(matrix.axes)
    return [
        {
            "axis": axis,
            "from": before,
            "to": after,
            "pairs": len(pairs),
            "index": None if axis in WEIGHED_ANEW else _spread([_index_gained(step) for step in pairs]),
            "minutes": rounded(mean((s.after.minutes or 0) - (s.before.minutes or 0) for s in pairs), 1),
            "same_exercises": rounded(mean(s.common / max(1, len(s.before.exercises)) for s in pairs), 2),
        }
        for (axis, before, after), pairs in sorted(
            found.items(), key=lambda item: (order[item[0][0]], *(labels[item[0][0]].index(x) for x in item[0][1:]))
        )
    ]


def _index_gained(step: AxisStep) -> float:
    """Index points that the later week has more."""
    return rounded((step.after.index or 0.0) - (step.before.index or 0.0))


def _spread(values: Sequence[float]) -> dict[str, float]:
    return {"mean": rounded(mean(values)), "least": min(values), "most": max(values)}
