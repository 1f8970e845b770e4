"""From columns in use to a printed week: halves as pairs, exercises of a class by turns, each day in order."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterable, Sequence

from setwright.catalogue.entries import Exercise
from setwright.solver.evaluation.order import in_order
from setwright.solver.evaluation.prescriptions import reps_of, rir_of
from setwright.solver.evaluation.week import Entry, Week
from setwright.solver.linear.columns import Column
from setwright.solver.linear.instance import Assignment, Instance
from setwright.solver.linear.linear_model import LinearModel
from setwright.solver.rules.priority_variety import exercises_due

Use = tuple[int, int, Assignment, int | None]
"""(day, place among the choices, assignment, class of the partner)."""


def week_of(instance: Instance, chosen: Iterable[tuple[int, Column]]) -> Week:
    """The week of (day, column) choices, each class's uses shared among its members."""
    uses = uses_of(chosen)
    names = names_of(instance, uses)
    days = range(len(instance.resolved.days))
    return Week(tuple(ordered(instance, day, [use for use in uses if use[0] == day], names) for day in days))


def uses_of(chosen: Iterable[tuple[int, Column]]) -> list[Use]:
    """Each assignment in use with its day, its place and its partner's class."""
    uses: list[Use] = []
    for place, (day, column) in enumerate(chosen):
        for i, assignment in enumerate(column.assignments):
            partner = column.assignments[1 - i].cls if len(column.assignments) == 2 else None
            uses.append((day, place, assignment, partner))
    return uses


def names_of(instance: Instance, uses: list[Use]) -> dict[tuple[int, int], Exercise]:
    """(class, place) -> exercise: the uses of a class in day order, by turns over as few members as cost least."""
    places: dict[int, list[tuple[int, int]]] = {}
    for day, place, assignment, _ in uses:
        places.setdefault(assignment.cls, []).append((day, place))
    counts = _members_used(instance, {cls: [day for day, _ in found] for cls, found in sorted(places.items())})
    return {
        (cls, place): instance.classes[cls].members[i % counts[cls]]
        for cls, found in places.items()
        for i, (_, place) in enumerate(sorted(found))
    }


def _members_used(instance: Instance, days: dict[int, list[int]]) -> dict[int, int]:
    """How many members of each class its uses (their days) are shared among: the numbers that cost least."""
    counts = {cls: _least_members(instance, cls, found) for cls, found in days.items()}
    while True:
        gains = {cls: _gain_of_one_more(instance, days, counts, cls) for cls in counts}
        best = max(gains, key=lambda cls: (gains[cls], -cls), default=None)
        if best is None or gains[best] <= 0:
            return counts
        counts[best] += 1


def _least_members(instance: Instance, cls: int, days: list[int]) -> int:
    """The fewest members that can take a class's uses: never twice a day, never on too many days."""
    resolved = instance.resolved
    once = instance.classes[cls].exercise.once_a_week
    most = 1 if once else round(resolved.limit("third-day", "most"))
    if resolved.off("exercise-days"):
        most = len(resolved.days)
    return min(max(*Counter(days).values(), -(-len(days) // most)), len(instance.classes[cls].members))


def _gain_of_one_more(instance: Instance, days: dict[int, list[int]], counts: dict[int, int], cls: int) -> float:
    """What a further member of a class saves: third days and a priority's second exercise, less one more to learn."""
    resolved, members, uses = instance.resolved, instance.classes[cls].members, len(days[cls])
    if counts[cls] >= min(len(members), uses):
        return 0.0
    free = 1 if members[0].once_a_week else round(resolved.limit("third-day", "days"))
    beyond = max(0, uses - free * counts[cls]) - max(0, uses - free * (counts[cls] + 1))
    saved = 0.0 if resolved.off("third-day") else beyond * resolved.cost("third-day")
    for muscle in resolved.priorities:
        serving = sum(n for other, n in counts.items() if muscle in instance.classes[other].exercise.direct)
        if (
            muscle in members[0].direct
            and serving < exercises_due(resolved, muscle)
            and not resolved.off("priority-variety")
        ):
            saved += resolved.cost("priority-variety")
    return saved - (0.0 if resolved.off("distinct") else resolved.cost("distinct"))


def ordered(instance: Instance, day: int, uses: list[Use], names: dict[tuple[int, int], Exercise]) -> tuple[Entry, ...]:
    """A day's entries in the order they are done."""
    resolved = instance.resolved
    entries: dict[str, Entry] = {}
    for _, place, assignment, partner in uses:
        exercise, prescription = names[assignment.cls, place], assignment.prescription
        entries[exercise.id] = Entry(
            exercise=exercise.id,
            sets=prescription.sets,
            reps=reps_of(resolved, exercise, resolved.days[day]),
            rir=rir_of(resolved, exercise),
            rest=prescription.rest,
            technique=prescription.technique,
            drops=prescription.drops,
            partner=None if partner is None else names[partner, place].id,
        )
    lifts = [(resolved.catalogue.exercises[key], entry.partner) for key, entry in entries.items()]
    return tuple(entries[e.id] for e in in_order(resolved, lifts))


def columns_with_pairs(model: LinearModel, amounts: Sequence[float]) -> tuple[Column, ...]:
    """The columns in use in a solution on days, each two halves that it matched as one column.

    `amounts` are those of the model's variables. Halves of one kind have the same partners, so any of them will do.
    """
    used = [j for j in range(len(model.columns)) if amounts[j] > 0.5]
    free = set(used)
    found: list[Column] = []
    for match in model.matches:
        for _ in range(round(amounts[match.pairs])):
            a, b = (next(j for j in kind if j in free) for kind in (match.one, match.other))
            free -= {a, b}
            halves = sorted((model.columns[a].assignments[0], model.columns[b].assignments[0]), key=lambda h: h.cls)
            found.append(Column(model.columns[a].group, tuple(halves)))
    return (*(model.columns[j] for j in used if j in free), *found)
