"""What time buys, for a coach and as a document: one row an amount, a chart in letters, the bend in words."""

from __future__ import annotations

from typing import TYPE_CHECKING, Any

from setwright.solver.evaluation.uncertainty import week_interval
from setwright.solver.sheets.common.bars import bars
from setwright.solver.sheets.common.caution import CAUTION
from setwright.solver.sheets.common.grid import grid
from setwright.solver.sheets.common.words import held, listed, whole_minutes, wrapped
from setwright.solver.sheets.document.json_values import rounded
from setwright.solver.sheets.document.provenance import made_by
from setwright.solver.sheets.document.solved_week import UNPROVEN, week_document
from setwright.solver.sheets.screen.week_table import headline

if TYPE_CHECKING:
    from setwright.solver.planning import Solved
    from setwright.solver.uses.time_budget.curve import Curve, Row

SCHEMA = "setwright.curve/1"
UNIT = {"minutes": "min a session", "weekly": "min a week", "days": "days"}
HEADING = {"minutes": "Min/session", "weekly": "Min/week", "days": "Days"}
WHAT_BEND_IS = (
    "The bend is the point farthest above the straight line from the first point to the last, both axes scaled to "
    "0..1; another range of minutes may bend elsewhere."
)
WHAT_COLUMNS_ARE = (
    "Given, used: minutes a week. Score: the index less the costs of what a coach would not like; bound: what it can "
    "be at most. +30 min: score for each further half hour a week since the row before."
)
NARROW = 95
FLAT = 0.005
"""Scores nearer to the last row's than this share of its index count as no further gain (convention)."""
WIDE = 0.02
"""A gap above this share of the index is worth a warning (convention)."""


def curve_text(curve: Curve, width: int = 100) -> str:
    """The curve for a coach: the brief, the rows, the chart, the bend and what is left open, the caution."""
    width = held(width)
    parts = [
        wrapped(title(curve), width),
        rows(curve, width),
        chart(curve, width),
        *(wrapped(said, width, "  ") for said in sentences(curve)),
        wrapped(f"Caution: {CAUTION}", width),
    ]
    return "\n\n".join("\n".join(part) for part in parts if part) + "\n"


def title(curve: Curve) -> str:
    """What is asked of which brief."""
    first, last = curve.rows[0].amount, curve.rows[-1].amount
    brief = next((row.solved for row in curve.rows if row.solved), None)
    asked = f"What {first} to {last} {UNIT[curve.kind]} buy"
    return f"{asked}: {goal_words(brief)}" if brief else asked


def goal_words(solved: Solved) -> str:
    """The brief without its days and minutes, which the curve varies."""
    said = headline(solved.resolved).split("; ", 1)[1]
    name = solved.resolved.brief.title
    return f"{name}; {said}" if name else said


# ---- rows


def rows(curve: Curve, width: int) -> list[str]:
    """One line for each amount; narrow pages go without the intervals."""
    table = [row_cells(curve, i) for i in range(len(curve.rows))]
    headings = [HEADING[curve.kind], "Given", "Used", "Sets", "Index", "Interval", "Score", "Bound", "+30 min", ""]
    without = {"Given"} if curve.kind == "weekly" else set()
    without |= {"Interval"} if width < NARROW else set()
    keep = [i for i, heading in enumerate(headings) if heading not in without]
    sides = "".join("rrrrrrrrrl"[i] for i in keep)
    widest = [*[None] * (len(keep) - 1), 14 if width < NARROW else 24]
    return [
        *grid([headings[i] for i in keep], [[cells[i] for i in keep] for cells in table], sides, widest),
        *wrapped(WHAT_COLUMNS_ARE, width),
    ]


