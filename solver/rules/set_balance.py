"""Rules that ask for at least as many sets of one kind of lift as of another, and charge each set short of it."""

from __future__ import annotations

from collections.abc import Callable, Iterator
from dataclasses import dataclass
from functools import partial

from setwright.catalogue.entries import Exercise
from setwright.solver.evaluation.evaluated_week import EvaluatedWeek
from setwright.solver.evaluation.finding import Finding
from setwright.solver.evaluation.resolved_brief import ResolvedBrief
from setwright.solver.linear.linear_model import LinearModel, combined
from setwright.solver.linear.rule import Rule

Kind = Callable[[Exercise], bool]
MOST_SHORT = 200
"""Sets short of the other kind that a week can never have."""


@dataclass(frozen=True)
class Balance:
    """Sets of `wanted` lifts should not be fewer than those of `others`, where the rule applies."""

    rule: str
    wanted: Kind
    others: Kind
    applies: Callable[[ResolvedBrief], bool]


def _pull(exercise: Exercise) -> bool:
    return exercise.multi_joint and exercise.region == "pull"


def _push(exercise: Exercise) -> bool:
    return exercise.multi_joint and exercise.region == "push"


def _horizontal(exercise: Exercise) -> bool:
    return exercise.movement == "horizontal-press"


def _vertical(exercise: Exercise) -> bool:
    return exercise.movement == "vertical-press"


def _back_is_wanted(resolved: ResolvedBrief) -> bool:
    wanted = resolved.sought("upper-back") or resolved.sought("lats")
    return wanted and resolved.can_somewhere(_pull)


def _chest_is_wanted(resolved: ResolvedBrief) -> bool:
    first = "front-delts" in resolved.priorities
    return resolved.sought("chest") and resolved.can_somewhere(_horizontal) and not first


def check(balance: Balance, evaluated: EvaluatedWeek) -> Iterator[Finding]:
    """A finding where the week has fewer sets of the wanted kind than of the other."""
    wanted, others = (
        sum(line.sets for line in evaluated.lines if kind(line.exercise)) for kind in (balance.wanted, balance.others)
    )
    if others > wanted and balance.applies(evaluated.resolved):
        cost = evaluated.resolved.penalty(balance.rule, others - wanted)
        yield Finding(balance.rule, cost, amount=wanted, limit=others)


def post(balance: Balance, model: LinearModel) -> None:
    """Charge each set of the other kind above those of the wanted one."""
    if not balance.applies(model.resolved):
        return
    found = model.total(lambda e, p: p.sets * (balance.others(e) - balance.wanted(e)))
    short = model.violation(balance.rule, MOST_SHORT, model.resolved.cost(balance.rule))
    model.constrain(balance.rule, combined(found, {short: -1}), high=0)


def _rule(balance: Balance, sentence: str, remedy: str, says: str) -> Rule:
    posting, checking = partial(post, balance), partial(check, balance)
    return Rule(balance.rule, "scored", sentence, remedy, posting, checking, says=says)


RULES = (
    _rule(
        Balance("pull-push", _pull, _push, _back_is_wanted),
        "A week should have at least as many multi-joint pull sets as push sets.",
        "swap a press set for a row set",
        "{amount} pull sets and {limit} push sets",
    ),
    _rule(
        Balance("flat-overhead", _horizontal, _vertical, _chest_is_wanted),
        "A week should have at least as many sets of flat, incline and dip presses as of overhead presses, unless front delts are a priority.",
        "swap an overhead press set for a flat or incline press set, or for a side raise",
        "{limit} sets of overhead presses, {amount} of other presses",
    ),
)
