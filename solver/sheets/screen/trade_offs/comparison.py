"""Weeks side by side, for a coach and as a document: tables, the trade-off in words, how stable the order is."""

from __future__ import annotations

from collections.abc import Sequence
from typing import TYPE_CHECKING, Any

from setwright.solver.planning import Clash, OutOfTime
from setwright.solver.sheets.common.caution import CAUTION
from setwright.solver.sheets.common.findings import member_words
from setwright.solver.sheets.common.json_values import rounded
from setwright.solver.sheets.common.time_breakdown import session_minutes
from setwright.solver.sheets.common.words import listed, page_width, wrapped
from setwright.solver.sheets.document.solved_week import week_document
from setwright.solver.sheets.screen.headline import headline
from setwright.solver.sheets.screen.muscle_table import WHAT_INDEX_IS
from setwright.solver.sheets.screen.score_words import ended_words
from setwright.solver.sheets.screen.trade_offs.break_even import break_even_documents, break_even_words
from setwright.solver.sheets.screen.trade_offs.comparison_tables import comparison_tables, week_seconds_by_kind
from setwright.solver.sheets.screen.trade_offs.rank_stability import ranking_document, ranking_words
from setwright.solver.sheets.screen.trade_offs.trade import trade_documents, trade_words
from setwright.solver.uses.compare.compared_brief import letter_of
from setwright.solver.uses.compare.comparison import only_in

if TYPE_CHECKING:
    from setwright.solver.planning import End
    from setwright.solver.uses.compare.comparison import Comparison

SCHEMA = "setwright.compare/1"
WHAT_COMPARES = (
    "What is given up is counted by each goal's own costs and bands, so compare goals by the week index and the "
    "muscles' indices. Proven gap: the most points by which a better week may have been missed."
)


def comparison_text(comparison: Comparison, width: int = 100) -> str:
    """The comparison for a coach: the briefs, the tables, the trade-off, how stable the order is, the caution."""
    width = page_width(width)
    parts = [
        *(wrapped(said, width, "  ") for said in _heads(comparison)),
        *comparison_tables(comparison, width),
        wrapped(f"{WHAT_INDEX_IS} {WHAT_COMPARES}", width),
        _paragraphs(trade_words(comparison), width),
        _paragraphs(break_even_words(comparison), width),
        _paragraphs(ranking_words(comparison), width),
        _paragraphs(_only_words(comparison), width),
        wrapped(f"Caution: {CAUTION}", width),
    ]
    return "\n\n".join("\n".join(part) for part in parts if part) + "\n"


def _paragraphs(sentences: Sequence[str], width: int) -> list[str]:
    return [line for said in sentences for line in wrapped(said, width, "  ")]


def _heads(comparison: Comparison) -> list[str]:
    """What is compared: each brief once, and each one without a week with why."""
    found = []
    several = len({brief.place for brief in comparison.briefs}) > 1
    for place in dict.fromkeys(brief.place for brief in comparison.briefs):
        end = next(e for b, e in zip(comparison.briefs, comparison.ends, strict=True) if b.place == place)
        letter = f"{letter_of(place)}: " if several else ""
        found.append(letter + headline(end.resolved, goal=False))
    for brief, end in zip(comparison.briefs, comparison.ends, strict=True):
        if why := _why_no_week(end):
            found.append(f"{brief.label}: {why}")
    return found


def _why_no_week(end: End) -> str:
    """Why a brief has no week; empty where it has one."""
    match end:
        case Clash():
            return f"no week can meet this brief ({listed(member_words(c, end.resolved) for c in end.conflicts)} clash)"
        case OutOfTime():
            return f"no week was found ({ended_words(end.ended_by)})"
        case _:
            return ""


def _only_words(comparison: Comparison) -> list[str]:
    """For each week the exercises that none of the others has."""
    if len(comparison.solved) < 2:
        return []
    said = []
    for i, exercises in only_in(comparison.solved):
        names = listed(comparison.ends[i].resolved.catalogue.exercises[e].name for e in exercises)
        said.append(f"Only in {comparison.briefs[i].label}: {names or 'none'}.")
    return said


# ---- the document


def comparison_document(comparison: Comparison) -> dict[str, Any]:
    """The comparison as JSON: each brief with its whole week, then how they stand to each other."""
    only = dict(only_in(comparison.solved))
    return {
        "schema": SCHEMA,
        "cases": [
            {
                "label": brief.label,
                "brief": brief.place,
                "goal": brief.goal,
                "no_week": _why_no_week(end) or None,
                "only_here": list(only.get(i, ())),
                **_week_part(comparison, i),
            }
            for i, (brief, end) in enumerate(zip(comparison.briefs, comparison.ends, strict=True))
        ],
        "trade": trade_documents(comparison),
        "pays": break_even_documents(comparison),
        "order": ranking_document(comparison),
    }


def _week_part(comparison: Comparison, place: int) -> dict[str, Any]:
    """One brief's facts and its week, where it has one."""
    end = dict(comparison.solved).get(place)
    if end is None:
        return {"week": None}
    evaluated = end.audit.evaluated
    used = session_minutes(evaluated)
    return {
        "minutes": sum(used),
        "session_minutes": used,
        "seconds_by_kind": week_seconds_by_kind(evaluated),
        "sets": sum(entry.sets for entry in evaluated.week.entries),
        "exercises": len({entry.exercise for entry in evaluated.week.entries}),
        "index_per_minute": rounded(end.stimulus / sum(used)) if sum(used) else None,
        "week": week_document(end),
    }
