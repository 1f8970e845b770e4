"""The audit: every rule's check on a printed week, and the score that follows; it knows no solver."""

from __future__ import annotations

import math
from dataclasses import dataclass
from functools import cached_property

from setwright.solver.evaluation.finding import UNITS, Finding
from setwright.solver.rules import CHECKS, CLOSERS, RULES
from setwright.solver.evaluation.resolved_brief import Terms
from setwright.solver.evaluation.evaluated_week import View
from setwright.solver.evaluation.week import Week


@dataclass(frozen=True)
class Audit:
    """What the audit found: hard rules broken, scored rules with their costs, and the score."""

    view: View
    broken: tuple[Finding, ...]
    charged: tuple[Finding, ...]

    @cached_property
    def stimulus_units(self) -> int:
        return math.floor(self.view.stimulus * UNITS + 1e-6)

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


def audit(terms: Terms, week: Week) -> Audit:
    """The audit of a week: all violations and all costs, from nothing but the week and its terms."""
    view = View(terms, week)
    broken: list[Finding] = []
    charged: list[Finding] = []
    for line in view.lines:
        for rule in CLOSERS:
            if rule.id in terms.closed_by(line.exercise, line.day):
                broken.append(Finding(rule.id, f"{line.where}: {rule.sentence}"))
    for rule in CHECKS:
        if terms.off(rule.id) or rule.check is None:
            continue
        for finding in rule.check(view):
            bonus = finding.cost < 0
            hard = rule.kind != "scored" or (terms.forced(rule.id) and not bonus)
            (broken if hard else charged).append(finding)
    return Audit(view, tuple(broken), tuple(charged))


def remedy(rule: str) -> str:
    """What mends a breach of a rule."""
    return RULES[rule].remedy
