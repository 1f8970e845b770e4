"""Where a drop set or rest-pause may end the last set."""

from __future__ import annotations

from collections.abc import Iterator

from setwright.solver.evaluation.evaluated_week import EvaluatedWeek
from setwright.solver.evaluation.finding import Finding, Rule
from setwright.solver.evaluation.prescriptions import techniques_of


def check(evaluated: EvaluatedWeek) -> Iterator[Finding]:
    for line in evaluated.lines:
        entry = line.entry
        if entry.technique == "straight" and entry.drops == 0:
            continue
        allowed = techniques_of(evaluated.resolved, line.exercise)
        if (entry.technique, entry.drops) not in allowed or entry.partner is not None:
            yield Finding("technique", f"{line.where} ends in {entry.technique}")


RULE = Rule(
    id="technique",
    kind="hard",
    sentence="A drop set or rest-pause ends only the last set of a single-joint lift of both limbs that is safe to fail and allows it.",
    remedy="make it straight sets",
    check=check,
)
