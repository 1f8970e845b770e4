"""Working sets a week."""

from __future__ import annotations

from collections.abc import Iterator

from setwright.solver.evaluation.evaluated_week import EvaluatedWeek
from setwright.solver.evaluation.finding import Finding, Rule


def check(evaluated: EvaluatedWeek) -> Iterator[Finding]:
    most = round(evaluated.resolved.limit("week-sets", evaluated.resolved.experience))
    over = sum(line.sets for line in evaluated.lines) - most
    if over > 0:
        yield Finding("week-sets", f"{most + over} sets in the week", evaluated.resolved.penalty("week-sets", over))


RULE = Rule(
    id="week-sets",
    kind="scored",
    sentence="Each working set a week above 60, 90 or 130 (novice, intermediate, advanced) costs.",
    remedy="cut sets, or spread them over weeks",
    check=check,
)
