"""A session fits its minutes, and gives up general warm-up where a full day makes it."""

from __future__ import annotations

from collections.abc import Iterator

from setwright.solver.evaluation.evaluated_week import EvaluatedWeek, ramp_levels
from setwright.solver.evaluation.finding import Finding
from setwright.solver.linear.columns import REGIONS
from setwright.solver.linear.linear_model import Expression, LinearModel, combined, scaled
from setwright.solver.linear.region_days import trained_days
from setwright.solver.linear.rule import Rule


def check_minutes(evaluated: EvaluatedWeek) -> Iterator[Finding]:
    """A finding for each session that takes more seconds than its day has."""
    for day in evaluated.resolved.days:
        seconds = evaluated.seconds(day.index)
        if evaluated.on[day.index] and seconds > day.limit:
            yield Finding("day-minutes", amount=seconds, limit=day.limit, days=(day.index,))


def check_warm_up(evaluated: EvaluatedWeek) -> Iterator[Finding]:
    """A finding for each session that gives up seconds of its general warm-up."""
    for day, lines in zip(evaluated.resolved.days, evaluated.on, strict=True):
        given = day.warm_up - evaluated.warm_up(day.index)
        if lines and given > 0:
            cost = evaluated.resolved.penalty("warm-up-given", given)
            yield Finding("warm-up-given", cost, amount=given, days=(day.index,))


def post(model: LinearModel) -> None:
    """Hold each day's seconds within its limit, with a variable for the warm-up it gives up."""
    resolved = model.resolved
    for group in model.groups:
        seconds = model.total(lambda e, p: p.half_seconds, group.index)
        for region in REGIONS:
            seconds = combined(seconds, scaled(_ramp_up(model, region, group.index), 2))
        model.work[group.index] = seconds
        day = model.day(group.index)
        room = 2 * (day.limit - day.overhead)
        if room < 0:
            # A day shorter than its warm-up holds nothing unless the warm-up gives way; an empty day is sound.
            room = max(0, room + 2 * day.warm_up_give)
        elif day.warm_up_give and not resolved.forced("warm-up-given"):
            cost = 0.0 if resolved.off("warm-up-given") else resolved.cost("warm-up-given")
            given = model.variable(day.warm_up_give * len(group.days), -cost)
            model.given[group.index] = given
            model.at_most_a_day("warm-up-given", {given: 1}, day.warm_up_give, group.index)
            seconds = combined(seconds, {given: -2})
        if not resolved.off("day-minutes"):
            model.at_most_a_day("day-minutes", seconds, room, group.index)


def _ramp_up(model: LinearModel, region: str, group: int) -> Expression:
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


def post_with_minutes(model: LinearModel) -> None:
    """Post nothing: what is given up of a warm-up is posted with the day's minutes."""


RULES = (
    Rule(
        id="day-minutes",
        kind="hard",
        sentence="A session, with warm-up, ramp-up sets, rests and change-overs, fits the day's minutes.",
        remedy="cut a set or a rest, or give the day more minutes",
        post=post,
        check=check_minutes,
        says="{day} takes {amount} s of {limit} s",
        always=True,
    ),
    Rule(
        id="warm-up-given",
        kind="scored",
        sentence="A full day may shorten its general warm-up, at a cost for each second.",
        remedy="cut a set",
        post=post_with_minutes,
        check=check_warm_up,
        says="{day} gives up {amount} s of its warm-up",
    ),
)
