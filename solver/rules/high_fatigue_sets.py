"""High-fatigue sets a day."""

from __future__ import annotations

from collections.abc import Iterator

from setwright.solver.evaluation.evaluated_week import EvaluatedWeek
from setwright.solver.evaluation.finding import Finding, Rule
from setwright.solver.evaluation.resolved_brief import ResolvedBrief


def most_high_fatigue(resolved: ResolvedBrief) -> int:
    """How many high-fatigue sets a day may have."""
    return round(resolved.limit("high-fatigue-sets", "novice" if resolved.experience == "novice" else None))


def check(evaluated: EvaluatedWeek) -> Iterator[Finding]:
    most = most_high_fatigue(evaluated.resolved)
    for day, lines in zip(evaluated.resolved.days, evaluated.on, strict=True):
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
