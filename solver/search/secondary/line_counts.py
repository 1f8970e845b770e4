"""Changed lines counted on a linear model: a line out and a new one on its day are one change."""

from __future__ import annotations

from collections.abc import Iterable

from setwright.solver.evaluation.line_changes import done_alike
from setwright.solver.evaluation.prescriptions import reps_of, rir_of
from setwright.solver.evaluation.resolved_brief import ResolvedBrief
from setwright.solver.evaluation.week import Entry, Week
from setwright.solver.linear.columns import Column
from setwright.solver.linear.instance import Assignment
from setwright.solver.linear.linear_model import Expression, LinearModel, combined
from setwright.solver.search.encoding import open_entries

RULE = "changed-lines"
"""What the counts are posted under; no rule of the rulebook."""
MOST_LINES = 40


def changed_lines_of(model: LinearModel, previous: Week, days: Iterable[int]) -> Expression:
    """How many lines differ from an earlier week's on some days, at the least that the constraints posted here allow.

    The model is of single days. Exercises of the earlier week are classes of their own, so that a column says which
    line it keeps.
    """
    before = open_entries(model.instance, previous)
    found: Expression = {}
    for day in days:
        new: Expression = {}
        kept: Expression = {}
        for j in model.by_group[day]:
            for assignment in model.columns[j].assignments:
                entry = before.get((assignment.cls, day))
                counted = new if entry is None else kept
                counted[j] = counted.get(j, 0) + 1
                if entry and not done_alike(entry, _as_printed(model.resolved, model.columns[j], assignment, entry)):
                    found[j] = found.get(j, 0) + 1
        exchanged = model.variable(MOST_LINES)
        model.constrain(RULE, combined(new, {exchanged: -1}), high=0)
        model.constrain(RULE, combined({exchanged: 1}, kept), low=len(previous.days[day]))
        found[exchanged] = 1
    return found


def _as_printed(resolved: ResolvedBrief, column: Column, assignment: Assignment, before: Entry) -> Entry:
    """The line that an assignment is printed as; in a pair beside the earlier partner, whoever it is now."""
    exercise, p = resolved.catalogue.exercises[before.exercise], assignment.prescription
    partner = (before.partner or "") if len(column.assignments) == 2 else None
    reps, rir = reps_of(resolved, exercise, resolved.days[column.group]), rir_of(resolved, exercise)
    return Entry(before.exercise, p.sets, reps, rir, p.rest, p.technique, p.drops, partner)
