"""Repetitions in reserve as set, not solved."""

from __future__ import annotations

from collections.abc import Iterator, Mapping

from setwright.solver.evaluation.evaluated_week import EvaluatedWeek
from setwright.solver.evaluation.finding import Finding
from setwright.solver.evaluation.prescriptions import rir_of
from setwright.solver.evaluation.resolved_brief import ResolvedBrief
from setwright.solver.linear.rule import Rule, held_by_columns


def check(evaluated: EvaluatedWeek) -> Iterator[Finding]:
    """A finding for each line with other repetitions in reserve than its kind of lift has; see also caution-effort and
    reserve-asked."""
    least = max(evaluated.resolved.client_limits.rir_least, evaluated.resolved.reserve_asked)
    for line in evaluated.lines:
        due = rir_of(evaluated.resolved, line.exercise)
        if line.entry.rir != due and line.entry.rir >= least:
            yield Finding("effort", amount=line.entry.rir, limit=due, days=(line.day.index,), exercise=line.exercise.id)


def figures(resolved: ResolvedBrief) -> Mapping[str, object]:
    """The RIR by kind of lift, of the evidence file."""
    names = {"high": "rir-high-fatigue", "novice": "rir-novice", "other": "rir-other"}
    return {key: f"{resolved.number(name):g}" for key, name in names.items()}


def safely_near(evaluated: EvaluatedWeek, finding: Finding) -> bool:
    """Whether a line is within one repetition of the RIR due, or nearer to failure on a lift that is safe to fail."""
    said, due = finding.amount, finding.limit
    if not (isinstance(said, int) and isinstance(due, int)):
        return False
    safe = evaluated.resolved.catalogue.exercises[finding.exercise].safe_to_fail
    return abs(said - due) <= 1 or (safe and said < due)


RULE = Rule(
    id="effort",
    kind="data",
    scope="planned weeks",
    sentence="RIR is {high} for high-fatigue lifts, {novice} for novices and for someone alone under a lift that can trap them, otherwise {other}; the brief may ask for more.",
    remedy="print the RIR of the kind of lift",
    post=held_by_columns,
    check=check,
    negligible=safely_near,
    says="{day}: {exercise} has {amount} RIR, not {limit}",
    figures=figures,
)
