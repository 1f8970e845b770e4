"""From columns in use to a printed week: exercises of a class by turns, and each day in order."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterable

from setwright.catalogue.entries import Exercise
from setwright.solver.linear.columns import Atom, Board, Column
from setwright.solver.evaluation.prescriptions import reps_of, rir_of
from setwright.solver.evaluation.order import in_order
from setwright.solver.rules.priority_variety import exercises_due
from setwright.solver.evaluation.week import Entry, Week

Use = tuple[int, int, Atom, int | None]
"""(day, place among the choices, atom, class of the partner)."""


def week_of(board: Board, chosen: Iterable[tuple[int, Column]]) -> Week:
    """The week of (day, column) choices, each class's uses shared among its members."""
    uses = uses_of(chosen)
    names = named(board, uses)
    days = range(len(board.terms.days))
    return Week(tuple(ordered(board, day, [use for use in uses if use[0] == day], names) for day in days))


def uses_of(chosen: Iterable[tuple[int, Column]]) -> list[Use]:
    """Each atom in use with its day, its place and its partner's class."""
    uses: list[Use] = []
    for place, (day, column) in enumerate(chosen):
        for i, atom in enumerate(column.atoms):
            partner = column.atoms[1 - i].cls if len(column.atoms) == 2 else None
            uses.append((day, place, atom, partner))
    return uses


def named(board: Board, uses: list[Use]) -> dict[tuple[int, int], Exercise]:
    """(class, place) -> exercise: the uses of a class in day order, by turns over as few members as cost least."""
    places: dict[int, list[tuple[int, int]]] = {}
    for day, place, atom, _ in uses:
        places.setdefault(atom.cls, []).append((day, place))
    counts = members_used(board, {cls: [day for day, _ in found] for cls, found in sorted(places.items())})
    return {
        (cls, place): board.classes[cls].members[i % counts[cls]]
        for cls, found in places.items()
        for i, (_, place) in enumerate(sorted(found))
    }


def members_used(board: Board, days: dict[int, list[int]]) -> dict[int, int]:
    """How many members of each class its uses (their days) are shared among: the numbers that cost least."""
    counts = {cls: least_members(board, cls, found) for cls, found in days.items()}
    while True:
        gains = {cls: gain_of_one_more(board, days, counts, cls) for cls in counts}
        best = max(gains, key=lambda cls: (gains[cls], -cls), default=None)
        if best is None or gains[best] <= 0:
            return counts
        counts[best] += 1


def least_members(board: Board, cls: int, days: list[int]) -> int:
    """The fewest members that can take a class's uses: never twice a day, never on too many days."""
    terms = board.terms
    once = board.classes[cls].exercise.once_a_week
    most = 1 if once else round(terms.limit("third-day", "most"))
    if terms.off("exercise-days"):
        most = len(terms.days)
    return min(max(*Counter(days).values(), -(-len(days) // most)), len(board.classes[cls].members))


def gain_of_one_more(board: Board, days: dict[int, list[int]], counts: dict[int, int], cls: int) -> float:
    """What a further member of a class saves: third days and a priority's second exercise, less one more to learn."""
    terms, members, uses = board.terms, board.classes[cls].members, len(days[cls])
    if counts[cls] >= min(len(members), uses):
        return 0.0
    free = 1 if members[0].once_a_week else round(terms.limit("third-day", "days"))
    beyond = max(0, uses - free * counts[cls]) - max(0, uses - free * (counts[cls] + 1))
    saved = 0.0 if terms.off("third-day") else beyond * terms.cost("third-day")
    for muscle in terms.priorities:
        serving = sum(n for other, n in counts.items() if muscle in board.classes[other].exercise.direct)
        if muscle in members[0].direct and serving < exercises_due(terms, muscle) and not terms.off("priority-variety"):
            saved += terms.cost("priority-variety")
    return saved - (0.0 if terms.off("distinct") else terms.cost("distinct"))


def ordered(board: Board, day: int, uses: list[Use], names: dict[tuple[int, int], Exercise]) -> tuple[Entry, ...]:
    """A day's entries in the order they are done."""
    terms = board.terms
    entries: dict[str, Entry] = {}
    for _, place, atom, partner in uses:
        exercise, option = names[atom.cls, place], atom.option
        entries[exercise.id] = Entry(
            exercise=exercise.id,
            sets=option.sets,
            reps=reps_of(terms, exercise, terms.days[day]),
            rir=rir_of(terms, exercise),
            rest=option.rest,
            technique=option.technique,
            drops=option.drops,
            partner=None if partner is None else names[partner, place].id,
        )
    lifts = [(terms.catalogue.exercises[key], entry.partner) for key, entry in entries.items()]
    return tuple(entries[e.id] for e in in_order(terms, lifts))
