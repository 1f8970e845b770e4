"""The shortest and the longest rest that the brief asks for after any set."""

from __future__ import annotations

from collections.abc import Iterator

from setwright.solver.evaluation.evaluated_week import EvaluatedWeek
from setwright.solver.evaluation.finding import Finding
from setwright.solver.linear.rule import Rule, held_by_columns


def check(evaluated: EvaluatedWeek) -> Iterator[Finding]:
    """A finding for each line with a shorter or a longer rest than the brief asks for; see also caution-rest."""
    least, most = evaluated.resolved.rest_span
    needed = evaluated.resolved.client_limits.rest_least
    for line in evaluated.lines:
        rest = line.entry.rest
        case = "short" if needed <= rest < least else "long" if rest > most else ""
        if case:
            yield Finding(
                "rest-asked",
                case=case,
                amount=rest,
                limit=least if case == "short" else most,
                days=(line.day.index,),
                exercise=line.exercise.id,
            )


RULE = Rule(
    id="rest-asked",
    kind="hard",
    sentence="Every set, and each round of a pair, is followed by a rest within what the brief asks for; a caution that asks for more goes first.",
    remedy="take a rest that the brief allows, or drop rest_at_least or rest_at_most",
    post=held_by_columns,
    check=check,
    says={
        "short": "{day}: {exercise} rests {amount} s, the brief asks for at least {limit} s",
        "long": "{day}: {exercise} rests {amount} s, the brief asks for at most {limit} s",
    },
)
