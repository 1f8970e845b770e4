"""One exercise of a slot a day."""

from __future__ import annotations

from collections.abc import Iterator

from setwright.solver.evaluation.evaluated_week import EvaluatedWeek
from setwright.solver.evaluation.finding import Finding
from setwright.solver.linear.linear_model import LinearModel
from setwright.solver.linear.rule import Rule


def check(evaluated: EvaluatedWeek) -> Iterator[Finding]:
    """A finding for each line whose slot an earlier line of the day has."""
    for day, lines in zip(evaluated.resolved.days, evaluated.on, strict=True):
        seen: dict[str, str] = {}
        for line in lines:
            slot = line.exercise.slot.id
            if slot in seen:
                yield Finding("slot-once", days=(day.index,), exercise=line.exercise.id, others=(seen[slot],))
            seen[slot] = line.exercise.id


def post(model: LinearModel) -> None:
    """At most one exercise of each slot on each day."""
    for group in model.groups:
        for slot in model.resolved.catalogue.slots:
            found = model.count(lambda e, s=slot: e.slot.id == s, group.index)
            if found:
                model.at_most_a_day("slot-once", found, 1, group.index)


RULE = Rule(
    id="slot-once",
    kind="hard",
    scope="planned weeks",
    sentence="A day has at most one exercise of the same movement and angle.",
    remedy="move one of them to another day",
    post=post,
    check=check,
    says="{day}: {exercise} is of the same movement and angle as {others}",
)
