"""The audit: every rule's check on a printed week, and the score that follows; it knows no solver."""

from __future__ import annotations

import math
from dataclasses import dataclass
from functools import cached_property

from setwright.solver.evaluation.evaluated_week import EvaluatedWeek
from setwright.solver.evaluation.finding import UNITS, Finding
from setwright.solver.evaluation.resolved_brief import ResolvedBrief
from setwright.solver.evaluation.week import Week
from setwright.solver.rules import CHECKS, EXCLUDERS, RULES


@dataclass(frozen=True)
class Audit:
    """What the audit found: hard rules broken, scored rules with their costs, and the score."""

    evaluated: EvaluatedWeek
    broken: tuple[Finding, ...]
    charged: tuple[Finding, ...]

    @cached_property
    def stimulus_units(self) -> int:
        return math.floor(self.evaluated.stimulus * UNITS + 1e-6)

    @cached_property
    def cost_units(self) -> int:
        return sum(finding.cost for finding in self.charged)

    @property
    def score_units(self) -> int:
        """The score in whole units: the stimulus less every cost."""
        return self.stimulus_units - self.cost_units

    @property
    def stimulus(self) -> float:
        return self.stimulus_units / UNITS

    @property
    def score(self) -> float:
        return self.score_units / UNITS

    def costs(self) -> dict[str, int]:
        """The cost of each rule that has one, in score units."""
        found: dict[str, int] = {}
        for finding in self.charged:
            found[finding.rule] = found.get(finding.rule, 0) + finding.cost
        return found


def audit(resolved: ResolvedBrief, week: Week) -> Audit:
    """The audit of a week: all violations and all costs, from nothing but the week and its terms."""
    evaluated = EvaluatedWeek(resolved, week)
    broken: list[Finding] = []
    charged: list[Finding] = []
    for line in evaluated.lines:
        for rule in EXCLUDERS:
            if rule.id in resolved.excluded_by(line.exercise, line.day):
                broken.append(Finding(rule.id, f"{line.where}: {rule.sentence}"))
    for rule in CHECKS:
        if resolved.off(rule.id) or rule.check is None:
            continue
        for finding in rule.check(evaluated):
            bonus = finding.cost < 0
            hard = rule.kind != "scored" or (resolved.forced(rule.id) and not bonus)
            (broken if hard else charged).append(finding)
    return Audit(evaluated, tuple(broken), tuple(charged))


def remedy(rule: str) -> str:
    """What mends a breach of a rule."""
    return RULES[rule].remedy
