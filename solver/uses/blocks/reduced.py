"""Weeks with the base week's exercises, days and pairs and a share of its sets: lighter, of return, at minimum dose."""

from __future__ import annotations

import math
from dataclasses import replace

from setwright.solver.auditing import Audit, audit
from setwright.solver.brief.parsed_brief import ParsedBrief
from setwright.solver.brief.schema import Brief
from setwright.solver.evaluation.evaluated_week import EvaluatedWeek, Line
from setwright.solver.evaluation.prescriptions import rir_of, set_span
from setwright.solver.evaluation.resolved_brief import ResolvedBrief
from setwright.solver.evaluation.week import Entry, Week
from setwright.solver.linear.rule import Rule
from setwright.solver.rulebook import RULES, resolve

FILLS_DAYS = "day-share"
"""The rule that no day is idle, which a reduced week may leave: its days are not filled up."""


def reduced_week(base: EvaluatedWeek, parsed: ParsedBrief, share: float, rir_more: int) -> tuple[ParsedBrief, Audit]:
    """The base week with a share of each exercise's sets, its brief and its audit by that brief.

    A lift of several joints, and a pair with one, rounds a half set up, another one down, to at least one set; drop
    sets and rest-pause sets become straight sets. The brief asks for a lighter dose, and drops exact lower ends,
    pinned sets and what the base brief makes hard.
    """
    catalogue = base.resolved.catalogue
    brief = _reduced_brief(parsed.brief, rir_more)
    resolved = resolve(brief, catalogue)
    week = Week(tuple(tuple(_reduced(resolved, base, line, share) for line in day) for day in base.on))
    if any(finding.rule == FILLS_DAYS for finding in audit(resolved, week).broken):
        brief = brief.model_copy(update={"rules": {**brief.rules, FILLS_DAYS: "off"}})
    return ParsedBrief(brief, parsed.assumed), audit(resolve(brief, catalogue), week)


def _reduced(resolved: ResolvedBrief, base: EvaluatedWeek, line: Line, share: float) -> Entry:
    """A line with its share of sets, within what the reduced brief allows."""
    fewest, most = zip(*(set_span(resolved, one.exercise) for one in _together(base, line)), strict=True)
    sets = min(max(_share_of(base, line, share), *fewest), *most)
    return replace(line.entry, sets=sets, rir=rir_of(resolved, line.exercise), technique="straight", drops=0)


def _share_of(base: EvaluatedWeek, line: Line, share: float) -> int:
    several = any(one.exercise.multi_joint for one in _together(base, line))
    return max(1, math.floor(line.sets * share + 0.5) if several else math.ceil(line.sets * share - 0.5))


def _together(base: EvaluatedWeek, line: Line) -> tuple[Line, ...]:
    """The line, and the one it is paired with."""
    return tuple(one for one in base.on[line.day.index] if one is line or one.exercise.id == line.entry.partner)


def _reduced_brief(brief: Brief, rir_more: int) -> Brief:
    """The base brief, asking for few sets of each exercise."""
    update: dict[str, object] = {
        "dose": "lighter",
        "techniques": False,
        "rir_more": rir_more,
        "muscles": {name: ask.model_copy(update={"at_least": None}) for name, ask in brief.muscles.items()},
        "pins": tuple(pin.model_copy(update={"sets": None}) for pin in brief.pins),
        "rules": {rule: said for rule, said in brief.rules.items() if not (said == "hard" and _scored(RULES[rule]))},
    }
    return brief.model_copy(update=update)


def _scored(rule: Rule) -> bool:
    return rule.kind == "scored"
