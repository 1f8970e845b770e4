"""Which exercises do a line's work: those of its movement first, the likeliest first among them."""

from __future__ import annotations

from collections.abc import Callable

from setwright.catalogue.entries import Exercise
from setwright.solver.evaluation.evaluated_week import EvaluatedWeek, Line
from setwright.solver.evaluation.pairing.pairs import fits
from setwright.solver.evaluation.resolved_brief import ResolvedBrief
from setwright.solver.rules.stand_in import ONLY_NAMED, available, closed_as_stand_in


def candidates(evaluated: EvaluatedWeek, line: Line) -> tuple[list[Exercise], list[Exercise]]:
    """The exercises that do a line's work, of its movement and of others, the likeliest of each first.

    They are open on the day, or the stand-in that would be if the line's exercise were not there. None is disliked
    or loads the spine more, and each fits the pair it enters.
    """
    resolved, old = evaluated.resolved, line.exercise
    partner = resolved.catalogue.exercises.get(line.entry.partner or "")
    others = [x.exercise for x in evaluated.on[line.day.index] if x.place != line.place]
    here = {e.id for e in others} | {old.id}
    slots = {e.slot.id for e in others}
    able = [
        e
        for e in resolved.catalogue.exercises.values()
        if e.id not in here
        and e.id not in resolved.brief.dislike
        and e.slot.id not in slots
        and same_work(evaluated, e, old)
        and e.axial <= old.axial
        and (not resolved.excluded_by(e, line.day) or _next_best(resolved, e, line, here))
        and (partner is None or fits(resolved, e, partner))
    ]
    elsewhere = _away_from_station(evaluated, old)
    able.sort(
        key=lambda e: (not elsewhere(e), _tires_more(e, old), e.slot.id != old.slot.id, resolved.rank(e, line.day))
    )
    same = [e for e in able if e.movement == old.movement]
    return same, [e for e in able if e.movement != old.movement]


def _next_best(resolved: ResolvedBrief, exercise: Exercise, line: Line, here: set[str]) -> bool:
    """Whether a stand-in is closed only because better ones of its slot stand that day, the line's own among them."""
    if not closed_as_stand_in(resolved, exercise, line.day) or exercise.slot.id != line.exercise.slot.id:
        return False
    rank = resolved.rank(exercise, line.day)
    better = (e for e in resolved.catalogue.exercises.values() if e.slot == exercise.slot)
    return rank < ONLY_NAMED and all(
        e.id in here or resolved.rank(e, line.day) >= rank or not available(resolved, e, line.day) for e in better
    )


def same_work(evaluated: EvaluatedWeek, new: Exercise, old: Exercise) -> bool:
    """Whether an exercise trains what another does: the same movement for a direct muscle of it, or failing that one
    of the region, no heavier, that trains directly every sought muscle that the other does."""
    if new.movement == old.movement:
        return bool(new.direct & old.direct)
    muscles = evaluated.resolved.catalogue.muscles
    sought = {m for m in old.direct if muscles[m].size != "minor"} or old.direct
    alike = new.region == old.region and new.multi_joint == old.multi_joint and not _tires_more(new, old)
    return bool(sought) and sought <= new.direct and alike


def _tires_more(new: Exercise, old: Exercise) -> bool:
    return new.fatigue == "high" and old.fatigue == "low"


def _away_from_station(evaluated: EvaluatedWeek, old: Exercise) -> Callable[[Exercise], bool]:
    """At peak hour, for an exercise at a fixed station: whether another needs none; else every exercise is as good."""
    items = evaluated.resolved.catalogue.items

    def fixed(exercise: Exercise) -> bool:
        return any(i in items and items[i].place == "fixed" for i in exercise.needs)

    if not evaluated.resolved.brief.owned.busy or not fixed(old):
        return lambda _: True
    return lambda exercise: not fixed(exercise)
