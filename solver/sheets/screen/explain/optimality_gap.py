"""How far a week is from the best one in its minutes and kit, in words and as a document."""

from __future__ import annotations

from typing import Any

from setwright.solver.auditing import Audit
from setwright.solver.planning import Unsolved
from setwright.solver.sheets.common.json_values import rounded
from setwright.solver.sheets.common.words import counted, page_width, wrapped
from setwright.solver.sheets.screen.edits.differences import (
    changed_document,
    difference_lines,
    effect_document,
    muscle_moves,
    signed,
    signed_clock,
)
from setwright.solver.sheets.screen.explain.answers import UNPROVEN, unsolved_document, unsolved_words
from setwright.solver.uses.edits.effects import Effect
from setwright.solver.uses.time_budget.optimality_gap import OptimalityGap

BEST = "setwright.best/1"


def optimality_gap_text(audited: Audit, end: OptimalityGap | Unsolved, width: int) -> str:
    """How far from the best week in the same minutes and kit, and the nearest week that wins most of it back."""
    width = page_width(width)
    if isinstance(end, Unsolved):
        return "\n".join(wrapped(f"The best week in the same minutes and kit: {unsolved_words(end)}", width)) + "\n"
    best, near = Effect(audited, end.best), Effect(audited, end.near)
    lines = wrapped(f"The best week found in the same minutes and kit ({_proven(end)}):", width)
    lines += _summary_lines(best, width)
    if audited.score_units >= end.best.score_units:
        lines += wrapped("  The week is as good as the best one found.", width, "  ")
        return "\n".join(lines) + "\n"
    lead = (
        f"The nearest week found that keeps at least {100 * (1 - end.share):g} % of that best week's index changes "
        f"{counted(end.sets_changed, 'set')} and covers {end.regained * 100:.0f} % of the way to its score:"
    )
    lines += ["", *wrapped(lead, width), *difference_lines(near, width)]
    return "\n".join(lines) + "\n"


def share_words(audited: Audit, end: OptimalityGap | Unsolved) -> str:
    """What share of the index of the best week found a week reaches; nothing where none was found."""
    if isinstance(end, Unsolved) or end.best.stimulus <= 0:
        return ""
    share = 100 * audited.stimulus / end.best.stimulus
    return (
        f"Its week index of {audited.stimulus:.1f} is {share:.0f} % of the {end.best.stimulus:.1f} of the best "
        "week found in the same days, minutes and kit."
    )


def _summary_lines(effect: Effect, width: int) -> list[str]:
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


def _proven(end: OptimalityGap) -> str:
    if end.unproven > UNPROVEN:
        return "it is not proven how much better a week could be"
    return f"no week can score {end.unproven:.2f} points more"


def optimality_gap_document(audited: Audit, end: OptimalityGap | Unsolved) -> dict[str, Any]:
    """The same as JSON; every difference is after less before."""
    if isinstance(end, Unsolved):
        return unsolved_document(BEST, end)
    best, near = Effect(audited, end.best), Effect(audited, end.near)
    return {
        "schema": BEST,
        "solved": True,
        "best": effect_document(best),
        "best_score": rounded(end.best.score),
        "gap": rounded(end.unproven),
        "share": end.share,
        "sets_changed": end.sets_changed,
        "won": rounded(end.regained),
        "near": effect_document(near),
        "near_score": rounded(end.near.score),
        "changes": changed_document(audited.evaluated, end.near.evaluated),
    }
