"""The single changes that improve a week most, in words and as a document."""

from __future__ import annotations

from typing import Any

from setwright.solver.auditing import Audit
from setwright.solver.evaluation.evaluated_week import EvaluatedWeek
from setwright.solver.rulebook import RULES
from setwright.solver.sheets.common.words import clock, day_name, dose, listed, note, page_width, wrapped
from setwright.solver.sheets.screen.edits.differences import (
    cut_words,
    effect_document,
    muscle_moves,
    signed,
    signed_clock,
)
from setwright.solver.uses.edits.effects import Effect
from setwright.solver.uses.edits.single_changes import SingleChange


def changes_text(audited: Audit, changes: tuple[SingleChange, ...], width: int) -> str:
    """The changes one on top of the other, with what each wins and where the week stands after them."""
    width = page_width(width)
    if not changes:
        return "No single change that a coach would stand by gains a fifth of a point without breaking a rule.\n"
    lines = wrapped(
        "The single changes that gain most, each on top of those before it. Tried and audited were: each line taken "
        "out, exchanged or done otherwise, and each new line.",
        width,
    )
    for number, change in enumerate(changes, 1):
        lines += wrapped(f"{number}. {_change_words(change)}: {_gain_words(change.effect)}.", width, "   ")
    last = changes[-1].effect.after
    whole = Effect(audited, last)
    lines += wrapped(
        f"After them: score {last.score:.1f} ({signed(whole.score)}), week index {last.stimulus:.1f} "
        f"({signed(whole.stimulus)}), time {signed_clock(whole.seconds)}, broken {len(last.violations)} "
        f"instead of {len(audited.violations)}.",
        width,
    )
    return "\n".join(lines) + "\n"


def _change_words(change: SingleChange) -> str:
    """Monday: Barbell row 2 x 8-12, 2 RIR, rest 1:30 instead of Leg press, with Plank cut to 2 sets."""
    room = f", with {cut_words(change.room)}" if change.room else ""
    return f"{_plain_words(change)}{room}"


def _plain_words(change: SingleChange) -> str:
    """A change without the room made for it."""
    after = change.effect.after.evaluated
    catalogue = after.resolved.catalogue
    day = day_name(change.day)
    if change.kind == "out" and change.old:
        return f"{day}: {catalogue.exercises[change.old].name} out"
    new = _how_words(after, change.day.index, change.new or "")
    if change.kind == "exchange" and change.old:
        return f"{day}: {new} instead of {catalogue.exercises[change.old].name}"
    return f"{day}: {new} new" if change.kind == "in" else f"{day}: {new}"


def _how_words(evaluated: EvaluatedWeek, day: int, exercise: str) -> str:
    """A line of a day as it is done."""
    line = next(line for line in evaluated.on[day] if line.exercise.id == exercise)
    more = note(line.entry, line.exercise)
    said = f"{line.exercise.name} {dose(line.entry.sets, line.entry.reps, line.exercise)}, {line.entry.rir} RIR, rest "
    return f"{said}{clock(line.entry.rest)}{', ' + more if more else ''}"


def _gain_words(effect: Effect) -> str:
    """Score, time, muscles and the rules no longer broken."""
    parts = [f"score {signed(effect.score)}", f"time {signed_clock(effect.seconds)}"]
    if moves := muscle_moves(effect):
        parts.append(moves)
    mended = [rule for rule in effect.no_longer_broken if RULES[rule].scope == "any week"]
    if mended:
        parts.append(f"no longer breaks {listed(mended)}")
    return "; ".join(parts)


def changes_document(changes: tuple[SingleChange, ...]) -> list[dict[str, Any]]:
    """The same as JSON; every difference is after less before."""
    return [
        {
            "kind": change.kind,
            "day": change.day.name,
            "old": change.old,
            "new": change.new,
            "room": None if change.room is None else {"cut": change.room.line.exercise.id, "to_sets": change.room.sets},
            "sentence": _change_words(change),
            "does": effect_document(change.effect),
        }
        for change in changes
    ]
