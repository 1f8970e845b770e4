"""The week's muscles, goal and minutes as a client reads them."""

from __future__ import annotations

from setwright.catalogue.entries import Catalogue
from setwright.solver.brief.schema import Brief
from setwright.solver.evaluation.evaluated_week import WHOLE, EvaluatedWeek
from setwright.solver.evaluation.resolved_brief import ResolvedBrief
from setwright.solver.evaluation.resolved_day import MuscleTarget
from setwright.solver.evaluation.resolving import WIDE_OPEN
from setwright.solver.evaluation.uncertainty import intervals
from setwright.solver.sheets.common.words import counted, listed
from setwright.solver.sheets.handout.coach import Coach
from setwright.solver.sheets.handout.values import MuscleRow

GOALS = {
    "growth": "muscle growth, with the long rests that it asks for",
    "efficiency": "the most from the fewest minutes",
    "balanced": "a balance of muscle growth and time",
}


def muscle_rows(evaluated: EvaluatedWeek, coach: Coach) -> tuple[MuscleRow, ...]:
    """Every muscle that is sought or trained."""
    sure, names = intervals(evaluated), evaluated.resolved.catalogue.muscles
    return tuple(
        MuscleRow(
            id=m.id,
            name=coach.muscles.get(m.id, names[m.id].name),
            emphasis=m.emphasis,
            sets=round(evaluated.weekly_sets(m.id) / WHOLE, 2),
            days=evaluated.direct_days(m.id),
            band=band_of(m),
            index=round(evaluated.index(m.id)),
            interval=sure[m.id],
        )
        for m in evaluated.resolved.muscles.values()
        if m.weight or evaluated.weekly_sets(m.id)
    )


def band_of(muscle: MuscleTarget) -> tuple[float, float | None] | None:
    """The band of weekly sets, or None for a muscle that is only counted."""
    if muscle.high >= WIDE_OPEN:
        return (muscle.low, None) if muscle.low else None
    return muscle.low, muscle.high


def muscle_names(catalogue: Catalogue, coach: Coach) -> dict[str, str]:
    """Each muscle's name inside a sentence."""
    return {m.id: coach.muscles.get(m.id, m.name.lower()) for m in catalogue.muscles.values()}


def goal_words(resolved: ResolvedBrief, coach: Coach) -> str:
    """The goal as a client says it, with what comes first."""
    names = muscle_names(resolved.catalogue, coach)
    first = f"; {listed(names[m] for m in resolved.priorities)} first" if resolved.priorities else ""
    return f"{GOALS[resolved.goal]}{first}"


def asked_words(brief: Brief) -> str:
    """3 days x 40 min, or the minutes of each day."""
    minutes = [day.minutes for day in brief.days]
    each = f"{minutes[0]}" if len(set(minutes)) == 1 else ", ".join(map(str, minutes))
    return f"{counted(len(minutes), 'day')} x {each} min"
