"""The audit: every rule's check on a printed week, and the score that follows; it knows no solver."""

from __future__ import annotations

import math
from collections.abc import Iterator
from dataclasses import dataclass
from functools import cached_property

from setwright.solver.evaluation.evaluated_week import EvaluatedWeek
from setwright.solver.evaluation.finding import UNITS, Finding
from setwright.solver.evaluation.resolved_brief import ResolvedBrief
from setwright.solver.evaluation.week import Week
from setwright.solver.linear.rule import Scope
from setwright.solver.rulebook import RULES, in_order


@dataclass(frozen=True)
class Audit:
    """What the audit found: hard rules broken, scored rules with their costs, and the score."""

    evaluated: EvaluatedWeek
    broken: tuple[Finding, ...]
    charged: tuple[Finding, ...]

    @cached_property
    def violations(self) -> tuple[Finding, ...]:
        """What is wrong in any week: unsafe for this client, without the kit, too long, or against the brief."""
        return self._told("any week")

    @cached_property
    def differences(self) -> tuple[Finding, ...]:
        """Where a week made elsewhere differs from how setwright plans, without what makes no difference."""
        return self._told("planned weeks")

    def _told(self, scope: Scope) -> tuple[Finding, ...]:
        """The hard rules of a scope that are broken, without negligible breaches."""
        rules = [(finding, RULES[finding.rule]) for finding in self.broken]
        return tuple(
            finding
            for finding, rule in rules
            if rule.scope == scope and not (rule.negligible and rule.negligible(self.evaluated, finding))
        )

    @cached_property
    def stimulus_units(self) -> int:
        """The week index in whole score units, rounded down."""
        return math.floor(self.evaluated.stimulus * UNITS + 1e-6)

    @cached_property
    def cost_units(self) -> int:
        """The costs of all scored rules in score units; what is liked takes off."""
        return sum(finding.cost for finding in self.charged)

    @property
    def score_units(self) -> int:
        """The score in whole units: the stimulus less every cost."""
        return self.stimulus_units - self.cost_units

    @property
    def stimulus(self) -> float:
        """The week index, in index points."""
        return self.stimulus_units / UNITS

    @property
    def score(self) -> float:
        """The score, in index points."""
        return self.score_units / UNITS

    def costs(self) -> dict[str, int]:
        """Rule id -> its cost in score units, for each rule that has one."""
        found: dict[str, int] = {}
        for finding in self.charged:
            found[finding.rule] = found.get(finding.rule, 0) + finding.cost
        return found


def audit(resolved: ResolvedBrief, week: Week) -> Audit:
    """The audit of a week: all violations and all costs, from nothing but the week and its resolved brief."""
    evaluated = EvaluatedWeek(resolved, week)
    broken = list(_excluded(evaluated))
    charged: list[Finding] = []
    for rule in in_order(resolved.catalogue):
        if rule.check is None or resolved.off(rule.id):
            continue
        for finding in rule.check(evaluated):
            bonus = finding.cost < 0
            hard = rule.kind != "scored" or (resolved.forced(rule.id) and not bonus)
            (broken if hard else charged).append(finding)
    return Audit(evaluated, tuple(broken), tuple(charged))


def _excluded(evaluated: EvaluatedWeek) -> Iterator[Finding]:
    """A finding for each rule that excludes a line's exercise on its day."""
    for line in evaluated.lines:
        for rule in evaluated.resolved.excluded_by(line.exercise, line.day):
            missing = RULES[rule].missing
            others = missing(evaluated.resolved, line.exercise, line.day) if missing else ()
            yield Finding(rule, days=(line.day.index,), exercise=line.exercise.id, others=others)
