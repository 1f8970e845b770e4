"""What time buys, for a coach and as a document: one row for each amount, a chart in letters, sentences."""

from __future__ import annotations

from typing import TYPE_CHECKING, Any

from setwright.solver.evaluation.uncertainty import week_interval
from setwright.solver.sheets.charts.charts import curve_chart
from setwright.solver.sheets.common.bars import bars
from setwright.solver.sheets.common.caution import CAUTION
from setwright.solver.sheets.common.grid import grid
from setwright.solver.sheets.common.json_values import rounded
from setwright.solver.sheets.common.time_breakdown import session_minutes
from setwright.solver.sheets.common.words import counted, listed, page_width, wrapped
from setwright.solver.sheets.document.provenance import made_by
from setwright.solver.sheets.document.solved_week import UNPROVEN, week_document
from setwright.solver.sheets.screen.headline import brief_parts
from setwright.solver.sheets.screen.muscle_table import muscles_below
from setwright.solver.sheets.screen.trade_offs.curve_words import UNIT, WHAT_BEND_IS, curve_sentences

if TYPE_CHECKING:
    from setwright.solver.planning import Solved
    from setwright.solver.uses.time_budget.time_curve import CurvePoint, TimeCurve

SCHEMA = "setwright.curve/1"
HEADING = {"minutes": "Min/session", "weekly": "Min/week", "days": "Days"}
WHAT_COLUMNS_ARE = (
    "Given, used: minutes a week. Interval: the index over the ranges of the published numbers. +30 min: index points "
    "for each further half hour a week since the row before. Given up: what the week does that a coach would not like, "
    "in index points; each week is the best index less this. Gap: the most by which a better week may have been missed."
)
NARROW = 95
"""Letters: a page narrower than this goes without the minutes used and the sets."""
NAMED = 2
"""Muscles below their band that a row names."""


def curve_text(curve: TimeCurve, width: int = 100) -> str:
    """The curve for a coach: the brief, the rows, the chart, the bend and what is left open, the caution."""
    width = page_width(width)
    parts = [
        wrapped(_title(curve), width),
        _rows(curve, width),
        _chart(curve, width),
        *(wrapped(said, width, "  ") for said in curve_sentences(curve)),
        wrapped(f"Caution: {CAUTION}", width),
    ]
    return "\n\n".join("\n".join(part) for part in parts if part) + "\n"


def _title(curve: TimeCurve) -> str:
    """What is asked of which brief, without its days and minutes, which the curve varies."""
    first, last = curve.points[0].amount, curve.points[-1].amount
    asked = f"What {first} to {last} {UNIT[curve.kind]} buy"
    solved = next((point.solved for point in curve.points if point.solved), None)
    if solved is None:
        return asked
    name = solved.resolved.brief.title
    said = "; ".join([*([name] if name else []), *brief_parts(solved.resolved, days=False)])
    return f"{asked}: {said}"


# ---- rows


def _rows(curve: TimeCurve, width: int) -> list[str]:
    """One line for each amount."""
    table = [_cells(curve, i) for i in range(len(curve.points))]
    headings = [HEADING[curve.kind], "Index", "Interval", "+30 min", "Given up", "Gap", "Given", "Used", "Sets", ""]
    without = {"Given"} if curve.kind == "weekly" else set()
    without |= {"Used", "Sets"} if width < NARROW else set()
    keep = [i for i, heading in enumerate(headings) if heading not in without]
    sides = "".join("rrrrrrrrrl"[i] for i in keep)
    widest = [*[None] * (len(keep) - 1), 18 if width < NARROW else 24]
    return [
        *grid([headings[i] for i in keep], [[cells[i] for i in keep] for cells in table], sides, widest),
        *wrapped(WHAT_COLUMNS_ARE, width),
    ]


