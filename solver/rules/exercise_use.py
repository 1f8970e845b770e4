"""How often an exercise stands in a week: a cap on its days, a cost for a third day, and one for each to learn."""

from __future__ import annotations

from collections.abc import Iterator

from setwright.catalogue.entries import Exercise
from setwright.solver.evaluation.evaluated_week import EvaluatedWeek
from setwright.solver.evaluation.finding import Finding
from setwright.solver.evaluation.resolved_brief import ResolvedBrief
from setwright.solver.linear.linear_model import LinearModel, combined
from setwright.solver.linear.rule import Rule


def most_days(resolved: ResolvedBrief, exercise: Exercise) -> int:
    """How many days of a week an exercise may stand on."""
    return 1 if exercise.once_a_week else round(resolved.limit("third-day", "most"))


def check_days(evaluated: EvaluatedWeek) -> Iterator[Finding]:
    """A finding for each exercise on more days than it may stand on."""
    for exercise, days in evaluated.days_of.items():
        most = most_days(evaluated.resolved, evaluated.resolved.catalogue.exercises[exercise])
        if len(days) > most:
            yield Finding("exercise-days", amount=len(days), limit=most, exercise=exercise)


def check_third(evaluated: EvaluatedWeek) -> Iterator[Finding]:
    """A finding for each exercise on more days than are free."""
    free = round(evaluated.resolved.limit("third-day", "days"))
    for exercise, days in evaluated.days_of.items():
        if len(days) > free:
            cost = evaluated.resolved.penalty("third-day", len(days) - free)
            yield Finding("third-day", cost, amount=len(days), limit=free, exercise=exercise)


def check_distinct(evaluated: EvaluatedWeek) -> Iterator[Finding]:
    """One finding, with the number of different exercises; none for an empty week."""
    if evaluated.days_of:
        count = len(evaluated.days_of)
        yield Finding("distinct", evaluated.resolved.penalty("distinct", count), amount=count)


def post_days(model: LinearModel) -> None:
    """Hold the uses of a class to the days that its members may stand on.

    It makes the variables that the other rules of this file charge: for each class the members used
    (`model.distinct`) and the uses beyond the free days (`model.third`).
    """
    resolved = model.resolved
    most = round(resolved.limit("third-day", "most"))
    free = round(resolved.limit("third-day", "days"))
    uncapped = resolved.off("exercise-days")
    for cls in sorted({a.cls for column in model.columns for a in column.assignments}):
        members = len(model.instance.classes[cls].members)
        once = model.exercise(cls).once_a_week
        model.distinct[cls] = used = model.variable(members)
        uses = model.uses(cls)
        model.constrain("exercise-days", combined({used: 1}, dict.fromkeys(uses, -1)), high=0)
        if once and not uncapped:
            model.constrain("exercise-days", combined(uses, {used: -1}), high=0)
        else:
            beyond = len(resolved.days) - free if uncapped else most - free
            model.third[cls] = third = model.variable(max(0, members * beyond))
            model.constrain("exercise-days", combined(uses, {used: -free, third: -1}), high=0)
            model.constrain("exercise-days", {third: 1, used: -max(0, beyond)}, high=0)
        for group in model.groups:
            here = {j: v for j, v in uses.items() if model.columns[j].group == group.index}
            if here and len(group.days) < (1 if once else free):
                model.constrain("exercise-days", combined(here, {used: -len(group.days)}), high=0)


def post_third(model: LinearModel) -> None:
    """Charge each use of a class beyond the free days of its members."""
    for held in model.third.values():
        if model.resolved.forced("third-day"):
            model.high[held] = 0
        else:
            model.objective[held] -= model.resolved.cost("third-day")


def post_distinct(model: LinearModel) -> None:
    """Charge each member of a class that is used."""
    cost = model.resolved.cost("distinct")
    for held in model.distinct.values():
        if model.resolved.forced("distinct"):
            model.high[held] = 0
        model.objective[held] -= cost


def _of_third_day(resolved: ResolvedBrief) -> dict[str, object]:
    return {"most": f"{resolved.limit('third-day', 'most'):g}"}


RULES = (
    Rule(
        id="exercise-days",
        kind="hard",
        scope="planned weeks",
        sentence="An exercise is done on at most {most} days of a week, a deadlift on one.",
        remedy="take another exercise of the slot",
        post=post_days,
        check=check_days,
        says="{exercise} is done on {amount} days, at most {limit}",
        figures=_of_third_day,
        always=True,
    ),
    Rule(
        id="third-day",
        kind="scored",
        sentence="An exercise should be done on at most {days:g} days of a week.",
        remedy="take another exercise of the slot on one of the days",
        post=post_third,
        check=check_third,
        says="{exercise} is done on {amount} days",
    ),
    Rule(
        id="distinct",
        kind="scored",
        sentence="Each different exercise of a week costs a little, since it has to be learned.",
        remedy="repeat an exercise on another day",
        post=post_distinct,
        check=check_distinct,
        says="{amount} different exercises",
    ),
)
