"""Where a drop set or rest-pause may end the last set."""

from __future__ import annotations

from collections.abc import Iterator

from setwright.solver.evaluation.evaluated_week import EvaluatedWeek
from setwright.solver.evaluation.finding import Finding
from setwright.solver.evaluation.prescriptions import techniques_of
from setwright.solver.linear.rule import Rule, held_by_columns


def check(evaluated: EvaluatedWeek) -> Iterator[Finding]:
    """A finding for each line that ends in a technique it may not have; see also caution-technique."""
    if evaluated.resolved.client_limits.techniques_off:
        return
    for line in evaluated.lines:
        entry = line.entry
        if entry.technique == "straight" and entry.drops == 0:
            continue
        allowed = techniques_of(evaluated.resolved, line.exercise)
        if (entry.technique, entry.drops) not in allowed or entry.partner is not None:
            yield Finding("technique", case=entry.technique, days=(line.day.index,), exercise=line.exercise.id)


RULE = Rule(
    id="technique",
    kind="hard",
    scope="planned weeks",
    sentence="Only the last set of a single-joint lift of both limbs that is safe to fail may be a drop set or rest-pause set.",
    remedy="make it straight sets",
    post=held_by_columns,
    check=check,
    says={
        "straight": "{day}: {exercise} has drops beside straight sets",
        "drop": "{day}: {exercise} ends in a drop set",
        "rest-pause": "{day}: {exercise} ends in rest-pause",
    },
)
