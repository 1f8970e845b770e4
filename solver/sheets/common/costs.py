"""What a week gave up: scored rules missed and what they cost, in index points."""

from __future__ import annotations

from dataclasses import dataclass

from setwright.solver.auditing import Audit
from setwright.solver.evaluation.finding import UNITS, Finding
from setwright.solver.rulebook import sentence_of
from setwright.solver.sheets.common.findings import finding_words

ALWAYS = ("line", "distinct")
"""Costs that every week has: they price size, nothing is missed."""
COUNTED = (*ALWAYS, "second-choice", "token-sets", "fourth-set", "fifth-set", "third-day", "liked", "disliked")
"""Rules that charge line by line: shown as one sum."""


@dataclass(frozen=True)
class Cost:
    """One cost as shown: the rule, what happened, index points (below zero: earned), and how often it happened."""

    rule: str
    text: str
    points: float
    times: int = 1


def points(units: int) -> float:
    """Score units as index points."""
    return units / UNITS


def missed(audit: Audit) -> tuple[Finding, ...]:
    """The scored rules and band ends that the week misses."""
    return tuple(f for f in audit.charged if f.cost > 0 and f.rule not in ALWAYS)


def shown(audit: Audit) -> tuple[Cost, ...]:
    """Every cost, dearest first; rules that charge line by line as one sum each, with their sentence."""
    resolved = audit.evaluated.resolved
    found: list[Cost] = []
    for rule in dict.fromkeys(f.rule for f in audit.charged):
        mine = [f for f in audit.charged if f.rule == rule and f.cost]
        if rule in COUNTED and len(mine) > 1:
            whole = points(sum(f.cost for f in mine))
            found.append(Cost(rule, sentence_of(rule, resolved), whole, len(mine)))
        else:
            found += [Cost(rule, finding_words(f, resolved), points(f.cost)) for f in mine]
    return tuple(sorted(found, key=lambda cost: (-cost.points, cost.rule, cost.text)))
