"""How far a week is from the best one in its minutes and kit, in words and as a document."""

from __future__ import annotations

from typing import Any

from setwright.solver.auditing import Audit
from setwright.solver.planning import Unsolved
from setwright.solver.sheets.common.words import held, wrapped
from setwright.solver.sheets.document.json_values import rounded
from setwright.solver.sheets.screen.answers import unsolved_document, unsolved_words
from setwright.solver.sheets.screen.changes import (
    changed_document,
    difference_lines,
    effect_document,
    muscle_moves,
    signed,
    signed_clock,
)
from setwright.solver.uses.edits.effects import Effect
from setwright.solver.uses.time_budget.optimality_gap import Far

BEST = "setwright.best/1"


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
        "changes": changed_document(audited.evaluated, end.near.evaluated),
    }
