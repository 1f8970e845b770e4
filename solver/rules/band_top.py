"""No work of its own for a muscle above its band."""

from __future__ import annotations

from collections.abc import Iterator

from setwright.solver.evaluation.evaluated_week import WHOLE, EvaluatedWeek
from setwright.solver.evaluation.finding import Finding, Rule, some_sets


def check(evaluated: EvaluatedWeek) -> Iterator[Finding]:
    for muscle in evaluated.resolved.muscles.values():
        sets = evaluated.weekly_sets(muscle.id) / WHOLE
        own = [line for line in evaluated.lines if evaluated.resolved.own_muscle(line.exercise) == muscle.id]
        if sets > muscle.high and own and not muscle.exact_high:
            text = f"{muscle.id} has {some_sets(sets)} above {muscle.high:g}, yet {own[0].exercise.name} stands"
            yield Finding("band-top", text)


RULE = Rule(
    id="band-top",
    kind="hard",
    sentence="Above the upper end of a muscle's band no exercise whose only direct muscle it is may stand.",
    remedy="cut its sets",
    check=check,
)
