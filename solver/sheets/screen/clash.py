"""A clash in words: which wishes and rules cannot stand together, and what frees them."""

from __future__ import annotations

from collections import Counter
from typing import TYPE_CHECKING, Any

from setwright.catalogue.entries import Exercise
from setwright.solver.brief.parsed_brief import raw_of
from setwright.solver.evaluation.pairs import unfit
from setwright.solver.evaluation.resolved_brief import ResolvedBrief
from setwright.solver.rules import RULES
from setwright.solver.rules.pinned import pin_words
from setwright.solver.sheets.common.words import held, wrapped
from setwright.solver.sheets.document.json_values import rounded

if TYPE_CHECKING:
    from setwright.solver.engines.infeasibility import Conflict
    from setwright.solver.planning import Clash
    from setwright.solver.uses.relax.relaxations import Conceded, Concession

SCHEMA = "setwright.clash/1"


def clash_document(clash: Clash, conceded: Conceded | None = None) -> dict[str, Any]:
    """The clash as JSON, with its concessions where they were reckoned."""
    members = [
        {
            "rule": c.rule,
            "words": c.words,
            "sentence": sentence(c.rule),
            "remedy": remedy(c.rule),
            "closed_by": closers(clash.resolved, c),
            "why": misfits(clash.resolved, c),
        }
        for c in clash.conflicts
    ]
    document: dict[str, Any] = {"schema": SCHEMA, "conflicts": members}
    if conceded is not None:
        document["arithmetic"] = list(conceded.arithmetic)
        document["concessions"] = [concession_of(c, place) for place, c in enumerate(conceded.concessions, 1)]
    return document


def concession_of(concession: Concession, place: int) -> dict[str, Any]:
    """One concession: what gives way, what it costs in index points, minutes and sets, and the brief it leaves."""
    return {
        "rank": place,
        "kind": concession.kind,
        "words": concession.words,
        "stimulus": rounded(concession.audit.stimulus),
        "cost": rounded(concession.cost),
        "minutes_a_week_more": concession.minutes,
        "sets_given_up": rounded(concession.sets),
        "brief": raw_of(concession.brief),
    }


def clash_text(clash: Clash, width: int = 100, conceded: Conceded | None = None) -> str:
    """The clash for a coach: the wishes first, then the rules, each with its remedy, then what would free it."""
    width = held(width)
    wishes = [c for c in clash.conflicts if c.words]
    rules = [c for c in clash.conflicts if not c.words]
    several = len(clash.conflicts) > 1
    these = "These cannot all be met, and any one fewer of them could be:" if several else "This cannot be met:"
    lines = wrapped(f"No week can meet this brief. {these}", width)
    for wish in wishes:
        lines += wrapped(f"  - asked for: {wish.words} ({sentence(wish.rule)})", width, "    ")
        for closer in closers(clash.resolved, wish):
            lines += wrapped(f"    closed by {closer}: {sentence(closer)} Remedy: {remedy(closer)}", width, "      ")
        for reason in misfits(clash.resolved, wish):
            lines += wrapped(f"    no pair: {reason}", width, "      ")
        lines += wrapped(f"    remedy: {remedy(wish.rule)}", width, "    ")
    for rule in rules:
        lines += wrapped(f"  - rule {rule.rule}: {sentence(rule.rule)}", width, "    ")
        lines += wrapped(f"    remedy: {remedy(rule.rule)}", width, "    ")
    if conceded is not None:
        lines += conceded_lines(conceded, width)
    return "\n".join(lines) + "\n"


def conceded_lines(conceded: Conceded, width: int) -> list[str]:
    """The sums that cannot come out, then the concessions, least first."""
    lines: list[str] = []
    for said in conceded.arithmetic:
        lines += wrapped(f"By arithmetic: {said}", width, "  ")
    if not conceded.concessions:
        return [*lines, *wrapped("No small concession alone was found to make a week possible.", width)]
    lines += [
        "",
        *wrapped("What makes a week possible, the least given up first, each tried on a planned week:", width),
    ]
    for place, concession in enumerate(conceded.concessions, 1):
        lines += wrapped(f"  {place}. {concession.words}", width, "     ")
        lines += wrapped(f"     {price(concession)}", width, "     ")
    note = "Indices come from short searches, good to about a point. Minutes weigh 0.2 points each in the order."
    return [*lines, *wrapped(note, width)]


def price(concession: Concession) -> str:
    """What a concession costs, in words."""
    parts = [f"week index {concession.audit.stimulus:.1f}"]
    below = round(concession.cost, 1)
    parts.append(f"{below:.1f} below the best of these" if below else "the best of these")
    if concession.minutes:
        parts.append(f"{concession.minutes} minutes a week more")
    if concession.sets:
        parts.append(f"{concession.sets:g} weekly sets given up")
    return "; ".join([", ".join(parts[:2]), *parts[2:]])


def misfits(resolved: ResolvedBrief, conflict: Conflict) -> list[str]:
    """Why a pinned pair is none; empty for any other wish."""
    exercises = resolved.catalogue.exercises
    pins = [p for p in resolved.brief.pins if conflict.rule == "pinned" and pin_words(p) == conflict.words]
    return [why for p in pins if p.pair_with for why in unfit(resolved, exercises[p.exercise], exercises[p.pair_with])]


def closers(resolved: ResolvedBrief, conflict: Conflict) -> list[str]:
    """The rules that close every exercise a wish could be met with, most exercises first; empty if one is open."""
    closed = Counter[str]()
    for exercise in wanted(resolved, conflict):
        for day in resolved.days:
            by = resolved.excluded_by(exercise, day)
            if not by:
                return []
            closed.update(by)
    return [rule for rule, _ in closed.most_common()]


def wanted(resolved: ResolvedBrief, conflict: Conflict) -> list[Exercise]:
    """The exercises that a wished movement or a pin could be met with."""
    words = conflict.words.split()
    exercises = resolved.catalogue.exercises
    if conflict.rule == "must":
        return [e for e in exercises.values() if e.movement in words]
    return [
        exercises[pin.exercise] for pin in resolved.brief.pins if conflict.rule == "pinned" and pin.exercise in words
    ]


def sentence(rule: str) -> str:
    return RULES[rule].sentence if rule in RULES else rule


def remedy(rule: str) -> str:
    return RULES[rule].remedy if rule in RULES else "relax it in the brief"
