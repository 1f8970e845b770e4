"""How the regions of longer weeks are spread over the days: few on a day, each on some days, not on end."""

from __future__ import annotations

from collections.abc import Iterator

from setwright.solver.evaluation.evaluated_week import EvaluatedWeek
from setwright.solver.evaluation.finding import Finding
from setwright.solver.evaluation.resolved_brief import ResolvedBrief
from setwright.solver.linear.columns import REGIONS
from setwright.solver.linear.linear_model import LinearModel, combined
from setwright.solver.linear.rule import Rule
from setwright.solver.rules.full_session import wanted

LEAST_DAYS = 2
"""Days on which a region of a longer week should stand."""


def _long(resolved: ResolvedBrief, rule: str = "theme") -> bool:
    return len(resolved.days) >= resolved.limit(rule, "least-days")


# ---- a fee for each region in a day


def check_theme(evaluated: EvaluatedWeek) -> Iterator[Finding]:
    """A finding for each region, with the days it stands on."""
    for region in REGIONS if _long(evaluated.resolved) else ():
        days = len(evaluated.region_days(region))
        if days:
            yield Finding("theme", evaluated.resolved.penalty("theme", days), subject=region, amount=days)


def post_theme(model: LinearModel) -> None:
    """Charge each day of each region."""
    if _long(model.resolved):
        for trained in model.regions.values():
            model.penalise("theme", trained, model.resolved.cost("theme"))


# ---- on two days at least


def _due_twice(resolved: ResolvedBrief) -> tuple[str, ...]:
    """The regions that should stand on two days, and can."""
    if not _long(resolved, "region-days"):
        return ()

    def possible(region: str) -> int:
        return sum(1 for d in resolved.days if resolved.can(d, lambda e: e.multi_joint and e.region == region))

    return tuple(region for region in REGIONS if wanted(resolved, region) and possible(region) >= LEAST_DAYS)


def check_days(evaluated: EvaluatedWeek) -> Iterator[Finding]:
    """A finding for each region on fewer than two days."""
    for region in _due_twice(evaluated.resolved):
        days = len(evaluated.region_days(region))
        if days < LEAST_DAYS:
            cost = evaluated.resolved.penalty("region-days", LEAST_DAYS - days)
            yield Finding("region-days", cost, subject=region, amount=days, limit=LEAST_DAYS)


def post_days(model: LinearModel) -> None:
    """Charge each day that a region is short of two."""
    for region in _due_twice(model.resolved):
        short = model.violation("region-days", LEAST_DAYS, model.resolved.cost("region-days"))
        model.constrain("region-days", combined(model.region_week(region), {short: 1}), low=LEAST_DAYS)


# ---- on a fourth day


def check_fourth(evaluated: EvaluatedWeek) -> Iterator[Finding]:
    """A finding for each region on more days than pay."""
    most = round(evaluated.resolved.limit("fourth-region-day", "days"))
    for region in REGIONS if _long(evaluated.resolved) else ():
        days = len(evaluated.region_days(region))
        if days > most:
            cost = evaluated.resolved.penalty("fourth-region-day", days - most)
            yield Finding("fourth-region-day", cost, subject=region, amount=days, limit=most)


def post_fourth(model: LinearModel) -> None:
    """Charge each day of a region above those that pay."""
    resolved = model.resolved
    most = round(resolved.limit("fourth-region-day", "days"))
    for region in REGIONS if _long(resolved) else ():
        over = model.violation("fourth-region-day", len(resolved.days), resolved.cost("fourth-region-day"))
        model.constrain("fourth-region-day", combined(model.region_week(region), {over: -1}), high=most)


# ---- on consecutive days


def check_consecutive(evaluated: EvaluatedWeek) -> Iterator[Finding]:
    """A finding for each region on consecutive days."""
    for region in REGIONS if _long(evaluated.resolved) else ():
        days = evaluated.region_days(region)
        runs = sum(1 for i, j in evaluated.resolved.adjacent if i in days and j in days)
        if runs:
            cost = evaluated.resolved.penalty("region-consecutive", runs)
            yield Finding("region-consecutive", cost, subject=region, amount=runs)


def post_consecutive(model: LinearModel) -> None:
    """Charge each two consecutive days of a region; without days, those that no week of so many days can avoid."""
    resolved = model.resolved
    if not _long(resolved):
        return
    cost = resolved.cost("region-consecutive")
    for region in REGIONS:
        if not (model.daily or model.patterned):
            over = model.violation("region-consecutive", len(resolved.days), cost)
            week = combined(model.region_week(region), {over: -1})
            model.constrain("region-consecutive", week, high=_most_apart(resolved))
            continue
        for earlier, later in resolved.adjacent:
            both = model.violation("region-consecutive", 1, cost)
            days = combined(model.on_day.get((region, earlier), {}), model.on_day.get((region, later), {}))
            model.constrain("region-consecutive", combined(days, {both: -1}), high=1)


def _most_apart(resolved: ResolvedBrief) -> int:
    """The most days of the week of which no two are consecutive."""
    count = len(resolved.days)
    return max(
        mask.bit_count()
        for mask in range(2**count)
        if not any(mask >> i & 1 and mask >> j & 1 for i, j in resolved.adjacent)
    )


def _least_days(resolved: ResolvedBrief) -> dict[str, object]:
    return {"least_days": f"{resolved.limit('theme', 'least-days'):g}"}


RULES = (
    Rule(
        id="theme",
        kind="scored",
        sentence="In weeks of {least_days:g} or more days each region trained on a day costs a little, so that days have a theme.",
        remedy="gather a region's lifts on fewer days",
        post=post_theme,
        check=check_theme,
        says="{subject} is trained on {amount} days",
    ),
    Rule(
        id="region-days",
        kind="scored",
        sentence="In weeks of {least_days:g} or more days each region should be trained on at least 2 days.",
        remedy="give the region a second day",
        post=post_days,
        check=check_days,
        says="{subject} is trained on {amount} of {limit} days",
    ),
    Rule(
        id="fourth-region-day",
        kind="scored",
        sentence="In weeks of {least_days} or more days a region should be trained on at most {days:g} days.",
        remedy="gather the region's lifts on fewer days",
        post=post_fourth,
        check=check_fourth,
        says="{subject} is trained on {amount} days",
        figures=_least_days,
    ),
    Rule(
        id="region-consecutive",
        kind="scored",
        sentence="In weeks of {least_days} or more days a region should not be trained on two consecutive days.",
        remedy="move one of its days",
        post=post_consecutive,
        check=check_consecutive,
        says="{subject} is trained on consecutive days",
        figures=_least_days,
    ),
)
