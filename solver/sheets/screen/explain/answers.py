"""What every answer that is solved anew says: both weeks' difference, how much better is not ruled out, or no week."""

from __future__ import annotations

from typing import Any

from setwright.solver.evaluation.finding import ClashMember
from setwright.solver.evaluation.resolved_brief import ResolvedBrief
from setwright.solver.planning import Unsolved
from setwright.solver.sheets.common.findings import member_words, wish_words
from setwright.solver.sheets.common.json_values import rounded
from setwright.solver.sheets.common.words import listed
from setwright.solver.sheets.screen.edits.differences import changed_document, effect_document
from setwright.solver.sheets.screen.score_words import ended_words
from setwright.solver.uses.explain.what_if import Answer

ROUNDING = 0.005
"""Index points below which a difference is 0 as printed."""
UNPROVEN = 1000
"""Index points: a gap as wide as this says nothing."""


def answer_document(answer: Answer) -> dict[str, Any]:
    """An answer as JSON: both weeks' difference, the lines that changed, and what is proven."""
    effect = answer.effect
    return {
        "does": effect_document(effect),
        "score": [rounded(effect.before.score), rounded(effect.after.score)],
        "changes": changed_document(effect.before.evaluated, effect.after.evaluated),
        "gap": rounded(answer.gap),
        "ended_by": answer.ended_by,
    }


def unsolved_document(schema: str, end: Unsolved) -> dict[str, Any]:
    """The JSON in place of an answer where no week was found; `schema` is that of the answer."""
    conflicts = [_member_document(c, end.resolved) for c in end.conflicts]
    return {"schema": schema, "solved": False, "conflicts": conflicts, "ended_by": end.ended_by}


def _member_document(member: ClashMember, resolved: ResolvedBrief) -> dict[str, Any]:
    """A member of a clash: its rule, and the wish in words where it is one."""
    return {"rule": member.rule, "words": wish_words(member.wish, resolved) if member.wish else ""}


def unsolved_words(end: Unsolved) -> str:
    """Why no week was found."""
    if not end.conflicts:
        return f"no week was found ({ended_words(end.ended_by)})."
    clash = listed(member_words(c, end.resolved) for c in end.conflicts)
    return f"no week is possible; these cannot all be met: {clash}."


def proven_words(answer: Answer) -> str:
    """How much better an answer is not ruled out."""
    if answer.gap < ROUNDING:
        return "It is proven that the model allows none better."
    if answer.gap > UNPROVEN:
        return "It is not proven how much better it could be."
    return f"A score up to {answer.gap:.2f} points better is not ruled out."
