"""Compared weeks in columns: index, what is given up, time, sets and rests; then the muscles' indices."""

from __future__ import annotations

from typing import TYPE_CHECKING

from setwright.solver.evaluation.uncertainty import intervals, week_interval
from setwright.solver.sheets.common.grid import grid
from setwright.solver.sheets.common.time_breakdown import seconds_by_kind, session_minutes
from setwright.solver.sheets.common.words import clock
from setwright.solver.sheets.document.solved_week import UNPROVEN
from setwright.solver.sheets.screen.muscle_table import muscles_below

if TYPE_CHECKING:
    from setwright.solver.evaluation.evaluated_week import EvaluatedWeek
    from setwright.solver.planning import Solved
    from setwright.solver.uses.compare.comparison import Comparison

KINDS = {
    "lifting": "Lifting",
    "resting": "Resting",
    "ramp_up": "Ramp-up sets",
    "change_over": "Change-over",
    "warm_up": "Warm-up",
}
COLUMN = 16
"""Letters of one week's column, gap included; the first column has what is left."""
FIRST = 20


def comparison_tables(comparison: Comparison, width: int) -> list[list[str]]:
    """Weeks in columns, as many beside each other as the width holds: first their worth, then the muscles."""
    many = max(2, (width - FIRST) // COLUMN)
    solved = comparison.solved
    found = []
    for start in range(0, len(solved), many):
        block = solved[start : start + many]
        names = [comparison.briefs[i].label for i, _ in block]
        found.append(_table(names, [_facts(end) for _, end in block]))
        found.append(_table(names, [_muscles(end) for _, end in block], "Muscle: index"))
    return found


def week_seconds_by_kind(evaluated: EvaluatedWeek) -> dict[str, int]:
    """The week's seconds by kind, over the days that have a session."""
    days = [seconds_by_kind(evaluated, day.index) for day in evaluated.resolved.days if evaluated.on[day.index]]
    return {kind: sum(day[kind] for day in days) for kind in KINDS}


def _table(names: list[str], columns: list[dict[str, str]], corner: str = "") -> list[str]:
    """One table: a row for each fact that any column has, in the order of the columns."""
    keys = [key for key in dict.fromkeys(k for column in columns for k in column) if any(c.get(key) for c in columns)]
    rows = [[key, *(column.get(key, "") for column in columns)] for key in keys]
    return grid([corner, *names], rows, "l" + "r" * len(names))


def _facts(end: Solved) -> dict[str, str]:
    """One week's column: what it is worth, what it gives up, time by kind, sets, rests."""
    evaluated = end.audit.evaluated
    low, high = week_interval(evaluated)
    kinds = week_seconds_by_kind(evaluated)
    used = session_minutes(evaluated)
    entries = evaluated.week.entries
    pairs, drops = sum(1 for e in entries if e.partner) // 2, sum(e.technique == "drop" for e in entries)
    below = muscles_below(end.audit)
    return {
        "Week index": f"{end.stimulus:.1f}",
        "Index interval": f"{low} to {high}",
        "Given up (points)": f"{end.stimulus - end.score:.1f}",
        "Below their band": ", ".join(below) if len(below) == 1 else f"{len(below)} muscles" if below else "none",
        "Minutes a week": str(sum(used)),
        "Minutes a session": " ".join(map(str, used)) if len(used) <= 4 else f"{min(used)} to {max(used)}",
        **{name: clock(kinds[key]) for key, name in KINDS.items()},
        "Sets": str(sum(entry.sets for entry in entries)),
        "Lines on the cards": str(len(entries)),
        "Exercises": str(len({entry.exercise for entry in entries})),
        "Rests": _rests(evaluated),
        "Pairs; drop sets": f"{pairs}; {drops}",
        "Index per minute": f"{end.stimulus / sum(used):.2f}" if sum(used) else "",
        "Proven gap": f"{end.gap:.1f}" if end.bound < UNPROVEN else "none",
    }


def _muscles(end: Solved) -> dict[str, str]:
    """Each muscle's index with its interval; nothing for a muscle neither sought nor trained."""
    evaluated = end.audit.evaluated
    ends = intervals(evaluated)
    found = {}
    for m in evaluated.resolved.muscles.values():
        low, high = ends[m.id]
        name = evaluated.resolved.catalogue.muscles[m.id].name
        found[name] = f"{evaluated.index(m.id):.0f} ({low}-{high})" if m.weight or evaluated.weekly_sets(m.id) else ""
    return found


def _rests(evaluated: EvaluatedWeek) -> str:
    """The shortest and longest rest on the cards."""
    found = [entry.rest for entry in evaluated.week.entries]
    if not found:
        return ""
    low, high = min(found), max(found)
    return clock(low) if low == high else f"{clock(low)}-{clock(high)}"
