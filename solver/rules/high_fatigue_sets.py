"""High-fatigue sets a day."""

from __future__ import annotations

from collections.abc import Iterator

from setwright.solver.evaluation.finding import Finding, Rule
from setwright.solver.evaluation.resolved_brief import Terms
from setwright.solver.evaluation.evaluated_week import View


def most_high_fatigue(terms: Terms) -> int:
    """How many high-fatigue sets a day may have."""
    return round(terms.limit("high-fatigue-sets", "novice" if terms.experience == "novice" else None))


def check(view: View) -> Iterator[Finding]:
    most = most_high_fatigue(view.terms)
    for day, lines in zip(view.terms.days, view.on, strict=True):
        total = sum(x.sets for x in lines if x.exercise.main_lift)
        if total > most:
            yield Finding("high-fatigue-sets", f"{day.name} has {total} high-fatigue sets, at most {most}")


RULE = Rule(
    id="high-fatigue-sets",
    kind="hard",
    sentence="A day has at most 12 sets of high-fatigue multi-joint lifts, 9 for a novice.",
    remedy="swap one for a machine or a single-joint lift",
    check=check,
)
