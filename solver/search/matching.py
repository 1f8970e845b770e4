"""Real pairs from halves that a model matched by counts."""

from __future__ import annotations

from collections.abc import Sequence

from setwright.solver.linear.columns import Column
from setwright.solver.linear.linear_model import LinearModel


def columns_with_pairs(model: LinearModel, amounts: Sequence[float]) -> tuple[Column, ...]:
    """The columns in use in a solution on days, each two halves that it matched as one column.

    `amounts` are those of the model's variables. Halves of one kind have the same partners, so any of them will do.
    """
    used = [j for j in range(len(model.columns)) if amounts[j] > 0.5]
    free = set(used)
    found: list[Column] = []
    for match in model.matches:
        for _ in range(round(amounts[match.pairs])):
            a, b = (next(j for j in kind if j in free) for kind in (match.one, match.other))
            free -= {a, b}
            halves = sorted((model.columns[a].assignments[0], model.columns[b].assignments[0]), key=lambda h: h.cls)
            found.append(Column(model.columns[a].group, tuple(halves)))
    return (*(model.columns[j] for j in used if j in free), *found)
