"""A muscle, or a group of muscles, that the brief names for a day."""

from __future__ import annotations

from collections.abc import Iterator

from setwright.catalogue.entries import Exercise
from setwright.solver.evaluation.evaluated_week import EvaluatedWeek
from setwright.solver.evaluation.finding import Finding, Wish
from setwright.solver.evaluation.resolved_brief import ResolvedBrief
from setwright.solver.evaluation.resolved_day import ResolvedDay
from setwright.solver.linear.linear_model import LinearModel, combined, scaled
from setwright.solver.linear.rule import Rule


def wish_of(resolved: ResolvedBrief, name: str, day: ResolvedDay) -> Wish:
    """A muscle or group named for a day as a wish that a week must meet."""
    return Wish("muscle-on-day", name, resolved.limit("muscle-on-day"), day.weekday or "")


def trains(exercise: Exercise, muscles: frozenset[str]) -> bool:
    """Whether an exercise trains directly one of these muscles."""
    return not muscles.isdisjoint(exercise.direct)


def check(evaluated: EvaluatedWeek) -> Iterator[Finding]:
    """A finding for each muscle or group with fewer direct sets on its day than the rule asks for."""
    least = evaluated.resolved.limit("muscle-on-day")
    for day in evaluated.resolved.days:
        lines = [line for line in evaluated.lines if line.day.index == day.index]
        for name, muscles in day.trained:
            sets = sum(line.sets for line in lines if trains(line.exercise, muscles))
            if sets < least:
                yield Finding("muscle-on-day", subject=name, amount=sets, limit=least, days=(day.index,))


def post(model: LinearModel) -> None:
    """Ask for so many direct sets on each day for which a muscle or group is named."""
    for group in model.groups:
        day = model.day(group.index)
        for name, muscles in day.trained:
            sets = model.product(lambda e, m=muscles: int(trains(e, m)), lambda p: p.sets, group.index)
            wish = wish_of(model.resolved, name, day)
            days, constant = model.size(group.index)
            least = round(wish.amount)
            model.demand(wish, combined(sets, scaled(days, -least)), least * constant)


RULE = Rule(
    id="muscle-on-day",
    kind="hard",
    sentence="A muscle, or one of a group, that the brief names for a day has at least {limit:g} direct sets there.",
    remedy="take the muscle out of the day's `trained`, or give the day room",
    post=post,
    check=check,
    says="{day}: {subject} is named for it and has {sets} of direct work, at least {limit}",
)
