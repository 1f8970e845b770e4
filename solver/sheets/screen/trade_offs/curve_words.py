"""What a time curve says, in sentences: its bend, where nothing more was found, what is left open, how it was made."""

from __future__ import annotations

from itertools import pairwise
from typing import TYPE_CHECKING

from setwright.solver.sheets.common.words import counted, listed
from setwright.solver.sheets.document.solved_week import UNPROVEN
from setwright.solver.uses.time_budget.time_curve import HALF_HOUR

if TYPE_CHECKING:
    from setwright.solver.uses.time_budget.time_curve import CurvePoint, TimeCurve

UNIT = {"minutes": "min a session", "weekly": "min a week", "days": "days"}
WHAT_BEND_IS = (
    "The bend is the point farthest above the straight line from the first point to the last, both axes scaled to "
    "0..1; another range of minutes may bend elsewhere."
)
FLAT = 0.005
"""Indices nearer to the last row's than this share of its index count as no further gain (convention)."""
WIDE = 0.02
"""A gap above this share of the index is worth a warning (convention)."""
LEAST_FALL = 0.1
"""Index points by which a row must lie below the one before it to be worth a sentence (convention)."""


def curve_sentences(curve: TimeCurve) -> list[str]:
    """Every sentence that applies, the bend first."""
    said = [_bend(curve), _flat(curve), _falling(curve), _open(curve), _none(curve), *_how(curve)]
    return [text for text in said if text]


def _bend(curve: TimeCurve) -> str:
    """The bend and what half an hour buys before and after it."""
    found = curve.solved_points
    if curve.knee is None or len(found) < 3:
        return "No bend: fewer than three rows have a week, or no row lies above the straight line between the ends."
    knee = curve.points[curve.knee]
    before, after = _slope(found[0], knee), _slope(knee, found[-1])
    unit = "day" if curve.kind == "days" and knee.amount == 1 else UNIT[curve.kind]
    at = f"{knee.amount} {unit}" + ("" if curve.kind == "weekly" else f" ({knee.given} min a week)")
    return (
        f"The curve bends at {at}: up to there a further half hour a week adds {before:.1f} index points on "
        f"average, beyond it {after:.1f}. {WHAT_BEND_IS}"
    )


def _slope(first: CurvePoint, last: CurvePoint) -> float:
    """Index points for each half hour a week between two points."""
    return (last.index - first.index) * HALF_HOUR / max(1, last.given - first.given)


def _flat(curve: TimeCurve) -> str:
    """From where on next to nothing was found, and what the proof leaves above it."""
    found = curve.solved_points
    best = found[-1].solved if found else None
    if best is None:
        return ""
    near = FLAT * best.stimulus
    flat = next(i for i in range(len(found)) if all(abs(best.stimulus - p.index) <= near for p in found[i:]))
    here = found[flat].solved
    if here is None or flat == len(found) - 1:
        return ""
    more = best.stimulus - here.stimulus
    gives = f"the best week found has an index {more:.1f} points higher" if more >= 0.05 else "no better week was found"
    left = f"; none can score more than {best.bound - here.score:.1f} points above it" if best.bound < UNPROVEN else ""
    return f"Beyond {found[flat].amount} {UNIT[curve.kind]} next to nothing is gained: {gives}{left}."


def _falling(curve: TimeCurve) -> str:
    """Where a longer week has the lower index, why."""
    found = curve.solved_points
    falls = [after for before, after in pairwise(found) if before.index - after.index >= LEAST_FALL]
    if not falls:
        return ""
    return (
        f"At {listed(str(point.amount) for point in falls)} {UNIT[curve.kind]} the index is lower than in the row "
        "before: that week is the better one by what it gives up less."
    )


def _open(curve: TimeCurve) -> str:
    """A warning where the proven gap is wide enough to hide a step."""
    gaps = [(point.solved.gap, point) for point in curve.points if point.solved and point.solved.bound < UNPROVEN]
    wide = [(gap, point) for gap, point in gaps if point.solved and gap > WIDE * abs(point.solved.stimulus)]
    if not wide:
        return ""
    gap, point = max(wide, key=lambda pair: pair[0])
    narrower = {"quick": "normal", "normal": "thorough"}.get(curve.limits.name)
    advice = f"; a {narrower} search makes it narrower" if narrower else ""
    return (
        "Steps smaller than the gap may come from the search and not from the time: it is widest at "
        f"{point.amount} {UNIT[curve.kind]}, {gap:.1f} points{advice}."
    )


def _none(curve: TimeCurve) -> str:
    """The amounts without a week."""
    none = [str(point.amount) for point in curve.points if point.solved is None]
    if not none:
        return ""
    at = f"{listed(none)} {UNIT[curve.kind]}"
    return f"No week was found at {at}: a search for the week of that brief says what clashes."


def _how(curve: TimeCurve) -> list[str]:
    """How the rows came about."""
    named = "search" if curve.searches == 1 else "searches"
    said = [
        f"{counted(len(curve.points), 'row')} from {curve.searches} {curve.limits.name} {named}. "
        "Where a week for less time has the better score, the index less what is given up, it is taken."
    ]
    if curve.kind == "days":
        said = [f"{said[0]} A row is the best week of at most so many days; a day may be left unused."]
    if any(point.solved and point.solved.resolved.goal == "efficiency" for point in curve.points):
        said.append("Each row is the best week within its minutes: efficiency's cut of minutes is left out here.")
    if curve.ended_by == "stopped":
        said.append("Rows are missing or may be improved: the curve was stopped.")
    if curve.ended_by == "time limit":
        limit = f"{curve.wall_clock_limit:.0f} s"
        said.append(f"A search reached its wall-clock limit of {limit}: a less busy machine may find better rows.")
    return said
