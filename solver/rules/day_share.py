"""No idle day in efficiency."""

from __future__ import annotations

from collections.abc import Iterator, Mapping

from setwright.solver.evaluation.evaluated_week import EvaluatedWeek
from setwright.solver.evaluation.finding import Finding
from setwright.solver.evaluation.resolved_brief import ResolvedBrief
from setwright.solver.linear.linear_model import Expression, LinearModel, combined, scaled
from setwright.solver.linear.rule import Rule


def check(evaluated: EvaluatedWeek) -> Iterator[Finding]:
    """A finding for each day that takes less than its part of the seconds used."""
    resolved = evaluated.resolved
    if resolved.goal != "efficiency":
        return
    share = resolved.limit("day-share")
    held = [day for day in resolved.days if not day.missed]
    used = sum(evaluated.seconds(d.index) for d in held)
    whole = sum(d.minutes for d in held)
    for day in held:
        due = share * used * day.minutes / whole
        if evaluated.seconds(day.index) < due:
            yield Finding("day-share", amount=evaluated.seconds(day.index), limit=round(due), days=(day.index,))


def post(model: LinearModel) -> None:
    """Hold each day, or each group of like days, to its part of the seconds used."""
    resolved = model.resolved
    if resolved.goal != "efficiency" or len(resolved.days) < 2:
        return
    share = round(100 * resolved.limit("day-share"))
    whole = sum(d.minutes for d in resolved.days if not d.missed)
    listed = _parts(model)
    used = combined(*(seconds for seconds, _, _ in listed))
    constant = sum(fixed for _, fixed, _ in listed)
    for seconds, fixed, minutes in listed:
        row = combined(scaled(seconds, 100 * whole), scaled(used, -share * minutes))
        model.constrain("day-share", row, low=share * minutes * constant - 100 * whole * fixed)


def _parts(model: LinearModel) -> list[tuple[Expression, int, int]]:
    """(half seconds, half seconds beside exercises as planned, minutes) of each day, or of each group of like days."""
    resolved = model.resolved
    if model.daily:
        days = [(g.index, day) for g in model.groups if not (day := model.day(g.index)).missed]
        return [(_worked(model, index), 2 * day.overhead, day.minutes) for index, day in days]
    return [
        (
            _session(model, like),
            sum(2 * resolved.days[d].overhead for d in days),
            sum(resolved.days[d].minutes for d in days),
        )
        for like, days in enumerate(model.instance.like_days)
        if not model.instance.day(like).missed
    ]


def _worked(model: LinearModel, group: int) -> Expression:
    """The half seconds of a group of days, less the warm-up it gives up."""
    given = model.given[group]
    return combined(model.work[group], {given: -2} if given is not None else {})


def _session(model: LinearModel, like: int) -> Expression:
    """The half seconds of all groups of like days, less their warm-ups as planned."""
    return combined(*(_worked(model, group.index) for group in model.groups if group.like == like))


def figures(resolved: ResolvedBrief) -> Mapping[str, object]:
    """The share in hundredths."""
    return {"percent": f"{100 * resolved.limit('day-share'):g}"}


RULE = Rule(
    id="day-share",
    kind="hard",
    scope="planned weeks",
    sentence="In efficiency no day that is held takes less than {percent} % of its share of the minutes used.",
    remedy="move sets from the longest day",
    post=post,
    check=check,
    says="{day} takes {amount} s, its part is {limit} s",
    figures=figures,
)
