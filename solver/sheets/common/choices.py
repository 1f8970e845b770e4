"""Why a line stands in the week, and what may stand there instead."""

from __future__ import annotations

from setwright.catalogue.entries import Exercise
from setwright.solver.auditing import audit
from setwright.solver.evaluation.evaluated_week import Line, View
from setwright.solver.sheets.common.words import listed, muscle_name
from setwright.solver.uses.edits.swaps import for_card

MOST_SWAPS = 2


def why(view: View, line: Line) -> str:
    """A short true reason: a wish of the brief, then the muscles served directly, priorities first."""
    terms, exercise = view.terms, line.exercise
    serves = sorted(exercise.direct, key=lambda m: (m not in terms.priorities, list(terms.muscles).index(m)))
    wanted = [m for m in serves if m in terms.priorities]
    parts = []
    if exercise.id in terms.pinned:
        parts.append("pinned")
    if exercise.movement in terms.brief.must:
        parts.append(f"the {exercise.movement} asked for")
    if wanted:
        parts.append(f"priority: {listed(muscle_name(terms.catalogue, m) for m in wanted)}")
    others = [m for m in serves if m not in wanted]
    if others:
        parts.append(f"direct work for {listed(muscle_name(terms.catalogue, m) for m in others)}")
    indirect = listed(muscle_name(terms.catalogue, m) for m in sorted(exercise.muscles))
    return "; ".join(parts) or f"indirect work for {indirect}"


def swaps(view: View, line: Line) -> tuple[Exercise, ...]:
    """Up to two exercises that may stand in a line's place, the best first; on a full day one may run a little over."""
    return for_card(audit(view.terms, view.week), line, MOST_SWAPS)
