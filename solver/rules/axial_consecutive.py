"""Heavy spine loads on consecutive days."""

from __future__ import annotations

from collections.abc import Iterator

from setwright.solver.evaluation.evaluated_week import EvaluatedWeek
from setwright.solver.evaluation.finding import Finding
from setwright.solver.linear.linear_model import LinearModel
from setwright.solver.linear.rule import Rule


def check(evaluated: EvaluatedWeek) -> Iterator[Finding]:
    """A finding for each two consecutive days that both load the spine."""
    heavy = evaluated.resolved.limit("axial-consecutive", "axial")
    days = evaluated.days_with(lambda x: x.exercise.axial >= heavy)
    for earlier, later in evaluated.resolved.adjacent:
        if earlier in days and later in days:
            cost = evaluated.resolved.penalty("axial-consecutive", 1)
            yield Finding("axial-consecutive", cost, days=(earlier, later))


def post(model: LinearModel) -> None:
    """Charge each two such days; exact where the model knows its days, silent where it does not."""
    if not model.daily:
        return
    resolved = model.resolved
    heavy = resolved.limit("axial-consecutive", "axial")
    cost = resolved.cost("axial-consecutive")
    loaded: dict[int, int] = {}
    for group in model.groups:
        found = model.count(lambda e: e.axial >= heavy, group.index)
        if found:
            loaded[group.index] = held = model.variable(1)
            for j in found:
                model.constrain("axial-consecutive", {j: 1, held: -1}, high=0)
    for earlier, later in resolved.adjacent:
        if earlier in loaded and later in loaded:
            both = model.violation("axial-consecutive", 1, cost)
            model.constrain("axial-consecutive", {loaded[earlier]: 1, loaded[later]: 1, both: -1}, high=1)


RULE = Rule(
    id="axial-consecutive",
    kind="scored",
    sentence="Lifts that load the spine (axial load {axial:g} or more) should not be done on two consecutive days.",
    remedy="move the squat or the hinge a day",
    post=post,
    check=check,
    says="{days} both load the spine",
)
