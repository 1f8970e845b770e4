"""Working sets a day."""

from __future__ import annotations

from collections.abc import Iterator

from setwright.solver.evaluation.evaluated_week import EvaluatedWeek
from setwright.solver.evaluation.finding import Finding, Rule


def check(evaluated: EvaluatedWeek) -> Iterator[Finding]:
    most = round(evaluated.resolved.limit("day-sets", evaluated.resolved.experience))
    for day, lines in zip(evaluated.resolved.days, evaluated.on, strict=True):
        over = sum(line.sets for line in lines) - most
        if over > 0:
            text = f"{day.name} has {most + over} sets"
            yield Finding("day-sets", text, evaluated.resolved.penalty("day-sets", over))


RULE = Rule(
    id="day-sets",
    kind="scored",
    sentence="Each working set a day above 25 (a novice 18) costs.",
    remedy="move sets to another day",
    check=check,
)
