"""Rests from the goal's short list."""

from __future__ import annotations

from collections.abc import Iterator

from setwright.solver.evaluation.evaluated_week import EvaluatedWeek
from setwright.solver.evaluation.finding import Finding, Rule
from setwright.solver.evaluation.prescriptions import pair_rests, rests_of, single_pair_rests


def check(evaluated: EvaluatedWeek) -> Iterator[Finding]:
    for line in evaluated.lines:
        if line.entry.partner is None:
            known = rests_of(evaluated.resolved, line.exercise)
        else:
            known = pair_rests(evaluated.resolved)
            both = (line.exercise, evaluated.resolved.catalogue.exercises[line.entry.partner])
            if not any(e.multi_joint for e in both):
                known += single_pair_rests(evaluated.resolved)
        if line.entry.rest not in known:
            yield Finding("rest-range", f"{line.where} rests {line.entry.rest} s, not one of {list(known)}")


RULE = Rule(
    id="rest-range",
    kind="hard",
    sentence="Rests are those of the goal and the kind of lift, from the round list.",
    remedy="take a rest of the list",
    check=check,
)
