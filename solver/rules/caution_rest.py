"""The shortest rest that a caution or an age asks for after any set."""

from __future__ import annotations

from collections.abc import Iterator

from setwright.solver.evaluation.evaluated_week import EvaluatedWeek
from setwright.solver.evaluation.finding import Finding
from setwright.solver.linear.rule import Rule, held_by_columns


def check(evaluated: EvaluatedWeek) -> Iterator[Finding]:
    """A finding for each line with a shorter rest than the client needs, and for each of a pair, which has hardly any."""
    least = evaluated.resolved.client_limits.rest_least
    if not least:
        return
    for line in evaluated.lines:
        case = "paired" if line.entry.partner is not None else "short" if line.entry.rest < least else ""
        if case:
            yield Finding(
                "caution-rest",
                case=case,
                amount=line.entry.rest,
                limit=least,
                days=(line.day.index,),
                exercise=line.exercise.id,
            )


RULE = Rule(
    id="caution-rest",
    kind="hard",
    sentence="Every set is followed by at least the rest that the client's cautions ask for, so that no two exercises are done in turn.",
    remedy="rest longer and make pairs straight sets, or have a professional set the limits",
    post=held_by_columns,
    check=check,
    says={
        "short": "{day}: {exercise} rests {amount} s, the client needs at least {limit} s",
        "paired": "{day}: {exercise} is done in turn with another, without the {limit} s of rest that the client needs",
    },
)
