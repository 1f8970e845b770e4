"""Hand-built weeks for the uses: compact lines on a brief, and their audits."""

from __future__ import annotations

from dataclasses import replace

from light_search import LITTLE

from setwright.solver.auditing import Audit
from setwright.solver.evaluation.evaluated_week import Line

TINY = replace(LITTLE, rounds=2)
GYM = (
    "barbell-back-squat 3, dumbbell-bench-press 3, chest-supported-dumbbell-row 3, dumbbell-curl 2",
    "barbell-romanian-deadlift 3, machine-shoulder-press 2, wide-grip-pulldown 3, dumbbell-side-raise 2",
)
PAIRED = (
    "dumbbell-curl 2 with=lying-dumbbell-triceps-extension, "
    "lying-dumbbell-triceps-extension 2 with=dumbbell-curl, machine-chest-press 3",
)


def line(found: Audit, exercise: str, day: int = 0) -> Line:
    """The line of an exercise on a day."""
    return next(x for x in found.evaluated.on[day] if x.exercise.id == exercise)