def _cells(curve: TimeCurve, place: int) -> list[str]:
    """The cells of one row."""
    point = curve.points[place]
    if point.solved is None:
        return [str(point.amount), *[""] * 5, str(point.given), "", "", "no week found"]
    evaluated = point.solved.audit.evaluated
    low, high = week_interval(evaluated)
    gain = curve.gain(place)
    notes = ("bend" if place == curve.knee else "", _whose(curve, point), _lacking(point.solved))
    return [
        str(point.amount),
        f"{point.index:.1f}",
        f"{low} to {high}",
        "" if gain is None else f"{gain:+.1f}",
        f"{point.index - point.solved.score:.1f}",
        f"{point.solved.gap:.1f}" if point.solved.bound < UNPROVEN else "none",
        str(point.given),
        str(sum(session_minutes(evaluated))),
        str(sum(entry.sets for entry in evaluated.week.entries)),
        "; ".join(note for note in notes if note),
    ]


def _lacking(solved: Solved) -> str:
    """The muscles below their band, the first few by name."""
    names = muscles_below(solved.audit)
    if not names:
        return ""
    more = [f"{len(names) - NAMED} more"] if len(names) > NAMED else []
    return f"below band: {listed([*names[:NAMED], *more])}"


def _whose(curve: TimeCurve, point: CurvePoint) -> str:
    """Whose week it is, where it was found for another amount; a day left unused."""
    if point.week_of == point.amount or point.solved is None:
        idle = _idle_days(point)
        return f"{counted(idle, 'day')} left unused" if idle else ""
    if curve.kind == "days":
        return f"the week of {point.week_of} days; {point.amount - (point.week_of or 0)} left unused"
    return f"the week of {point.week_of} min"


def _idle_days(point: CurvePoint) -> int:
    """The days of the point's own week on which nothing is done."""
    return sum(1 for day in point.solved.audit.evaluated.on if not day) if point.solved else 0


# ---- the charts


def _chart(curve: TimeCurve, width: int) -> list[str]:
    """The index as bars of letters with its interval."""
    marks = [
        (f"{point.amount}", point.index, week_interval(point.solved.audit.evaluated), place == curve.knee)
        for place, point in enumerate(curve.points)
        if point.solved is not None
    ]
    return bars(marks, f"Week index by {UNIT[curve.kind]}", width) if marks else []


def drawn_curve(curve: TimeCurve) -> str:
    """The curve as SVG: the index over the minutes given a week, a whisker for its interval, the bend marked."""
    found = curve.solved_points
    return curve_chart(
        [(float(point.given), point.index) for point in found],
        None if curve.knee is None else float(curve.points[curve.knee].given),
        intervals=[week_interval(point.solved.audit.evaluated) for point in found if point.solved],
    )


# ---- the document


def curve_document(curve: TimeCurve, weeks: bool = True) -> dict[str, Any]:
    """The curve as JSON: each amount with its whole week, null everywhere where `weeks` are not wanted."""
    first = next((point.solved for point in curve.points if point.solved), None)
    return {
        "schema": SCHEMA,
        "made_by": None if first is None else made_by(first),
        "by": curve.kind,
        "rows": [_point_document(curve, i, weeks) for i in range(len(curve.points))],
        "bend": None if curve.knee is None else curve.points[curve.knee].amount,
        "bend_is": WHAT_BEND_IS,
        "words": curve_sentences(curve),
        "searches": curve.searches,
        "ended_by": curve.ended_by,
    }


def _point_document(curve: TimeCurve, place: int, weeks: bool) -> dict[str, Any]:
    """One amount."""
    point, gain = curve.points[place], curve.gain(place)
    found = point.solved
    proven = found is not None and found.bound < UNPROVEN
    return {
        "amount": point.amount,
        "minutes_given": point.given,
        "minutes_used": None if found is None else sum(session_minutes(found.audit.evaluated)),
        "score": None if found is None else rounded(found.score),
        "stimulus": None if found is None else rounded(found.stimulus),
        "interval": None if found is None else list(week_interval(found.audit.evaluated)),
        "bound": rounded(found.bound) if found is not None and proven else None,
        "gap": rounded(found.gap) if found is not None and proven else None,
        "gain_per_half_hour": None if gain is None else rounded(gain),
        "week_of": point.week_of,
        "week": week_document(found) if found is not None and weeks else None,
    }
