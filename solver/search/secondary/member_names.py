"""Which members of its classes a week uses: those of an earlier week, wherever the score stays above a floor."""

from __future__ import annotations

from collections.abc import Iterator

from setwright.catalogue.entries import Exercise
from setwright.solver.auditing import Audit, audit
from setwright.solver.evaluation.week import Week
from setwright.solver.linear.instance import Instance
from setwright.solver.search.decoding import Use, names_of, ordered, uses_of
from setwright.solver.search.neighbourhood.neighbourhood_solver import Chosen, NeighbourhoodSolver

Names = dict[tuple[int, int], Exercise]
"""(class, place among the choices) -> exercise."""


def change(week: Week, previous: Week) -> int:
    """The sum over exercises and days of |sets - sets before|; raises ValueError when the days differ in number."""
    total = 0
    for now, before in zip(week.days, previous.days, strict=True):
        sets: dict[str, int] = {}
        for entry in now:
            sets[entry.exercise] = sets.get(entry.exercise, 0) + entry.sets
        for entry in before:
            sets[entry.exercise] = sets.get(entry.exercise, 0) - entry.sets
        total += sum(abs(v) for v in sets.values())
    return total


def named_as_before(solver: NeighbourhoodSolver, chosen: Chosen, previous: Week, floor: int) -> Audit:
    """The audit of the columns' week, its exercises named as before wherever the score stays at or above `floor`."""
    instance, columns = solver.instance, solver.model.columns
    uses = uses_of([(columns[j].group, columns[j]) for j in sorted(chosen)])
    names = names_of(instance, uses)
    found = _audited(instance, uses, names)
    for key, exercise in _members_before(instance, uses, previous).items():
        for trial in _renamings(names, key, exercise):
            other = _audited(instance, uses, trial)
            nearer = change(other.evaluated.week, previous) < change(found.evaluated.week, previous)
            if nearer and not other.broken and other.score_units >= min(floor, found.score_units):
                names, found = trial, other
                break
    return found


def _audited(instance: Instance, uses: list[Use], names: Names) -> Audit:
    """The audit of the week that these uses make under these names."""
    days = range(len(instance.resolved.days))
    week = Week(tuple(ordered(instance, day, [use for use in uses if use[0] == day], names) for day in days))
    return audit(instance.resolved, week)


def _members_before(instance: Instance, uses: list[Use], previous: Week) -> Names:
    """(class, place) -> the class's member that stood on that day in the previous week."""
    found: Names = {}
    for day, place, assignment, _ in uses:
        before = {entry.exercise for entry in previous.days[day]}
        for member in instance.classes[assignment.cls].members:
            if member.id in before:
                found.setdefault((assignment.cls, place), member)
    return found


def _renamings(names: Names, key: tuple[int, int], exercise: Exercise) -> Iterator[Names]:
    """Ways to give one use a name: it alone, in exchange with another day, or all uses of its present name."""
    if names[key] == exercise:
        return
    yield {**names, key: exercise}
    for other, name in names.items():
        if other[0] == key[0] and name == exercise:
            yield {**names, key: exercise, other: names[key]}
    mine = {use: exercise for use, name in names.items() if use[0] == key[0] and name == names[key]}
    yield {**names, **mine}
