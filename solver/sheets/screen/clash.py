"""A clash in words: which wishes and rules cannot stand together, and what frees them."""

from __future__ import annotations

from collections import Counter
from typing import TYPE_CHECKING, Any

from setwright.catalogue.entries import Exercise
from setwright.solver.brief.parsed_brief import raw_of
from setwright.solver.evaluation.finding import Wish
from setwright.solver.evaluation.pairs import unfit
from setwright.solver.evaluation.resolved_brief import ResolvedBrief
from setwright.solver.rulebook import RULES, sentence_of
from setwright.solver.sheets.common.findings import misfit_words, wish_words
from setwright.solver.sheets.common.words import held, wrapped
from setwright.solver.sheets.document.json_values import rounded

if TYPE_CHECKING:
    from setwright.solver.planning import Clash
    from setwright.solver.uses.relax.relaxations import Conceded, Concession

SCHEMA = "setwright.clash/1"


def clash_document(clash: Clash, conceded: Conceded | None = None) -> dict[str, Any]:
    """The clash as JSON, with its concessions where they were reckoned."""
    members = [
        {
            "rule": c.rule,
            "words": wish_words(c.wish, clash.resolved) if c.wish else "",
            "sentence": sentence_of(c.rule, clash.resolved),
            "remedy": RULES[c.rule].remedy,
            "closed_by": closers(clash.resolved, c.wish),
            "why": pair_misfits(clash.resolved, c.wish),
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
    resolved = clash.resolved
    several = len(clash.conflicts) > 1
    these = "These cannot all be met, and any one fewer of them could be:" if several else "This cannot be met:"
    lines = wrapped(f"No week can meet this brief. {these}", width)
    for wish in [c.wish for c in clash.conflicts if c.wish]:
        lines += wrapped(
            f"  - asked for: {wish_words(wish, resolved)} ({sentence_of(wish.rule, resolved)})", width, "    "
        )
        for rule in closers(resolved, wish):
            said = f"{sentence_of(rule, resolved)} Remedy: {RULES[rule].remedy}"
            lines += wrapped(f"    closed by {rule}: {said}", width, "      ")
        for reason in pair_misfits(resolved, wish):
            lines += wrapped(f"    no pair: {reason}", width, "      ")
        lines += wrapped(f"    remedy: {RULES[wish.rule].remedy}", width, "    ")
    for rule in [c.rule for c in clash.conflicts if not c.wish]:
        lines += wrapped(f"  - rule {rule}: {sentence_of(rule, resolved)}", width, "    ")
        lines += wrapped(f"    remedy: {RULES[rule].remedy}", width, "    ")
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


def pair_misfits(resolved: ResolvedBrief, wish: Wish | None) -> list[str]:
    """Why a pinned pair is none, in words; empty for any other wish."""
    if wish is None or wish.rule != "pinned" or not wish.partner:
        return []
    exercises = resolved.catalogue.exercises
    return [misfit_words(why, resolved) for why in unfit(resolved, exercises[wish.subject], exercises[wish.partner])]


def closers(resolved: ResolvedBrief, wish: Wish | None) -> list[str]:
    """The rules that exclude every exercise a wish could be met with, most exercises first; empty if one is open."""
    closed = Counter[str]()
    for exercise in exercises_for(resolved, wish):
        for day in resolved.days:
            by = resolved.excluded_by(exercise, day)
            if not by:
                return []
            closed.update(by)
    return [rule for rule, _ in closed.most_common()]


def exercises_for(resolved: ResolvedBrief, wish: Wish | None) -> list[Exercise]:
    """The exercises that a wished movement or a pin could be met with; none for other wishes."""
    exercises = resolved.catalogue.exercises
    if wish is not None and wish.rule == "must":
        return [e for e in exercises.values() if e.movement == wish.subject]
    return [exercises[wish.subject]] if wish is not None and wish.rule == "pinned" else []
