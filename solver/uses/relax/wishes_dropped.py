"""Relaxations of other wishes: movements, what is avoided, rests, and rules that the brief made hard."""

from __future__ import annotations

from collections.abc import Iterator

from setwright.catalogue.entries import Exercise
from setwright.solver.brief.schema import DayAsk
from setwright.solver.evaluation.finding import Wish
from setwright.solver.rules.muscle_on_day import trains
from setwright.solver.uses.relax.brief_changes import (
    AllowExercise,
    AllowShorterRests,
    BriefChange,
    DropMovement,
    DropMuscleDay,
    DropRule,
    PriceRule,
)
from setwright.solver.uses.relax.clashing_brief import ClashingBrief
from setwright.solver.uses.relax.more_kit import kit_relaxations
from setwright.solver.uses.relax.relaxation import Relaxation

MAY_BE_DROPPED = ("movement-once", "slot-once", "exercise-count", "day-sets", "exercise-days", "day-share")
"""Hard rules of order and variety that a coach may turn off; those of safety, kit and time never."""


def wish_relaxations(clashing: ClashingBrief) -> Iterator[Relaxation]:
    """Every relaxation of the movements, rests and rules that clash."""
    for movement in clashing.brief.must:
        if Wish("must", movement) in clashing.wishes("must"):
            yield from _movement(clashing, movement)
    for wish in clashing.wishes("muscle-on-day"):
        yield from _muscle_day(clashing, wish)
    yield from _rests(clashing)
    yield from _rules(clashing)


def _movement(clashing: ClashingBrief, movement: str) -> Iterator[Relaxation]:
    """The kit for a movement, what is avoided allowed again, or the movement given up."""
    lifts = [e for e in clashing.catalogue.exercises.values() if e.movement == movement]
    yield from kit_relaxations(clashing, lifts, all_of_them=False)
    yield from _allowed(clashing, lifts)
    brief = clashing.changed(must=tuple(m for m in clashing.brief.must if m != movement))
    if brief is not None and clashing.possible(brief):
        yield Relaxation("movement", (DropMovement(movement),), brief)


def _muscle_day(clashing: ClashingBrief, wish: Wish) -> Iterator[Relaxation]:
    """The kit for a muscle or group that a day names, or the day without it."""
    muscles = clashing.catalogue.muscles_of(wish.subject)
    lifts = [e for e in clashing.catalogue.exercises.values() if trains(e, muscles)]
    yield from kit_relaxations(clashing, lifts, all_of_them=False)
    brief = clashing.changed(days=tuple(_without(day, wish) for day in clashing.brief.days))
    if brief is not None and clashing.possible(brief):
        yield Relaxation("muscle-day", (DropMuscleDay(wish.subject, wish.day),), brief)


def _without(day: DayAsk, wish: Wish) -> DayAsk:
    """The day without the muscle or group that is wished for on its weekday."""
    if wish.day not in ("", day.weekday):
        return day
    return day.model_copy(update={"trained": tuple(name for name in day.trained or () if name != wish.subject) or None})


def _allowed(clashing: ClashingBrief, lifts: list[Exercise]) -> Iterator[Relaxation]:
    """The first of some avoided exercises that frees the brief once it is allowed again."""
    for exercise in lifts:
        if exercise.id in clashing.brief.avoid:
            brief = clashing.changed(avoid=tuple(e for e in clashing.brief.avoid if e != exercise.id))
            if brief is not None and clashing.possible(brief):
                yield Relaxation("avoid", (AllowExercise(exercise.id),), brief)
                return


def _rests(clashing: ClashingBrief) -> Iterator[Relaxation]:
    """Rests shorter than the brief asks for, where minutes are part of the clash."""
    least = clashing.brief.rest_at_least
    if least is not None and clashing.about("day-minutes"):
        brief = clashing.changed(rest_at_least=None)
        if brief is not None and clashing.possible(brief):
            yield Relaxation("rests", (AllowShorterRests(least),), brief)


def _rules(clashing: ClashingBrief) -> Iterator[Relaxation]:
    """A rule made hard that costs instead, or a rule of order turned off."""
    for rule in dict.fromkeys(c.rule for c in clashing.conflicts if not c.wish):
        change: BriefChange
        if clashing.brief.rules.get(rule) == "hard":
            rules = {r: v for r, v in clashing.brief.rules.items() if r != rule}
            change = PriceRule(rule)
        elif rule in MAY_BE_DROPPED:
            rules = {**clashing.brief.rules, rule: "off"}
            change = DropRule(rule)
        else:
            continue
        brief = clashing.changed(rules=rules)
        if brief is not None and clashing.possible(brief):
            yield Relaxation("rule", (change,), brief)
