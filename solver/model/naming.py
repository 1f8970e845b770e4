"""From columns in use to a printed week: exercises of a class by turns, and each day in order."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterable

from setwright.catalogue.entries import Exercise
from setwright.solver.model.columns import Atom, Board, Column
from setwright.solver.reckoning.options import reps_of, rir_of
from setwright.solver.reckoning.order import in_order
from setwright.solver.reckoning.week import Entry, Week

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
    found: dict[tuple[int, int], Exercise] = {}
    for cls in sorted({atom.cls for _, _, atom, _ in uses}):
        places = sorted((day, place) for day, place, atom, _ in uses if atom.cls == cls)
        members = board.classes[cls].members
        on_one_day = max(Counter(day for day, _ in places).values())
        used = max(on_one_day, members_used(board, cls, len(places)))
        for i, (_, place) in enumerate(places):
            found[cls, place] = members[i % used]
    return found


def members_used(board: Board, cls: int, uses: int) -> int:
    """How many members of a class its uses are shared among: the number that costs least."""
    terms = board.terms
    members = board.classes[cls].members
    most = 1 if members[0].once_a_week else round(terms.limit("third-day", "most"))
    free = 1 if members[0].once_a_week else round(terms.limit("third-day", "days"))
    if terms.off("exercise-days"):
        most = len(terms.days)
    wanted = any(m in terms.priorities for m in members[0].direct)

    def cost(count: int) -> float:
        distinct = 0.0 if terms.off("distinct") else count * terms.cost("distinct")
        third = 0.0 if terms.off("third-day") else max(0, uses - free * count) * terms.cost("third-day")
        variety = terms.cost("priority-variety") if wanted and count < 2 and uses > 1 else 0.0
        return distinct + third + variety

    able = [c for c in range(1, len(members) + 1) if c * most >= uses and c <= uses]
    return min(able, key=lambda c: (cost(c), c)) if able else len(members)


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
