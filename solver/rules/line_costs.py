"""Rules that charge a line, or reward it, for one plain fact: they differ by a number and a predicate."""

from __future__ import annotations

from collections.abc import Callable, Iterator
from functools import partial

from setwright.catalogue.entries import Exercise
from setwright.solver.evaluation.evaluated_week import EvaluatedWeek
from setwright.solver.evaluation.finding import Finding
from setwright.solver.evaluation.resolved_brief import STAND_IN, ResolvedBrief
from setwright.solver.evaluation.resolved_day import ResolvedDay
from setwright.solver.linear.linear_model import LinearModel
from setwright.solver.linear.rule import Rule

Applies = Callable[[ResolvedBrief, Exercise, int, ResolvedDay], bool]
"""Whether a line of so many sets of an exercise on a day pays the cost."""


def _is_liked(resolved: ResolvedBrief, exercise: Exercise, sets: int, day: ResolvedDay) -> bool:
    return resolved.likes(exercise)


def _is_disliked(resolved: ResolvedBrief, exercise: Exercise, sets: int, day: ResolvedDay) -> bool:
    return resolved.dislikes(exercise)


def _is_second_choice(resolved: ResolvedBrief, exercise: Exercise, sets: int, day: ResolvedDay) -> bool:
    return resolved.second_choice(exercise, day)


def _cannot_be_loaded_further(resolved: ResolvedBrief, exercise: Exercise, sets: int, day: ResolvedDay) -> bool:
    if exercise.load != "bodyweight" or not exercise.multi_joint or exercise.ability or exercise.id in resolved.named:
        return False
    return resolved.can(day, lambda e: e.movement == exercise.movement and e.has_load and e.rank < STAND_IN)


def _has_token_sets(resolved: ResolvedBrief, exercise: Exercise, sets: int, day: ResolvedDay) -> bool:
    return (
        exercise.multi_joint
        and sets < resolved.limit("token-sets", "sets")
        and resolved.goal != "efficiency"
        and len(resolved.days) > 1
        and not resolved.minimum_dose
    )


def _has_a_fourth_set(resolved: ResolvedBrief, exercise: Exercise, sets: int, day: ResolvedDay) -> bool:
    return sets == 4 and not exercise.multi_joint


def _has_a_fifth_set(resolved: ResolvedBrief, exercise: Exercise, sets: int, day: ResolvedDay) -> bool:
    return sets >= 5


def check(rule: str, applies: Applies, sign: int, evaluated: EvaluatedWeek) -> Iterator[Finding]:
    """A finding for each line that pays the cost (`sign` 1) or earns it (-1)."""
    for line in evaluated.lines:
        if applies(evaluated.resolved, line.exercise, line.sets, line.day):
            cost = sign * evaluated.resolved.penalty(rule, 1)
            yield Finding(rule, cost, amount=line.sets, days=(line.day.index,), exercise=line.exercise.id)


def post(rule: str, applies: Applies, sign: int, model: LinearModel) -> None:
    """Charge each column for those of its lines that pay the cost."""
    resolved = model.resolved
    for group in model.groups:
        day = resolved.days[group.days[0]]
        found = model.total(lambda e, p, d=day: 1 if applies(resolved, e, p.sets, d) else 0, group.index)
        model.penalise(rule, found, sign * resolved.cost(rule))


def _rule(rule: str, applies: Applies, sentence: str, remedy: str, says: str, sign: int = 1) -> Rule:
    posts, checks = partial(post, rule, applies, sign), partial(check, rule, applies, sign)
    return Rule(rule, "scored", sentence, remedy, posts, checks, says="{day}: {exercise} " + says)


RULES = (
    _rule(
        "liked",
        _is_liked,
        "An exercise that the client likes, or one on equipment that the client likes, earns a small bonus.",
        "take liked exercises where they serve",
        "is liked",
        sign=-1,
    ),
    _rule(
        "disliked",
        _is_disliked,
        "An exercise that the client dislikes, or one on equipment that the client dislikes, should not be used.",
        "swap it",
        "is disliked",
    ),
    _rule(
        "second-choice",
        _is_second_choice,
        "An exercise should be the best-ranked one of its movement that is available.",
        "take the first choice of the movement",
        "is a second choice",
    ),
    _rule(
        "loadable",
        _cannot_be_loaded_further,
        "A lift by body weight that cannot be made heavier should give way to one of its movement that can, where one is available.",
        "take a lift whose load can be raised",
        "cannot be made heavier",
    ),
    _rule(
        "token-sets",
        _has_token_sets,
        "A multi-joint lift should have at least {sets:g} sets (not in efficiency, in a one-day week or in a minimum dose).",
        "give the lift another set",
        "has {sets}",
    ),
    _rule(
        "fourth-set",
        _has_a_fourth_set,
        "A single-joint lift should have at most three sets.",
        "spread its sets",
        "has {sets}",
    ),
    _rule("fifth-set", _has_a_fifth_set, "A lift should have at most four sets.", "spread its sets", "has {sets}"),
)
