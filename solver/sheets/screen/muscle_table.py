"""The muscles of a week as a table: sets, band and index."""

from __future__ import annotations

from setwright.solver.auditing import Audit
from setwright.solver.evaluation.evaluated_week import WHOLE
from setwright.solver.evaluation.resolved_day import MuscleTarget
from setwright.solver.evaluation.resolving import WIDE_OPEN
from setwright.solver.evaluation.uncertainty import intervals
from setwright.solver.sheets.common.grid import grid
from setwright.solver.sheets.common.words import span, wrapped

WHAT_INDEX_IS = (
    "Index 100: the stimulus of ten good weekly sets. Intervals come from the ranges of the published numbers; "
    "they are means of groups, no promise to one person."
)


def muscle_lines(audit: Audit, width: int) -> list[str]:
    """Sets, band and index of every muscle that is sought or trained."""
    evaluated = audit.evaluated
    ends = intervals(evaluated)
    table = []
    for m in evaluated.resolved.muscles.values():
        sets = evaluated.weekly_sets(m.id) / WHOLE
        if not sets and not m.weight:
            continue
        low, high = ends[m.id]
        table.append(
            [
                evaluated.resolved.catalogue.muscles[m.id].name,
                m.emphasis,
                f"{sets:.2f}".rstrip("0").rstrip("."),
                str(evaluated.direct_days(m.id)),
                band_words(m),
                f"{evaluated.index(m.id):.0f}",
                f"{low} to {high}",
                "below" if sets < m.low else "above" if sets > m.high else "",
            ]
        )
    headings = ["Muscle", "Emphasis", "Sets", "Days", "Band", "Index", "Interval", ""]
    return [*grid(headings, table, "llrrrrrl"), *wrapped(WHAT_INDEX_IS, width)]


def muscles_below(audit: Audit) -> tuple[str, ...]:
    """The names of the muscles below their band, in the order of the table."""
    evaluated = audit.evaluated
    return tuple(evaluated.resolved.catalogue.muscles[m.id].name.lower() for m in evaluated.below_band)


def band_words(muscle: MuscleTarget) -> str:
    """A muscle's band of weekly sets: 4-15, from 4, or nothing."""
    if muscle.high >= WIDE_OPEN:
        return f"from {muscle.low:g}" if muscle.low else ""
    return span(muscle.low, muscle.high)
