"""A muscle that the brief rests on a day, because it is sore from the last one."""

from __future__ import annotations

from collections.abc import Iterator

from setwright.catalogue.entries import Exercise
from setwright.solver.evaluation.evaluated_week import WHOLE, EvaluatedWeek
from setwright.solver.evaluation.finding import Finding
from setwright.solver.evaluation.resolved_brief import ResolvedBrief
from setwright.solver.evaluation.resolved_day import ResolvedDay
from setwright.solver.linear.linear_model import LinearModel
from setwright.solver.linear.rule import Rule, held_by_columns
from setwright.solver.linear.weekly_sets import sets_of


def excludes(resolved: ResolvedBrief, exercise: Exercise, day: ResolvedDay) -> bool:
    """Whether an exercise trains directly what the day rests."""
    return not day.rested.isdisjoint(exercise.direct)


def check(evaluated: EvaluatedWeek) -> Iterator[Finding]:
    """A finding for each rested muscle with more sets of indirect work than a day of rest allows."""
    most = evaluated.resolved.limit("rested-muscle-sets")
    for day in evaluated.resolved.days:
        for muscle in sorted(day.rested):
            sets = (evaluated.day_sets(muscle, day.index) - evaluated.direct_day_sets(muscle, day.index)) / WHOLE
            if sets > most:
                yield Finding("rested-muscle-sets", subject=muscle, amount=sets, limit=most, days=(day.index,))


def post(model: LinearModel) -> None:
    """Hold the sets of each rested muscle on its day; no column trains it directly there."""
    most = round(model.resolved.limit("rested-muscle-sets") * WHOLE)
    for group in model.groups:
        for muscle in sorted(model.day(group.index).rested):
            model.at_most_a_day("rested-muscle-sets", sets_of(model, muscle, group.index), most, group.index)


RULES = (
    Rule(
        id="rested-muscle",
        kind="hard",
        sentence="A muscle that the brief rests on a day has no direct set there.",
        remedy="take the muscle out of the day's `rested`, or take a swap that leaves it alone",
        post=held_by_columns,
        excludes=excludes,
    ),
    Rule(
        id="rested-muscle-sets",
        kind="hard",
        sentence="A muscle that the brief rests on a day has at most {limit:g} fractional sets of indirect work there.",
        remedy="cut a set of what trains it indirectly, or take the muscle out of the day's `rested`",
        post=post,
        check=check,
        says="{day}: {subject} is rested and has {sets}, at most {limit}",
    ),
)
