"""Rests from the goal's short list."""

from __future__ import annotations

from collections.abc import Iterator

from setwright.solver.evaluation.evaluated_week import EvaluatedWeek, Line
from setwright.solver.evaluation.finding import Finding
from setwright.solver.evaluation.prescriptions import pair_rests, rests_of
from setwright.solver.evaluation.resolved_brief import ResolvedBrief
from setwright.solver.linear.rule import Rule, held_by_columns


def rests_for(resolved: ResolvedBrief, line: Line) -> tuple[int, ...]:
    """The rests in seconds that a line may have, alone or in its pair."""
    if line.entry.partner is None:
        return rests_of(resolved, line.exercise)
    others = pair_rests(resolved, resolved.catalogue.exercises[line.entry.partner])
    return tuple(rest for rest in pair_rests(resolved, line.exercise) if rest in others)


def check(evaluated: EvaluatedWeek) -> Iterator[Finding]:
    """A finding for each line whose rest is not in its list; see also caution-rest and rest-asked."""
    least, most = evaluated.resolved.rest_span
    for line in evaluated.lines:
        known = rests_for(evaluated.resolved, line)
        if line.entry.rest not in known and least <= line.entry.rest <= most:
            yield Finding(
                "rest-range",
                amount=line.entry.rest,
                limit=known,
                days=(line.day.index,),
                exercise=line.exercise.id,
            )


def no_shorter(evaluated: EvaluatedWeek, finding: Finding) -> bool:
    """Whether a line rests no shorter than the shortest rest of its list."""
    rest, known = finding.amount, finding.limit
    return isinstance(known, tuple) and bool(known) and isinstance(rest, int) and rest >= min(known)


RULE = Rule(
    id="rest-range",
    kind="hard",
    scope="planned weeks",
    sentence="A rest is one of those listed for the goal and the kind of lift.",
    remedy="take a rest of the list",
    post=held_by_columns,
    check=check,
    negligible=no_shorter,
    says="{day}: {exercise} rests {amount} s, not one of {limit_list}",
)