def row_cells(curve: Curve, place: int) -> list[str]:
    """The cells of one row."""
    row = curve.rows[place]
    if row.solved is None:
        return [str(row.amount), str(row.given), *[""] * 7, "no week found"]
    evaluated = row.solved.audit.evaluated
    low, high = week_interval(evaluated)
    gain = curve.gain(place)
    return [
        str(row.amount),
        str(row.given),
        str(used_minutes(row.solved)),
        str(sum(entry.sets for entry in evaluated.week.entries)),
        f"{row.solved.stimulus:.1f}",
        f"{low} to {high}",
        f"{row.solved.score:.1f}",
        f"{row.solved.bound:.1f}" if row.solved.bound < UNPROVEN else "none",
        "" if gain is None else f"{gain:+.1f}",
        ", ".join(part for part in ("bend" if place == curve.bend else "", whose(curve, row)) if part),
    ]


def used_minutes(solved: Solved) -> int:
    """Whole minutes a week, each session rounded up as it is printed."""
    evaluated = solved.audit.evaluated
    return sum(
        whole_minutes(evaluated.seconds(day.index)) for day in evaluated.resolved.days if evaluated.on[day.index]
    )


def whose(curve: Curve, row: Row) -> str:
    """Whose week it is, where it was found for another amount; a day left unused."""
    if row.week_of == row.amount or row.solved is None:
        idle = idle_days(row)
        return f"{idle} left unused" if idle else ""
    if curve.kind == "days":
        return f"the week of {row.week_of} days; {row.amount - (row.week_of or 0)} left unused"
    return f"the week of {row.week_of} min"


def idle_days(row: Row) -> str:
    """Days of the row's own week on which nothing is done."""
    evaluated = row.solved.audit.evaluated if row.solved else None
    count = sum(1 for day in evaluated.resolved.days if not evaluated.on[day.index]) if evaluated else 0
    return f"{count} day{'s' if count > 1 else ''}" if count else ""


# ---- the chart in letters


def chart(curve: Curve, width: int) -> list[str]:
    """The score as bars of letters, what the proof leaves open dotted."""
    found = [row for row in curve.rows if row.solved is not None]
    if not found:
        return []
    marks = [(f"{row.amount}", row.score or 0.0, bound_of(row), row is bend_row(curve)) for row in found]
    return bars(marks, f"Score by {UNIT[curve.kind]}", width)


def bound_of(row: Row) -> float | None:
    return row.solved.bound if row.solved and row.solved.bound < UNPROVEN else None


def bend_row(curve: Curve) -> Row | None:
    return None if curve.bend is None else curve.rows[curve.bend]


# ---- in words


def sentences(curve: Curve) -> list[str]:
    """What the rows say: the bend, where nothing more was found, what is left open, how it was reckoned."""
    said = [bend_words(curve), flat_words(curve), open_words(curve), none_words(curve), *how_words(curve)]
    return [text for text in said if text]


def bend_words(curve: Curve) -> str:
    """The bend and what half an hour buys before and after it."""
    found = [row for row in curve.rows if row.solved is not None]
    bent = bend_row(curve)
    if bent is None or len(found) < 3:
        return "No bend: fewer than three rows have a week, or no row lies above the straight line between the ends."
    before, after = slope(found[0], bent), slope(bent, found[-1])
    unit = "day" if curve.kind == "days" and bent.amount == 1 else UNIT[curve.kind]
    at = f"{bent.amount} {unit}" + ("" if curve.kind == "weekly" else f" ({bent.given} min a week)")
    return (
        f"The curve bends at {at}: up to there a further half hour a week buys {before:.1f} points of score on "
        f"average, beyond it {after:.1f}. {WHAT_BEND_IS}"
    )


def slope(first: Row, last: Row) -> float:
    """Score points for each half hour a week between two rows."""
    return ((last.score or 0.0) - (first.score or 0.0)) * 30.0 / max(1, last.given - first.given)


def flat_words(curve: Curve) -> str:
    """From where on next to nothing was found, and what the proof leaves above it."""
    found = [row for row in curve.rows if row.solved is not None]
    best = found[-1].solved if found else None
    if best is None:
        return ""
    flat = next(row for row in found if best.score - (row.score or 0.0) <= FLAT * best.stimulus)
    if flat is found[-1]:
        return ""
    more = best.score - (flat.score or 0.0)
    gives = f"the best week found gives {more:.1f} points more" if more >= 0.05 else "no better week was found"
    left = f", and none can give more than {best.bound - (flat.score or 0.0):.1f}" if best.bound < UNPROVEN else ""
    return f"Beyond {flat.amount} {UNIT[curve.kind]} next to nothing is left: {gives}{left}."


