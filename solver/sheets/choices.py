"""Why a line stands in the week, and what may stand there instead."""

from __future__ import annotations

from collections.abc import Callable

from setwright.catalogue.entries import Exercise
from setwright.solver.reckoning.pairs import fits
from setwright.solver.reckoning.view import Line, View
from setwright.solver.sheets.words import listed, muscle_name

MOST_SWAPS = 2


def why(view: View, line: Line) -> str:
    """A short true reason: a wish of the brief, then the muscles served directly, priorities first."""
    terms, exercise = view.terms, line.exercise
    serves = sorted(exercise.direct, key=lambda m: (m not in terms.priorities, list(terms.muscles).index(m)))
    wanted = [m for m in serves if m in terms.priorities]
    parts = []
    if exercise.id in terms.pinned:
        parts.append("pinned")
    if exercise.movement in terms.brief.must:
        parts.append(f"the {exercise.movement} asked for")
    if wanted:
        parts.append(f"priority: {listed(muscle_name(terms.catalogue, m) for m in wanted)}")
    others = [m for m in serves if m not in wanted]
    if others:
        parts.append(f"direct work for {listed(muscle_name(terms.catalogue, m) for m in others)}")
    indirect = listed(muscle_name(terms.catalogue, m) for m in sorted(exercise.muscles))
    return "; ".join(parts) or f"indirect work for {indirect}"


def swaps(view: View, line: Line) -> tuple[Exercise, ...]:
    """Up to two open exercises for the same work: same slot first, then same movement, then by rank.

    None loads the spine more than the lift it replaces, one that tires more comes last, and each fits the pair it
    enters.
    """
    terms, old = view.terms, line.exercise
    partner = terms.catalogue.exercises.get(line.entry.partner or "")
    here = {x.exercise.id for x in view.on[line.day.index]}
    slots = {x.exercise.slot.id for x in view.on[line.day.index] if x is not line and x.exercise.id != old.id}
    able: list[Exercise] = [
        e
        for e in terms.open_on[line.day.index]
        if e.id not in here
        and e.id not in terms.brief.dislike
        and e.slot.id not in slots
        and e.movement == old.movement
        and e.direct & old.direct
        and e.axial <= old.axial
        and (partner is None or fits(terms, e, partner))
    ]
    elsewhere = leaves_station(view, old)
    able.sort(key=lambda e: (not elsewhere(e), tires_more(e, old), e.slot.id != old.slot.id, terms.rank(e, line.day)))
    return tuple(able[:MOST_SWAPS])


def tires_more(new: Exercise, old: Exercise) -> bool:
    return new.fatigue == "high" and old.fatigue == "low"


def leaves_station(view: View, old: Exercise) -> Callable[[Exercise], bool]:
    """At peak hour a taken fixed station is swapped for work away from any; else every swap is alike."""
    items = view.terms.catalogue.items

    def fixed(exercise: Exercise) -> bool:
        return any(i in items and items[i].place == "fixed" for i in exercise.needs)

    if not view.terms.brief.owned.busy or not fixed(old):
        return lambda _: True
    return lambda exercise: not fixed(exercise)
