"""A clash in words: which wishes and rules cannot stand together, and what frees them."""

from __future__ import annotations

from collections import Counter
from typing import TYPE_CHECKING, Any

from setwright.catalogue.entries import Exercise
from setwright.solver.brief.parsed_brief import raw_of
from setwright.solver.evaluation.finding import Wish
from setwright.solver.evaluation.pairing.pairs import unfit
from setwright.solver.evaluation.resolved_brief import ResolvedBrief
from setwright.solver.rulebook import RULES, sentence_of
from setwright.solver.sheets.common.findings import misfit_words, wish_words
from setwright.solver.sheets.common.json_values import rounded
from setwright.solver.sheets.common.words import page_width, wrapped
from setwright.solver.sheets.screen.relaxation_words import relaxation_words, shortfall_words

if TYPE_CHECKING:
    from setwright.solver.planning import Clash
    from setwright.solver.uses.relax.relaxations import Relaxations, SolvedRelaxation

SCHEMA = "setwright.clash/1"


def clash_document(clash: Clash, relaxations: Relaxations | None = None) -> dict[str, Any]:
    """The clash as JSON, with the relaxations that would free it where they were found."""
    resolved = clash.resolved
    members = [
        {
            "rule": c.rule,
            "words": wish_words(c.wish, resolved) if c.wish else "",
            "sentence": sentence_of(c.rule, resolved),
            "remedy": RULES[c.rule].remedy,
            "closed_by": [*_excluders(resolved, c.wish), *_limits_passed(resolved, c.wish)],
            "why": _pair_misfits(resolved, c.wish),
        }
        for c in clash.conflicts
    ]
    document: dict[str, Any] = {"schema": SCHEMA, "conflicts": members}
    if relaxations is not None:
        document["arithmetic"] = [shortfall_words(s, resolved) for s in relaxations.shortfalls]
        document["concessions"] = [
            _relaxation_document(r, place, resolved) for place, r in enumerate(relaxations.ranked, 1)
        ]
    return document


def _relaxation_document(found: SolvedRelaxation, place: int, resolved: ResolvedBrief) -> dict[str, Any]:
    """One relaxation: what gives way, what it costs in index points, minutes and sets, and the brief it leaves."""
    relaxation = found.relaxation
    return {
        "rank": place,
        "kind": relaxation.kind,
        "words": relaxation_words(relaxation, resolved),
        "stimulus": rounded(found.audit.stimulus),
        "cost": rounded(found.cost),
        "minutes_a_week_more": relaxation.minutes,
        "sets_given_up": rounded(relaxation.sets),
        "brief": raw_of(relaxation.brief),
    }


def clash_text(clash: Clash, width: int = 100, relaxations: Relaxations | None = None) -> str:
    """The clash for a coach: the wishes first, then the rules, each with its remedy, then what would free it."""
    width = page_width(width)
    resolved = clash.resolved
    several = len(clash.conflicts) > 1
    these = "These cannot all be met, but without any one of them the others can:" if several else "This cannot be met:"
    lines = wrapped(f"No week can meet this brief. {these}", width)
    for wish in [c.wish for c in clash.conflicts if c.wish]:
        lines += wrapped(
            f"  - asked for: {wish_words(wish, resolved)} ({sentence_of(wish.rule, resolved)})", width, "    "
        )
        for rule in (*_excluders(resolved, wish), *_limits_passed(resolved, wish)):
            said = f"{sentence_of(rule, resolved)} Remedy: {RULES[rule].remedy}"
            lines += wrapped(f"    closed by {rule}: {said}", width, "      ")
        for reason in _pair_misfits(resolved, wish):
            lines += wrapped(f"    no pair: {reason}", width, "      ")
        lines += wrapped(f"    remedy: {RULES[wish.rule].remedy}", width, "    ")
    for rule in [c.rule for c in clash.conflicts if not c.wish]:
        lines += wrapped(f"  - rule {rule}: {sentence_of(rule, resolved)}", width, "    ")
        lines += wrapped(f"    remedy: {RULES[rule].remedy}", width, "    ")
    if relaxations is not None:
        lines += _relaxation_lines(relaxations, resolved, width)
    return "\n".join(lines) + "\n"


def _relaxation_lines(relaxations: Relaxations, resolved: ResolvedBrief, width: int) -> list[str]:
    """The sums that cannot come out, then the relaxations, least first."""
    lines: list[str] = []
    for shortfall in relaxations.shortfalls:
        lines += wrapped(f"By arithmetic: {shortfall_words(shortfall, resolved)}", width, "  ")
    if not relaxations.ranked:
        return [*lines, *wrapped("No small change of the brief was found that makes a week possible.", width)]
    lead = "Changes that would make a week possible, the least given up first; each was tried by planning a week:"
    lines += ["", *wrapped(lead, width)]
    for place, found in enumerate(relaxations.ranked, 1):
        lines += wrapped(f"  {place}. {relaxation_words(found.relaxation, resolved)}", width, "     ")
        lines += wrapped(f"     {_price_words(found)}", width, "     ")
    note = (
        "The week indices come from short searches and are good to about a point. In this order a minute more a week "
        "weighs 0.2 points."
    )
    return [*lines, *wrapped(note, width)]


def _price_words(found: SolvedRelaxation) -> str:
    """What a relaxation costs."""
    parts = [f"week index {found.audit.stimulus:.1f}"]
    below = round(found.cost, 1)
    parts.append(f"{below:.1f} below the best of these" if below else "the best of these")
    relaxation = found.relaxation
    if relaxation.minutes:
        parts.append(f"{relaxation.minutes} minutes a week more")
    if relaxation.sets:
        parts.append(f"{relaxation.sets:g} weekly sets given up")
    return "; ".join([", ".join(parts[:2]), *parts[2:]])


def _pair_misfits(resolved: ResolvedBrief, wish: Wish | None) -> list[str]:
    """Why a pinned pair is none, in words; empty for any other wish."""
    if wish is None or wish.rule != "pinned" or not wish.partner:
        return []
    exercises = resolved.catalogue.exercises
    return [misfit_words(why, resolved) for why in unfit(resolved, exercises[wish.subject], exercises[wish.partner])]


def _excluders(resolved: ResolvedBrief, wish: Wish | None) -> list[str]:
    """The rules that exclude every exercise a wish could be met with, most exercises first; empty if one is open."""
    closed = Counter[str]()
    for exercise in _exercises_for(resolved, wish):
        for day in resolved.days:
            by = resolved.excluded_by(exercise, day)
            if not by:
                return []
            closed.update(by)
    return [rule for rule, _ in closed.most_common()]


def _limits_passed(resolved: ResolvedBrief, wish: Wish | None) -> list[str]:
    """The rules of cautions that a pin itself breaks: more sets than they allow, or a pair where sets have a rest."""
    if wish is None or wish.rule != "pinned":
        return []
    limits = resolved.client_limits
    sets = ["caution-sets"] if limits.sets_most is not None and wish.amount > limits.sets_most else []
    return sets + (["caution-rest"] if wish.partner and limits.rest_least else [])


def _exercises_for(resolved: ResolvedBrief, wish: Wish | None) -> list[Exercise]:
    """The exercises that a wished movement or a pin could be met with; none for other wishes."""
    exercises = resolved.catalogue.exercises
    if wish is not None and wish.rule == "must":
        return [e for e in exercises.values() if e.movement == wish.subject]
    return [exercises[wish.subject]] if wish is not None and wish.rule == "pinned" else []
