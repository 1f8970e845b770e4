"""The time a whole week takes."""

from __future__ import annotations

from setwright.solver.evaluation.evaluated_week import EvaluatedWeek


def seconds_of_week(evaluated: EvaluatedWeek) -> int:
    """The seconds of all sessions; a day without lines takes none."""
    return sum(evaluated.seconds(day.index) for day in evaluated.resolved.days if evaluated.on[day.index])
