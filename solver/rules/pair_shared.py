"""An indirect muscle that both members of a pair tire."""

from __future__ import annotations

from collections.abc import Iterator

from setwright.solver.evaluation.evaluated_week import EvaluatedWeek
from setwright.solver.evaluation.finding import Finding, Rule
from setwright.solver.evaluation.pairs import shared_indirect


def check(evaluated: EvaluatedWeek) -> Iterator[Finding]:
    for line in evaluated.lines:
        if line.entry.partner is not None and line.exercise.id < line.entry.partner:
            other = evaluated.resolved.catalogue.exercises[line.entry.partner]
            shared = shared_indirect(line.exercise, other)
            if shared:
                text = f"{line.where} and {other.name} share {', '.join(shared)}"
                yield Finding("pair-shared", text, evaluated.resolved.penalty("pair-shared", len(shared)))


RULE = Rule(
    id="pair-shared",
    kind="scored",
    sentence="A muscle that both members of a pair train indirectly costs.",
    remedy="pair it with another exercise",
    check=check,
)
