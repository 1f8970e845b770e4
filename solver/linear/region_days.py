"""Which regions a day trains: variables that ramp-up, full sessions and region patterns share."""

from __future__ import annotations

from setwright.solver.linear.columns import REGIONS
from setwright.solver.linear.linear_model import Expression, LinearModel, combined, scaled


def post_regions(model: LinearModel) -> None:
    """Make the days on which each group trains each region, and where groups have patterns their numbers of days."""
    if model.patterned:
        post_patterns(model)
    for group in model.groups:
        for region in REGIONS:
            lifts = model.count(lambda e, r=region: e.multi_joint and e.region == r, group.index)  # type: ignore[misc]
            if group.regions is not None:
                days, _ = model.size(group.index)
                if region in group.regions:
                    model.regions[region, group.index] = days
                    model.constrain("full-session", combined(lifts, scaled(days, -1)), low=0)
            elif lifts:
                model.regions[region, group.index] = trained = trained_days(model, lifts, group.index)
                if len(group.days) == 1:
                    model.on_day[region, group.days[0]] = trained


def trained_days(model: LinearModel, lifts: Expression, group: int) -> Expression:
    """The days of a group with one of these lifts: no fewer than any slot's, no more than there are lifts."""
    trained = {model.variable(len(model.groups[group].days)): 1}
    if model.resolved.off("slot-once"):
        for j in lifts:
            model.constrain("day-minutes", combined({j: 1}, scaled(trained, -model.high[j])), high=0)
        return trained
    by_slot: dict[str, Expression] = {}
    for j in lifts:
        for assignment in model.columns[j].assignments:
            by_slot.setdefault(model.exercise(assignment.cls).slot.id, {})[j] = 1
    for slot in sorted(by_slot):
        model.constrain("day-minutes", combined(by_slot[slot], scaled(trained, -1)), high=0)
    model.constrain("day-minutes", combined(lifts, scaled(trained, -1)), low=0)
    return trained


def post_patterns(model: LinearModel) -> None:
    """Let each day take one region pattern; a group's size is the number of its days that take its pattern."""
    chosen: dict[int, Expression] = {group.index: {} for group in model.groups}
    for day in model.resolved.days:
        like = model.instance.like_of[day.index]
        picks: Expression = {}
        for group in model.groups:
            if group.like == like:
                pick = model.variable(1)
                picks[pick] = 1
                chosen[group.index][pick] = 1
                for region in group.regions or ():
                    model.on_day.setdefault((region, day.index), {})[pick] = 1
        model.constrain("day-minutes", picks, low=1, high=1)
    for group in model.groups:
        size = model.variable(len(group.days))
        model.constrain("day-minutes", combined(chosen[group.index], {size: -1}), low=0, high=0)
        model.days_in[group.index] = {size: 1}
