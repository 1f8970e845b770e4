"""Why a line stands in the week, in a few words."""

from __future__ import annotations

from setwright.solver.evaluation.evaluated_week import EvaluatedWeek, Line
from setwright.solver.sheets.common.words import listed, muscle_name


def line_purpose(evaluated: EvaluatedWeek, line: Line) -> str:
    """What a line is for: a wish of the brief, then the muscles it trains directly, priorities first."""
    resolved, exercise = evaluated.resolved, line.exercise
    serves = sorted(exercise.direct, key=lambda m: (m not in resolved.priorities, list(resolved.muscles).index(m)))
    wanted = [m for m in serves if m in resolved.priorities]
    parts = []
    if exercise.id in resolved.pinned:
        parts.append("pinned")
    if exercise.movement in resolved.brief.must:
        parts.append(f"the {exercise.movement} asked for")
    if wanted:
        parts.append(f"priority: {listed(muscle_name(resolved.catalogue, m) for m in wanted)}")
    others = [m for m in serves if m not in wanted]
    if others:
        parts.append(f"direct work for {listed(muscle_name(resolved.catalogue, m) for m in others)}")
    indirect = listed(muscle_name(resolved.catalogue, m) for m in sorted(exercise.muscles))
    return "; ".join(parts) or f"indirect work for {indirect}"
