"""Sets per exercise and day."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from typing import Any

from setwright.solver.evaluation.evaluated_week import EvaluatedWeek
from setwright.solver.evaluation.finding import Finding
from setwright.solver.evaluation.prescriptions import MOST_WITH_TECHNIQUE, set_span
from setwright.solver.evaluation.resolved_brief import ResolvedBrief
from setwright.solver.linear.rule import Rule, held_by_columns


def check(evaluated: EvaluatedWeek) -> Iterator[Finding]:
    """A finding for each line with more or fewer sets than its kind of lift has."""
    for line in evaluated.lines:
        least, most = set_span(evaluated.resolved, line.exercise)
        if line.entry.technique != "straight":
            most = min(most, MOST_WITH_TECHNIQUE)
        if not least <= line.sets <= most:
            where = {"days": (line.day.index,), "exercise": line.exercise.id}
            yield Finding("set-range", amount=line.sets, limit=(least, most), **where)  # type: ignore[arg-type]


def figures(resolved: ResolvedBrief) -> Mapping[str, object]:
    """The catalogue's numbers of sets by kind of lift."""
    sets: Any = resolved.default("sets")
    return {
        "least": sets["multi"][0],
        "most": sets["multi"][1],
        "multi_most": sets["multi-most"],
        "trunk": sets["trunk"][1],
        "dose_least": sets["minimum-dose"][0],
        "dose_most": sets["minimum-dose"][1],
    }


RULE = Rule(
    id="set-range",
    kind="hard",
    sentence="An exercise has its {least} to {most} sets a day: {multi_most} at most for multi-joint lifts in growth (not in a one-day week) or for a priority, {trunk} for trunk work, deadlifts and technique sets, {dose_least} to {dose_most} in a minimum dose.",
    remedy="change the sets",
    post=held_by_columns,
    check=check,
    says="{day}: {exercise} has {sets}, not {limit_span}",
    figures=figures,
)
