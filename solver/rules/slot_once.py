"""One exercise of a slot a day."""

from __future__ import annotations

from collections.abc import Iterator

from setwright.solver.evaluation.evaluated_week import EvaluatedWeek
from setwright.solver.evaluation.finding import Finding, Rule


def check(evaluated: EvaluatedWeek) -> Iterator[Finding]:
    for day, lines in zip(evaluated.resolved.days, evaluated.on, strict=True):
        seen: dict[str, str] = {}
        for line in lines:
            slot = line.exercise.slot
            if slot.id in seen:
                yield Finding("slot-once", f"{day.name}: {line.exercise.name} repeats the slot of {seen[slot.id]}")
            seen[slot.id] = line.exercise.name


RULE = Rule(
    id="slot-once",
    kind="hard",
    sentence="A day has at most one exercise of a movement at one angle.",
    remedy="move one of them to another day",
    check=check,
)
