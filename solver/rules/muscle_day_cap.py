"""A muscle's sets in a day: forbidden above a cap, at a cost above what pays."""

from __future__ import annotations

from collections.abc import Iterator

from setwright.solver.evaluation.evaluated_week import WHOLE, EvaluatedWeek
from setwright.solver.evaluation.finding import Finding
from setwright.solver.linear.linear_model import LinearModel, combined
from setwright.solver.linear.rule import Rule
from setwright.solver.linear.weekly_sets import grain_of, sets_of


def _above(evaluated: EvaluatedWeek, most: float) -> Iterator[tuple[int, str, float]]:
    """(day, muscle, fractional sets) where a muscle has more than so many sets in a day."""
    for day in evaluated.resolved.days:
        for muscle in evaluated.resolved.muscles:
            sets = evaluated.day_sets(muscle, day.index) / WHOLE
            if sets > most:
                yield day.index, muscle, sets


def check_cap(evaluated: EvaluatedWeek) -> Iterator[Finding]:
    """A finding for each muscle and day above the cap."""
    most = evaluated.resolved.limit("muscle-day-cap")
    for day, muscle, sets in _above(evaluated, most):
        yield Finding("muscle-day-cap", subject=muscle, amount=sets, limit=most, days=(day,))


def post_cap(model: LinearModel) -> None:
    """Hold each muscle's sets within the cap on each day."""
    most = round(model.resolved.limit("muscle-day-cap") * WHOLE)
    for group in model.groups:
        for muscle in model.resolved.muscles:
            model.at_most_a_day("muscle-day-cap", sets_of(model, muscle, group.index), most, group.index)


def check_cram(evaluated: EvaluatedWeek) -> Iterator[Finding]:
    """A finding for each muscle and day above what pays."""
    most = evaluated.resolved.limit("muscle-day-cram", "sets")
    for day, muscle, sets in _above(evaluated, most):
        cost = evaluated.resolved.penalty("muscle-day-cram", sets - most)
        yield Finding("muscle-day-cram", cost, subject=muscle, amount=sets, limit=most, days=(day,))


def post_cram(model: LinearModel) -> None:
    """Charge each muscle's sets above what pays in a day."""
    resolved = model.resolved
    most = round(resolved.limit("muscle-day-cram", "sets") * WHOLE)
    for group in model.groups:
        for muscle in resolved.muscles:
            found = sets_of(model, muscle, group.index)
            if sum(v * model.high[j] for j, v in found.items()) > most:
                grain = grain_of(found, most)
                cost = resolved.cost("muscle-day-cram") * grain / WHOLE
                over = model.violation("muscle-day-cram", 20 * WHOLE // grain * len(group.days), cost)
                model.at_most_a_day("muscle-day-cram", combined(found, {over: -grain}), most, group.index)


RULES = (
    Rule(
        id="muscle-day-cap",
        kind="hard",
        scope="planned weeks",
        sentence="A muscle gets at most {limit:g} fractional sets in a day.",
        remedy="spread its sets over another day",
        post=post_cap,
        check=check_cap,
        says="{day}: {subject} has {sets}, at most {limit}",
    ),
    Rule(
        id="muscle-day-cram",
        kind="scored",
        sentence="A muscle should get at most {sets:g} fractional sets in a day.",
        remedy="spread its sets over another day",
        post=post_cram,
        check=check_cram,
        says="{day}: {subject} has {sets}",
    ),
)