def open_words(curve: Curve) -> str:
    """A warning where the proven gap is wide enough to hide a step."""
    gaps = [(row.solved.gap, row) for row in curve.rows if row.solved and row.solved.bound < UNPROVEN]
    wide = [(gap, row) for gap, row in gaps if row.solved and gap > WIDE * abs(row.solved.stimulus)]
    if not wide:
        return ""
    gap, row = max(wide, key=lambda pair: pair[0])
    narrower = {"quick": "normal", "normal": "thorough"}.get(curve.limits.name)
    advice = f"; --search {narrower} narrows it" if narrower else ""
    return (
        f"Steps smaller than the gap between score and bound may be the search's, not the time's: it is widest at "
        f"{row.amount} {UNIT[curve.kind]}, {gap:.1f} points{advice}."
    )


def none_words(curve: Curve) -> str:
    """The amounts without a week."""
    none = [str(row.amount) for row in curve.rows if row.solved is None]
    if not none:
        return ""
    return f"No week was found at {listed(none)} {UNIT[curve.kind]}: `setwright week` on that brief says what clashes."


def how_words(curve: Curve) -> list[str]:
    """How the rows came about."""
    named = "search" if curve.searches == 1 else "searches"
    said = [
        f"{len(curve.rows)} rows from {curve.searches} {curve.limits.name} {named}. "
        "A week that fits in less time is offered where it is better, so no row is below the one before it."
    ]
    if curve.kind == "days":
        said = [f"{said[0]} A row is the best of at most so many days; a day may be left unused."]
    if any(row.solved and row.solved.resolved.goal == "efficiency" for row in curve.rows):
        said.append("Each row is the best week within its minutes: efficiency's cut of minutes is left out here.")
    if curve.ended_by == "stopped":
        said.append("The curve is not whole: it was stopped.")
    if curve.ended_by == "time limit":
        net = f"{curve.wall_clock_limit:.0f} s"
        said.append(f"A search met its net of {net}: on an idler machine the rows may be other and better ones.")
    return said


# ---- the document


def curve_document(curve: Curve) -> dict[str, Any]:
    """The curve as JSON: each row with its whole week."""
    first = next((row.solved for row in curve.rows if row.solved), None)
    return {
        "schema": SCHEMA,
        "made_by": None if first is None else made_by(first),
        "by": curve.kind,
        "rows": [row_document(curve, i) for i in range(len(curve.rows))],
        "bend": None if curve.bend is None else curve.rows[curve.bend].amount,
        "bend_is": WHAT_BEND_IS,
        "searches": curve.searches,
        "ended_by": curve.ended_by,
    }


def row_document(curve: Curve, place: int) -> dict[str, Any]:
    """One amount."""
    row, gain = curve.rows[place], curve.gain(place)
    found = row.solved
    proven = found is not None and found.bound < UNPROVEN
    return {
        "amount": row.amount,
        "minutes_given": row.given,
        "minutes_used": None if found is None else used_minutes(found),
        "score": None if found is None else rounded(found.score),
        "stimulus": None if found is None else rounded(found.stimulus),
        "interval": None if found is None else list(week_interval(found.audit.evaluated)),
        "bound": rounded(found.bound) if found is not None and proven else None,
        "gap": rounded(found.gap) if found is not None and proven else None,
        "gain_per_half_hour": None if gain is None else rounded(gain),
        "week_of": row.week_of,
        "week": None if found is None else week_document(found),
    }


def curve_points(curve: Curve) -> tuple[list[tuple[float, float]], float | None]:
    """(minutes given a week, score) of each row with a week, and where the bend is, for the drawn chart."""
    found = [(float(row.given), row.score or 0.0) for row in curve.rows if row.solved is not None]
    bent = bend_row(curve)
    return found, None if bent is None else float(bent.given)
