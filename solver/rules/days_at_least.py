"""Days of direct work that the brief asks for."""

from __future__ import annotations

from collections.abc import Iterator

from setwright.solver.evaluation.evaluated_week import EvaluatedWeek
from setwright.solver.evaluation.finding import Finding, Wish
from setwright.solver.linear.linear_model import LinearModel
from setwright.solver.linear.rule import Rule


def check(evaluated: EvaluatedWeek) -> Iterator[Finding]:
    """A finding for each muscle with direct work on fewer days than asked."""
    for muscle in evaluated.resolved.muscles.values():
        days = evaluated.direct_days(muscle.id)
        if days < muscle.days_at_least:
            yield Finding("days-at-least", subject=muscle.id, amount=days, limit=muscle.days_at_least)


def post(model: LinearModel) -> None:
    """Ask for so many days with a lift that trains the muscle directly."""
    for muscle in model.resolved.muscles.values():
        if muscle.days_at_least:
            days = {
                model.days_with(
                    "days-at-least", model.count(lambda e, m=muscle: m.id in e.direct, group.index), group.index
                ): 1
                for group in model.groups
            }
            model.demand(Wish("days-at-least", muscle.id, muscle.days_at_least), days, muscle.days_at_least)


RULE = Rule(
    id="days-at-least",
    kind="hard",
    sentence="A muscle gets direct work on at least as many days as the brief says.",
    remedy="ask for fewer days, or add a day",
    post=post,
    check=check,
    says="{subject} has direct work on {amount} days, not {limit}",
)
