"""Rules that hold every set to a least number of repetitions in reserve: they differ by who asks for it."""

from __future__ import annotations

from collections.abc import Callable, Iterator
from functools import partial

from setwright.solver.evaluation.evaluated_week import EvaluatedWeek
from setwright.solver.evaluation.finding import Finding
from setwright.solver.evaluation.resolved_brief import ResolvedBrief
from setwright.solver.linear.rule import Rule, held_by_columns

Least = Callable[[ResolvedBrief], int]
"""The least repetitions in reserve that somebody asks for; 0 where nobody does."""


def _of_the_client(resolved: ResolvedBrief) -> int:
    return resolved.client_limits.rir_least


def _of_the_brief(resolved: ResolvedBrief) -> int:
    return resolved.reserve_asked


def check(rule: str, least_of: Least, evaluated: EvaluatedWeek) -> Iterator[Finding]:
    """A finding for each line that stops nearer to failure than is asked."""
    least = least_of(evaluated.resolved)
    for line in evaluated.lines:
        if line.entry.rir < least:
            days = (line.day.index,)
            yield Finding(rule, amount=line.entry.rir, limit=least, days=days, exercise=line.exercise.id)


def _rule(rule: str, least_of: Least, who_asks: str, remedy: str, says: str) -> Rule:
    return Rule(
        id=rule,
        kind="hard",
        sentence=f"Every set keeps at least the repetitions in reserve that {who_asks} for.",
        remedy=remedy,
        post=held_by_columns,
        check=partial(check, rule, least_of),
        says="{day}: {exercise} has {amount} RIR, " + says + " at least {limit}",
    )


RULES = (
    _rule(
        "caution-effort",
        _of_the_client,
        "the client's cautions and age ask",
        "stop the set earlier, or have a professional set the limits",
        "the client needs",
    ),
    _rule(
        "reserve-asked",
        _of_the_brief,
        "the brief asks",
        "stop the set earlier, or drop rir_at_least",
        "the brief asks for",
    ),
)
