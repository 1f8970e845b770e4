"""A clash in words: which wishes and rules cannot stand together, and what frees them."""

from __future__ import annotations

from collections import Counter
from typing import TYPE_CHECKING, Any

from setwright.catalogue.entries import Exercise
from setwright.solver.reckoning.rules import RULES
from setwright.solver.reckoning.terms import Terms
from setwright.solver.sheets.words import held, wrapped

if TYPE_CHECKING:
    from setwright.solver.model.clash import Conflict
    from setwright.solver.plan import Clash

SCHEMA = "setwright.clash/1"


def clash_document(clash: Clash) -> dict[str, Any]:
    """The clash as JSON."""
    members = [
        {
            "rule": c.rule,
            "words": c.words,
            "sentence": sentence(c.rule),
            "remedy": remedy(c.rule),
            "closed_by": closers(clash.terms, c),
        }
        for c in clash.conflicts
    ]
    return {"schema": SCHEMA, "conflicts": members}


def clash_text(clash: Clash, width: int = 100) -> str:
    """The clash for a coach: the wishes first, then the rules, each with its remedy."""
    width = held(width)
    wishes = [c for c in clash.conflicts if c.words]
    rules = [c for c in clash.conflicts if not c.words]
    several = len(clash.conflicts) > 1
    these = "These clash; to give way on any one of them is enough:" if several else "This cannot be met:"
    lines = wrapped(f"No week can meet this brief. {these}", width)
    for wish in wishes:
        lines += wrapped(f"  - asked for: {wish.words} ({sentence(wish.rule)})", width, "    ")
        for closer in closers(clash.terms, wish):
            lines += wrapped(f"    closed by {closer}: {sentence(closer)} Remedy: {remedy(closer)}", width, "      ")
        lines += wrapped(f"    remedy: {remedy(wish.rule)}", width, "    ")
    for rule in rules:
        lines += wrapped(f"  - rule {rule.rule}: {sentence(rule.rule)}", width, "    ")
        lines += wrapped(f"    remedy: {remedy(rule.rule)}", width, "    ")
    return "\n".join(lines) + "\n"


def closers(terms: Terms, conflict: Conflict) -> list[str]:
    """The rules that close every exercise a wish could be met with, most exercises first; empty if one is open."""
    closed = Counter[str]()
    for exercise in wanted(terms, conflict):
        for day in terms.days:
            by = terms.closed_by(exercise, day)
            if not by:
                return []
            closed.update(by)
    return [rule for rule, _ in closed.most_common()]


def wanted(terms: Terms, conflict: Conflict) -> list[Exercise]:
    """The exercises that a wished movement or a pin could be met with."""
    words = conflict.words.split()
    exercises = terms.catalogue.exercises
    if conflict.rule == "must":
        return [e for e in exercises.values() if e.movement in words]
    return [exercises[pin.exercise] for pin in terms.brief.pins if conflict.rule == "pinned" and pin.exercise in words]


def sentence(rule: str) -> str:
    return RULES[rule].sentence if rule in RULES else rule


def remedy(rule: str) -> str:
    return RULES[rule].remedy if rule in RULES else "relax it in the brief"
