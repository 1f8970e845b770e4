"""How far a week is from the best one, and what to change first: in words and as documents."""

from __future__ import annotations

from typing import Any

from setwright.solver.reckoning.audit import Audit
from setwright.solver.reckoning.view import View
from setwright.solver.sheets.answers import difference_lines, unsolved_document, unsolved_words
from setwright.solver.sheets.changes import (
    changed_document,
    cut_words,
    effect_document,
    muscle_moves,
    signed,
    signed_clock,
)
from setwright.solver.sheets.document import rounded
from setwright.solver.sheets.words import clock, day_name, held, note, sets_by_reps, wrapped
from setwright.solver.uses.changes import Change
from setwright.solver.uses.effects import Effect
from setwright.solver.uses.far import Far
from setwright.solver.uses.resolving import Unsolved

BEST = "setwright.best/1"


# ---- single changes


def changes_text(audited: Audit, changes: tuple[Change, ...], width: int) -> str:
    """The changes one on top of the other, with what each wins and where the week stands after them."""
    width = held(width)
    if not changes:
        return "No single change wins a fifth of a point without breaking a rule.\n"
    lines = wrapped(
        "The single changes that win back most, each on top of those before it, by exact reckoning of every "
        "line out, in, exchanged or done otherwise:",
        width,
    )
    for number, change in enumerate(changes, 1):
        lines += wrapped(f"{number}. {change_words(change)}: {won_words(change.effect)}.", width, "   ")
    last = changes[-1].effect.after
    whole = Effect(audited, last)
    lines += wrapped(
        f"After them: score {last.score:.1f} ({signed(whole.score)}), week index {last.stimulus:.1f} "
        f"({signed(whole.stimulus)}), time {signed_clock(whole.seconds)}, rules broken {len(last.broken)} "
        f"instead of {len(audited.broken)}.",
        width,
    )
    return "\n".join(lines) + "\n"


def change_words(change: Change) -> str:
    """Monday: Barbell row 2 x 8-12, 2 RIR, rest 1:30 instead of Leg press, with Plank cut to 2 sets."""
    room = f", with {cut_words(change.room)}" if change.room else ""
    return f"{plain_words(change)}{room}"


def plain_words(change: Change) -> str:
    """A change without the room made for it."""
    after = change.effect.after.view
    catalogue = after.terms.catalogue
    day = day_name(change.day)
    if change.kind == "out" and change.old:
        return f"{day}: {catalogue.exercises[change.old].name} out"
    new = how_words(after, change.day.index, change.new or "")
    if change.kind == "exchange" and change.old:
        return f"{day}: {new} instead of {catalogue.exercises[change.old].name}"
    return f"{day}: {new} new" if change.kind == "in" else f"{day}: {new}"


def how_words(view: View, day: int, exercise: str) -> str:
    """A line of a day as it is done."""
    line = next(line for line in view.on[day] if line.exercise.id == exercise)
    more = note(line.entry, line.exercise)
    said = f"{line.exercise.name} {sets_by_reps(line.entry, line.exercise)}, {line.entry.rir} RIR, rest "
    return f"{said}{clock(line.entry.rest)}{', ' + more if more else ''}"


def won_words(effect: Effect) -> str:
    """Score, time, muscles and rules mended."""
    parts = [f"score {signed(effect.score)}", f"time {signed_clock(effect.seconds)}"]
    if moves := muscle_moves(effect):
        parts.append(moves)
    new = {(f.rule, f.text) for f in effect.after.broken}
    mended = [f.rule for f in effect.before.broken if (f.rule, f.text) not in new]
    if mended:
        parts.append(f"mends {', '.join(dict.fromkeys(mended))}")
    return "; ".join(parts)


def changes_document(changes: tuple[Change, ...]) -> list[dict[str, Any]]:
    return [
        {
            "kind": change.kind,
            "day": change.day.name,
            "old": change.old,
            "new": change.new,
            "room": None if change.room is None else {"cut": change.room.line.exercise.id, "to_sets": change.room.sets},
            "sentence": change_words(change),
            "does": effect_document(change.effect),
        }
        for change in changes
    ]


# ---- the best week


def far_text(audited: Audit, end: Far | Unsolved, width: int) -> str:
    """How far from the best week in the same minutes and kit, and the nearest week that wins most of it back."""
    width = held(width)
    if isinstance(end, Unsolved):
        return "\n".join(wrapped(f"The best week in the same minutes and kit: {unsolved_words(end)}", width)) + "\n"
    best, near = Effect(audited, end.best), Effect(audited, end.near)
    lines = wrapped(f"The best week found in the same minutes and kit ({proven(end)}):", width)
    lines += difference_summary(best, width)
    if audited.score_units >= end.best.score_units:
        lines += wrapped("  The week is as good as the best one found.", width, "  ")
        return "\n".join(lines) + "\n"
    share = f"{100 * end.share:g} %"
    lead = f"Within {share} of that best week's index by the fewest sets changed found, {end.moved} of them"
    lines += ["", *wrapped(f"{lead} ({end.won * 100:.0f} % of the way there):", width), *difference_lines(near, width)]
    return "\n".join(lines) + "\n"


def difference_summary(effect: Effect, width: int) -> list[str]:
    """The first lines of a difference, without what changes line by line."""
    said = (
        f"  score {effect.before.score:.1f} to {effect.after.score:.1f} ({signed(effect.score)}), week index "
        f"{effect.before.stimulus:.1f} to {effect.after.stimulus:.1f} ({signed(effect.stimulus)}), "
        f"time {signed_clock(effect.seconds)}"
    )
    lines = wrapped(said, width, "  ")
    if moves := muscle_moves(effect, 6):
        lines += wrapped(f"  index of {moves}", width, "  ")
    return lines


def proven(end: Far) -> str:
    return f"no week can score {end.gap:.2f} points more" if end.gap < 1000 else "nothing is proven of better ones"


def far_document(audited: Audit, end: Far | Unsolved) -> dict[str, Any]:
    if isinstance(end, Unsolved):
        return unsolved_document(BEST, end)
    best, near = Effect(audited, end.best), Effect(audited, end.near)
    return {
        "schema": BEST,
        "solved": True,
        "best": effect_document(best),
        "best_score": rounded(end.best.score),
        "gap": rounded(end.gap),
        "share": end.share,
        "sets_changed": end.moved,
        "won": rounded(end.won),
        "near": effect_document(near),
        "near_score": rounded(end.near.score),
        "changes": changed_document(audited.view, end.near.view),
    }
