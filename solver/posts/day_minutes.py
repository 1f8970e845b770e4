"""A session's seconds within its minutes, ramp-up sets by region included."""

from __future__ import annotations

from setwright.solver.evaluation.evaluated_week import ramp_levels
from setwright.solver.evaluation.resolved_brief import ResolvedBrief
from setwright.solver.linear.columns import REGIONS
from setwright.solver.linear.linear_model import Expression, LinearModel, combined, scaled
from setwright.solver.linear.region_days import trained_days


def warm_up_cost(resolved: ResolvedBrief) -> float:
    return 0.0 if resolved.off("warm-up-given") else resolved.cost("warm-up-given")


def ramp_up(model: LinearModel, region: str, group: int) -> Expression:
    """The ramp-up seconds of a region: once a day what its heaviest lift asks for, more for a second heavy barbell."""
    resolved = model.resolved
    trained = model.regions.get((region, group), {})
    if not trained:
        return {}
    days = len(model.groups[group].days)
    seconds: Expression = {}
    before, lifts = 0, model.count(lambda e: e.multi_joint and e.region == region, group)
    for wanted, asked in ramp_levels(resolved, region, model.day(group)):
        some = model.count(lambda e, w=wanted: e.multi_joint and e.region == region and w(e), group)
        if some:
            due = trained if some == lifts else trained_days(model, some, group)
            seconds = combined(seconds, scaled(due, asked - before))
            before = asked
    heavy = model.count(lambda e: e.main_lift and e.barbell and e.region == region, group)
    if heavy:
        second = model.variable(3 * days)
        model.constrain("day-minutes", combined(heavy, scaled(trained, -1), {second: -1}), high=0)
        seconds = combined(seconds, {second: round(resolved.number("ramp-second-seconds"))})
    return seconds


def post(model: LinearModel) -> None:
    resolved = model.resolved
    for group in model.groups:
        seconds = model.total(lambda e, o: o.half_seconds, group.index)
        for region in REGIONS:
            seconds = combined(seconds, scaled(ramp_up(model, region, group.index), 2))
        model.work[group.index] = seconds
        day = model.day(group.index)
        room = 2 * (day.limit - day.warm_up)
        if room < 0:
            # A day shorter than its warm-up holds nothing unless the warm-up gives way; an empty day is sound.
            room = max(0, room + 2 * day.warm_up_give)
        elif day.warm_up_give and not resolved.forced("warm-up-given"):
            given = model.variable(day.warm_up_give * len(group.days), -warm_up_cost(resolved))
            model.given[group.index] = given
            model.at_most_a_day("warm-up-given", {given: 1}, day.warm_up_give, group.index)
            seconds = combined(seconds, {given: -2})
        if not resolved.off("day-minutes"):
            model.at_most_a_day("day-minutes", seconds, room, group.index)
