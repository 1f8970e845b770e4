"""What a week gave up: scored rules missed and what they cost, in index points."""

from __future__ import annotations

from dataclasses import dataclass

from setwright.solver.auditing import Audit
from setwright.solver.evaluation.finding import UNITS, Finding
from setwright.solver.evaluation.resolved_brief import ResolvedBrief
from setwright.solver.rulebook import sentence_of
from setwright.solver.sheets.common.findings import finding_words

ALWAYS = ("line", "distinct")
"""Costs that every week has: they price size, nothing is missed."""
COUNTED = (*ALWAYS, "second-choice", "token-sets", "fourth-set", "fifth-set", "third-day", "liked", "disliked")
"""Rules that charge line by line: shown as one sum."""


@dataclass(frozen=True)
class Cost:
    """One cost as shown: the rule, what happened, and index points (below zero: earned)."""

    rule: str
    text: str
    points: float


def points(units: int) -> float:
    """Score units as index points."""
    return units / UNITS


def missed(audit: Audit) -> tuple[Finding, ...]:
    """The scored rules and band ends that the week misses."""
    return tuple(f for f in audit.charged if f.cost > 0 and f.rule not in ALWAYS)


def shown(audit: Audit) -> tuple[Cost, ...]:
    """Every cost, dearest first; rules that charge line by line as one sum each."""
    resolved = audit.evaluated.resolved
    alone = [f for f in audit.charged if f.cost and f.rule not in COUNTED]
    found = [Cost(f.rule, finding_words(f, resolved), points(f.cost)) for f in alone]
    for rule in COUNTED:
        mine = [f for f in audit.charged if f.rule == rule and f.cost]
        if mine:
            found.append(Cost(rule, _summed_words(mine, resolved), points(sum(f.cost for f in mine))))
    return tuple(sorted(found, key=lambda cost: (-cost.points, cost.rule, cost.text)))


def _summed_words(findings: list[Finding], resolved: ResolvedBrief) -> str:
    """Findings of one rule as one: itself when alone, else how often and the rule's sentence."""
    if len(findings) == 1:
        return finding_words(findings[0], resolved)
    return f"{len(findings)} times: {sentence_of(findings[0].rule, resolved)}"
