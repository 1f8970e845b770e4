"""Names for a week's classes that keep those of an earlier week, where that costs no more than a floor allows."""

from __future__ import annotations

from collections.abc import Iterator

from setwright.catalogue.entries import Exercise
from setwright.solver.linear.columns import Board
from setwright.solver.search.decoding import Use, named, ordered, uses_of
from setwright.solver.search.neighbourhood_search import Climb
from setwright.solver.auditing import Audit, audit
from setwright.solver.evaluation.week import Week

Names = dict[tuple[int, int], Exercise]
"""(class, place among the choices) -> exercise."""


def change(week: Week, previous: Week) -> int:
    """The sum over exercises and days of |sets - sets before|."""
    total = 0
    for now, before in zip(week.days, previous.days, strict=True):
        sets: dict[str, int] = {}
        for entry in now:
            sets[entry.exercise] = sets.get(entry.exercise, 0) + entry.sets
        for entry in before:
            sets[entry.exercise] = sets.get(entry.exercise, 0) - entry.sets
        total += sum(abs(v) for v in sets.values())
    return total


def like_named(climb: Climb, columns: frozenset[int], previous: Week, floor: int) -> Audit:
    """The audit of the columns' week, its exercises named as before wherever the score stays at or above `floor`."""
    board, sheet = climb.board, climb.sheet
    chosen = [(sheet.columns[j].cell, sheet.columns[j]) for j in sorted(columns)]
    uses = uses_of(chosen)
    names = named(board, uses)
    found = audited(board, uses, names)
    for key, exercise in wishes(board, uses, previous).items():
        for trial in renamings(names, key, exercise):
            other = audited(board, uses, trial)
            nearer = change(other.view.week, previous) < change(found.view.week, previous)
            if nearer and not other.broken and other.score_units >= min(floor, found.score_units):
                names, found = trial, other
                break
    return found


def audited(board: Board, uses: list[Use], names: Names) -> Audit:
    """The audit of the week that these uses make under these names."""
    days = range(len(board.terms.days))
    week = Week(tuple(ordered(board, day, [use for use in uses if use[0] == day], names) for day in days))
    return audit(board.terms, week)


def wishes(board: Board, uses: list[Use], previous: Week) -> Names:
    """(class, place) -> the class's member that stood on that day in the previous week."""
    found: Names = {}
    for day, place, atom, _ in uses:
        before = {entry.exercise for entry in previous.days[day]}
        for member in board.classes[atom.cls].members:
            if member.id in before:
                found.setdefault((atom.cls, place), member)
    return found


def renamings(names: Names, key: tuple[int, int], exercise: Exercise) -> Iterator[Names]:
    """Ways to give one use a name: it alone, in exchange with another day, or all uses of its present name."""
    if names[key] == exercise:
        return
    yield {**names, key: exercise}
    for other, name in names.items():
        if other[0] == key[0] and name == exercise:
            yield {**names, key: exercise, other: names[key]}
    mine = {use: exercise for use, name in names.items() if use[0] == key[0] and name == names[key]}
    yield {**names, **mine}
