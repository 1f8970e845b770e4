"""The lines of a week kept on their days, and their sets, rests and techniques solved anew."""

from __future__ import annotations

from collections.abc import Iterator, Mapping

from setwright.solver.auditing import Audit, audit
from setwright.solver.engines.build import day_model
from setwright.solver.engines.cpsat import CpSatModel
from setwright.solver.evaluation.resolved_brief import ResolvedBrief
from setwright.solver.evaluation.week import Entry, Week
from setwright.solver.linear.columns import Column, DayGroup, day_groups, pair_columns
from setwright.solver.linear.instance import Assignment, Instance, instance_of
from setwright.solver.linear.linear_model import LinearModel
from setwright.solver.search.encoding import open_entries
from setwright.solver.uses.edits.editing import entry_as, sorted_as_done

WORK = 6.0
"""CP-SAT's deterministic time: few columns are open, so this is mostly to the end."""
SECONDS = 60.0
"""A wall-clock limit that is not met in practice: the work limit ends the search."""
Lines = Mapping[tuple[int, int], str]
"""(class, day) -> the exercise of that class that stands on the day."""


def reoptimised_lines(
    resolved: ResolvedBrief,
    week: Week,
    keep: tuple[tuple[int, str], ...] = (),
    sets: Mapping[tuple[int, str], int] | None = None,
) -> Audit | None:
    """The best week of these lines on these days; lines not in `keep`, (day, exercise id), may be left out.

    `sets` holds the number of sets that a line of `keep` is done at, where it may not be another.

    None when no way of doing them, with `keep` among them, passes the audit. The same week gives the same answer.
    """
    instance = instance_of(resolved)
    lines = _lines_of(instance, week)
    model = day_model(instance, _columns_of(instance, week, lines))
    for day, exercise in keep:
        if (here := _columns_with(model, lines, day, exercise, (sets or {}).get((day, exercise)))) is None:
            return None
        model.constrain("kept", here, low=1)
    cp_sat = CpSatModel(model)
    cp_sat.maximise()
    seen: list[frozenset[int]] = []
    cp_sat.solve(WORK, SECONDS, seen.append)
    found = (audit(resolved, _week_of(model, lines, columns)) for columns in reversed(seen))
    return max((a for a in found if not a.broken), key=lambda a: a.score_units, default=None)


def _lines_of(instance: Instance, week: Week) -> dict[tuple[int, int], str]:
    """The lines whose exercise is open on its day, by class."""
    return {place: entry.exercise for place, entry in open_entries(instance, week).items()}


def _columns_of(instance: Instance, week: Week, lines: Lines) -> list[Column]:
    """Every way to do each line alone, and each pair of the week as a pair."""
    found: list[Column] = []
    for group in day_groups(instance):
        assignments = {
            name: _assignments_of(instance, group, cls) for (cls, day), name in lines.items() if day == group.index
        }
        found += [Column(group.index, (a,)) for here in assignments.values() for a in here if not a.prescription.paired]
        for one, other in _pairs_of(week.days[group.index]):
            halves = [a for name in (one, other) for a in assignments.get(name, ()) if a.prescription.paired]
            found += pair_columns(instance, group, halves)
    return found


def _assignments_of(instance: Instance, group: DayGroup, cls: int) -> list[Assignment]:
    return [Assignment(cls, prescription) for prescription in instance.classes[cls].prescriptions[group.like]]


def _pairs_of(entries: tuple[Entry, ...]) -> Iterator[tuple[str, str]]:
    """The pairs of a day, each once."""
    for entry in entries:
        if entry.partner is not None and entry.exercise < entry.partner:
            yield entry.exercise, entry.partner


def _columns_with(model: LinearModel, lines: Lines, day: int, exercise: str, sets: int | None) -> dict[int, int] | None:
    """The columns that hold an exercise on a day, at so many sets if any are named, or None where there are none."""
    mine = {key for key, name in lines.items() if name == exercise and key[1] == day}
    here = {
        j: 1
        for j, c in enumerate(model.columns)
        if any((a.cls, c.group) in mine and sets in (None, a.prescription.sets) for a in c.assignments)
    }
    return here or None


def _week_of(model: LinearModel, lines: Lines, columns: frozenset[int]) -> Week:
    """The week of some columns, every line under its own name."""
    resolved = model.resolved
    days: list[list[Entry]] = [[] for _ in resolved.days]
    for j in sorted(columns):
        column = model.columns[j]
        names = [lines[a.cls, column.group] for a in column.assignments]
        for name, assignment, partner in zip(names, column.assignments, reversed(names), strict=True):
            exercise = resolved.catalogue.exercises[name]
            paired = partner if len(names) == 2 else None
            days[column.group].append(
                entry_as(resolved, exercise, resolved.days[column.group], assignment.prescription, paired)
            )
    return Week(tuple(sorted_as_done(resolved, entries) for entries in days))
