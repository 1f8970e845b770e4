"""A region without a main lift in the week."""

from __future__ import annotations

from collections.abc import Iterator

from setwright.solver.reckoning.rule import Finding, Rule
from setwright.solver.reckoning.rules.full_session import REGIONS, wanted
from setwright.solver.reckoning.terms import Terms
from setwright.solver.reckoning.view import View


def owed(terms: Terms) -> tuple[str, ...]:
    """The regions that should have a main lift."""
    if terms.goal == "efficiency" or terms.minimum_dose:
        return ()
    return tuple(
        region
        for region in REGIONS
        if wanted(terms, region)
        and any(
            terms.can(d, lambda e, d=d, r=region: e.region == r and terms.rank(e, d) < 3 and terms.builds(e, d))  # type: ignore[misc]
            for d in terms.days
        )
    )


def due(terms: Terms) -> int:
    """How many main lifts a region should have in the week: two from three days on, one for a novice."""
    often = len(terms.days) >= terms.limit("region-main-lift", "twice-days") and terms.experience != "novice"
    return 2 if often else 1


def check(view: View) -> Iterator[Finding]:
    for region in owed(view.terms):
        found = view.count(lambda x, r=region: x.exercise.region == r and view.terms.builds(x.exercise, x.day))  # type: ignore[misc]
        missing = due(view.terms) - found
        if missing > 0:
            text = f"{'one' if found else 'no'} main {region} lift in the week"
            yield Finding("region-main-lift", text, view.terms.charge("region-main-lift", missing))


RULE = Rule(
    id="region-main-lift",
    kind="scored",
    sentence="Each region has a high-fatigue multi-joint lift a week that is no second choice, two in weeks of 3 days or more (one for a novice, none in efficiency).",
    remedy="make one of its lifts a free-weight lift",
    check=check,
)
