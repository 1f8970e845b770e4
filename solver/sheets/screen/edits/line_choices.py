"""What a coach may do with one line of a week, as a document: swaps with what each changes, sets, days, pins."""

from __future__ import annotations

from typing import Any

from setwright.solver.auditing import Audit
from setwright.solver.evaluation.evaluated_week import Line
from setwright.solver.evaluation.prescriptions import set_span
from setwright.solver.evaluation.resolved_day import ResolvedDay
from setwright.solver.rulebook import sentence_of
from setwright.solver.sheets.common.words import clock, day_name, listed, some_sets
from setwright.solver.sheets.screen.addresses import address
from setwright.solver.sheets.screen.edits.coach_edits import WITH_MORE
from setwright.solver.sheets.screen.edits.differences import cut_words, muscle_moves, signed
from setwright.solver.sheets.screen.edits.swaps import swap_document
from setwright.solver.uses.edits.ranked_swaps import ranked_swaps_of
from setwright.solver.uses.edits.swaps import Swap, rules_broken

SCHEMA = "setwright.line/1"


def line_key(line: Line) -> str:
    """A line's address by its exercise, which stays when other lines come and go: mon:cable-curl."""
    return f"{_day_word(line.day)}:{line.exercise.id}"


def line_document(audited: Audit, line: Line) -> dict[str, Any]:
    """One line with all that may be done with it; every difference is after less before."""
    evaluated = audited.evaluated
    resolved = evaluated.resolved
    found = ranked_swaps_of(audited, (line,))[0]
    partner = resolved.catalogue.exercises.get(line.entry.partner or "")
    return {
        "schema": SCHEMA,
        "entry": line_key(line),
        "address": address(evaluated, line),
        "exercise": line.exercise.id,
        "name": line.exercise.name,
        "day": day_name(line.day),
        "weekday": line.day.weekday,
        "sets": line.sets,
        "span": list(set_span(resolved, line.exercise)),
        "partner": partner.name if partner else "",
        "pinned": line.exercise.id in resolved.pinned,
        "swaps": [{**swap_document(swap), "words": _swap_words(swap)} for swap in found.swaps],
        "refused": [
            {
                "exercise": swap.exercise.id,
                "name": swap.exercise.name,
                "breaks": list(rules_broken(swap)),
                "words": listed(sentence_of(rule, resolved) for rule in rules_broken(swap)),
            }
            for swap in found.refused
        ],
        "days": [_day_choice(audited, line, day) for day in resolved.days if day.index != line.day.index],
        "with_more": WITH_MORE,
    }


def _day_choice(audited: Audit, line: Line, day: ResolvedDay) -> dict[str, Any]:
    """A day to which the line may go, or why it may not."""
    resolved = audited.evaluated.resolved
    there = any(other.exercise.id == line.exercise.id for other in audited.evaluated.on[day.index])
    closed = resolved.excluded_by(line.exercise, day)
    said = "stands there already" if there else listed(sentence_of(rule, resolved) for rule in closed)
    return {"day": _day_word(day), "name": day_name(day), "able": not said, "words": said}


def _swap_words(swap: Swap) -> str:
    """3 sets, rest 1:30; index +0.4, 0:30 less; quads 62 to 45; with Cable crunch cut to 2 sets."""
    done = swap.effect
    sets = some_sets(swap.entry.sets)
    time = f"{clock(abs(done.seconds))} {'more' if done.seconds > 0 else 'less'}" if done.seconds else "the same time"
    moves = muscle_moves(done)
    parts = [
        f"{sets}, rest {clock(swap.entry.rest)}",
        f"index {signed(done.stimulus)}, score {signed(done.score)}, {time}",
        *([moves] if moves else []),
        *([f"with {cut_words(swap.room)}"] if swap.room else []),
        *(["it would be pinned"] if swap.named else []),
    ]
    return "; ".join(parts)


def _day_word(day: ResolvedDay) -> str:
    return day.weekday or str(day.index + 1)
