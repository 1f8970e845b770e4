"""Load on the spine in a day."""

from __future__ import annotations

from collections.abc import Iterator

from setwright.solver.evaluation.evaluated_week import EvaluatedWeek
from setwright.solver.evaluation.finding import Finding, Rule


def check(evaluated: EvaluatedWeek) -> Iterator[Finding]:
    most = evaluated.resolved.limit("axial-load")
    for day, lines in zip(evaluated.resolved.days, evaluated.on, strict=True):
        total = sum(x.sets * x.exercise.axial for x in lines)
        if total > most:
            yield Finding("axial-load", f"{day.name} has {total} sets x axial load, at most {most:g}")


RULE = Rule(
    id="axial-load",
    kind="hard",
    sentence="The day's sets times axial load stay within 14.",
    remedy="swap a lift for one that spares the spine",
    check=check,
)
