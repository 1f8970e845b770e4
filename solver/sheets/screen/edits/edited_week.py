"""A week after a coach's change: its document, and what the change did in sentences."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import replace
from typing import Any

from setwright.solver.brief.parsed_brief import ParsedBrief
from setwright.solver.evaluation.finding import Finding
from setwright.solver.rulebook import RULES
from setwright.solver.sheets.common.findings import finding_words
from setwright.solver.sheets.common.words import clock, day_name, whole_minutes
from setwright.solver.sheets.document.changed_week import changed_week_document
from setwright.solver.sheets.screen.edits.differences import costs_up, effect_document, muscle_moves, signed
from setwright.solver.uses.edits.card_swaps import MOST, CardSwaps, line_swaps, may_be_named, swaps_on_cards
from setwright.solver.uses.edits.effects import Effect
from setwright.solver.uses.edits.line_edits import against_wishes

SCHEMA = "setwright.edit/1"


def edited_week_document(document: Mapping[str, Any], parsed: ParsedBrief, done: Effect) -> dict[str, Any]:
    """The changed week; the swaps of other days than those that changed stand, where all of them are open still."""
    brief = done.after.evaluated.resolved.brief
    return changed_week_document(document, replace(parsed, brief=brief), done.after, swaps=_swaps(document, done))


def _swaps(document: Mapping[str, Any], done: Effect) -> CardSwaps:
    """The swaps of every line of the week after."""
    exercises = done.after.evaluated.resolved.catalogue.exercises
    old, new = done.before.evaluated.week.days, done.after.evaluated.week.days
    changed = [day for day in range(len(new)) if old[day] != new[day]]
    named = {
        (line.day.index, line.place): tuple(
            exercises[swap] for swap in document["days"][line.day.index]["entries"][line.place]["swaps"]
        )
        for line in done.after.evaluated.lines
        if line.day.index not in changed
    }
    closed = [
        line
        for line in done.after.evaluated.lines
        if any(not may_be_named(done.after, line, swap) for swap in named.get((line.day.index, line.place), ()))
    ]
    anew = {(line.day.index, line.place): line_swaps(done.after, line, MOST) for line in closed}
    return {**named, **anew, **swaps_on_cards(done.after, changed)}


def edit_document(said: str, done: Effect) -> dict[str, Any]:
    """What a change did as JSON: its words, every difference, the sentences that a coach reads, wishes it misses."""
    return {
        "schema": SCHEMA,
        "said": said,
        "sentences": list(edit_sentences(done)),
        "misses": [_missed_words(finding, done) for finding in against_wishes(done)],
        "does": effect_document(done),
    }


def edit_sentences(done: Effect) -> tuple[str, ...]:
    """Index, minutes of the days that changed, muscles and costs, each a sentence."""
    before, after = done.before, done.after
    if before.evaluated.week == after.evaluated.week:
        return ("The week is the same; the brief is not.",)
    index = f"Week index {before.stimulus:.1f} to {after.stimulus:.1f} ({signed(done.stimulus)})"
    costs = costs_up(done)
    gone = costs_up(Effect(after, before))
    moves = muscle_moves(done, 5)
    return (
        f"{index}, score {signed(done.score)}.",
        *_minutes(done),
        *([f"Index of {moves}."] if moves else []),
        *([f"Costs added: {costs}."] if costs else []),
        *([f"Costs gone: {gone}."] if gone else []),
    )


def _minutes(done: Effect) -> list[str]:
    """Monday: 38 of 40 minutes (2:10 more)."""
    old, new = done.before.evaluated, done.after.evaluated
    found = []
    for day in new.resolved.days:
        was, now = (week.seconds(day.index) if week.on[day.index] else 0 for week in (old, new))
        if was != now:
            more = f"{clock(abs(now - was))} {'more' if now > was else 'less'}"
            found.append(f"{day_name(day)}: {whole_minutes(now)} of {day.minutes} minutes ({more}).")
    return found


def _missed_words(finding: Finding, done: Effect) -> str:
    """A wish that is missed, with its remedy: curl is pinned but is not in the week (remedy ...)."""
    return f"{finding_words(finding, done.after.evaluated.resolved)}. {RULES[finding.rule].remedy}"
