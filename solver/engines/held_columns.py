"""Columns of a linear model that are in use whatever else is chosen: sessions that are done already."""

from __future__ import annotations

from collections.abc import Collection

from setwright.solver.auditing import Audit
from setwright.solver.linear.columns import Column
from setwright.solver.linear.instance import Assignment, Instance
from setwright.solver.linear.linear_model import LinearModel


def columns_as_done(instance: Instance, audited: Audit) -> tuple[Column, ...]:
    """The columns of a week's lines just as they are printed, whether or not a rule allows them; pairs as one column.

    Raises KeyError where the instance has no class for a line's exercise.
    """
    found: dict[Column, None] = {}
    for day, lines in enumerate(audited.evaluated.on):
        assignments = {x.exercise.id: Assignment(instance.class_of[x.exercise.id], x.prescription) for x in lines}
        for line in lines:
            partner = assignments.get(line.entry.partner or "")
            both = (assignments[line.exercise.id],) if partner is None else (assignments[line.exercise.id], partner)
            found.setdefault(Column(day, tuple(sorted(both, key=lambda a: a.cls))))
    return tuple(found)


def hold(model: LinearModel, held: Collection[int], audited: Audit) -> None:
    """Keep some columns, given by index, in use.

    Constraints on them alone are left out where their week, `audited`, breaks the rule already: nothing can mend it.
    """
    for j in held:
        model.low[j] = 1
    broken, count = {finding.rule for finding in audited.broken}, len(model.columns)

    def settled(index: tuple[int, ...]) -> bool:
        columns = [j for j in index if j < count]
        return bool(columns) and all(j in held for j in columns)

    model.constraints = [c for c in model.constraints if c.wish or c.rule not in broken or not settled(c.index)]
