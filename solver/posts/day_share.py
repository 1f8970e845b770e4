"""No idle day in efficiency."""

from __future__ import annotations

from setwright.solver.linear.linear_model import Expression, LinearModel, combined, scaled


def worked(model: LinearModel, group: int) -> Expression:
    """A cell's half seconds, less the warm-up it gives up."""
    given = model.given[group]
    return combined(model.work[group], {given: -2} if given is not None else {})


def session(model: LinearModel, like: int) -> Expression:
    """The half seconds of a group of like days, less their warm-ups as planned."""
    found: Expression = {}
    for group in model.groups:
        if group.like == like:
            found = combined(found, worked(model, group.index))
    return found


def parts(model: LinearModel) -> list[tuple[Expression, int, int]]:
    """(half seconds, planned half seconds of warm-up, minutes) of each day, or of each group of like days."""
    resolved = model.resolved
    if model.daily:
        return [
            (
                worked(model, c.index),
                2 * model.day(c.index).warm_up,
                model.day(c.index).minutes,
            )
            for c in model.groups
        ]
    return [
        (
            session(model, g),
            sum(2 * resolved.days[d].warm_up for d in days),
            sum(resolved.days[d].minutes for d in days),
        )
        for g, days in enumerate(model.instance.like_days)
    ]


def post(model: LinearModel) -> None:
    resolved = model.resolved
    if resolved.goal != "efficiency" or len(resolved.days) < 2:
        return
    share = round(100 * resolved.limit("day-share"))
    whole = sum(d.minutes for d in resolved.days)
    listed = parts(model)
    used = combined(*(seconds for seconds, _, _ in listed))
    constant = sum(fixed for _, fixed, _ in listed)
    for seconds, fixed, minutes in listed:
        constrain = combined(scaled(seconds, 100 * whole), scaled(used, -share * minutes))
        model.constrain("day-share", constrain, low=share * minutes * constant - 100 * whole * fixed)
