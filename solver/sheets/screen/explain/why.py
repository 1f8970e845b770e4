"""Why each line of a week stands, in words and as a document, with what keeps the muscles below their bands."""

from __future__ import annotations

from typing import Any

from setwright.solver.auditing import Audit
from setwright.solver.sheets.common.grid import grid
from setwright.solver.sheets.common.json_values import rounded
from setwright.solver.sheets.common.purpose import line_purpose
from setwright.solver.sheets.common.words import clock, day_name, muscle_name, page_width, wrapped
from setwright.solver.sheets.document.card_labels import line_labels
from setwright.solver.sheets.screen.addresses import address
from setwright.solver.sheets.screen.edits.differences import (
    broken_words,
    costs_up,
    effect_document,
    muscle_moves,
    signed,
)
from setwright.solver.sheets.screen.explain.bottlenecks import bottleneck_document, bottleneck_lines
from setwright.solver.uses.explain.bottlenecks import Bottleneck
from setwright.solver.uses.explain.reasons import Reason

SCHEMA = "setwright.why/1"
HOW = (
    "Each line is taken out, the rest is left as it is, and the week is audited again, so the numbers are exact. "
    "Index: how the week index changes. Costs: what is added to the costs. Score: both together. Frees: the time."
)
RECKONED = "exactly: the line taken out, the rest left as it is"


def why_text(
    audited: Audit, reasons: tuple[Reason, ...], bottlenecks: tuple[Bottleneck, ...] | None, width: int
) -> str:
    """The reasons for a coach, day by day; `bottlenecks` None leaves the muscles out."""
    width = page_width(width)
    days = sorted({r.line.day.index for r in reasons})
    parts = [wrapped(HOW, width)]
    parts += [_day_lines(audited, [r for r in reasons if r.line.day.index == day], width) for day in days]
    if bottlenecks is not None:
        parts.append(bottleneck_lines(bottlenecks, audited.evaluated.resolved, width))
    return "\n\n".join("\n".join(part) for part in parts if part) + "\n"


def _day_lines(audited: Audit, reasons: list[Reason], width: int) -> list[str]:
    """One day's table, then what each line's loss would mean in words."""
    evaluated = audited.evaluated
    catalogue = evaluated.resolved.catalogue
    day = reasons[0].line.day
    labels = line_labels(evaluated, day.index)
    table, told = [], []
    for r in reasons:
        label, e = str(labels[r.line.place]), r.effect
        numbers = [signed(e.stimulus), signed(e.stimulus - e.score), signed(e.score), clock(max(0, -e.seconds))]
        table.append([label, r.line.exercise.name, muscle_name(catalogue, r.muscle), *numbers])
        told += wrapped(f"{label}  {_sentence(r)}", width, "   ")
    widest = [None, max(16, width - 58), None, None, None, None, None]
    headings = ["", "Exercise", "Serves most", "Index", "Costs", "Score", "Frees"]
    return [day_name(day), *grid(headings, table, "lllrrrr", widest), *told]


def _sentence(reason: Reason) -> str:
    """What is lost and what costs more without a line, or that the week is better without it."""
    effect = reason.effect
    moves = muscle_moves(effect)
    parts = [f"index without it: {moves}" if moves else "without it no index changes by half a point"]
    if reason.line.entry.partner is not None:
        parts.append("its partner is done alone")
    if costs := costs_up(effect):
        parts.append(f"costs added: {costs}")
    if effect.broken:
        parts.append(f"it would break {broken_words(effect)}")
    elif effect.score > 0:
        parts.append("the week scores more without it")
    return "; ".join(parts)


def why_document(
    audited: Audit, reasons: tuple[Reason, ...], bottlenecks: tuple[Bottleneck, ...] | None
) -> dict[str, Any]:
    """The reasons as JSON; every difference is after less before."""
    evaluated = audited.evaluated
    below = None if bottlenecks is None else [bottleneck_document(b, evaluated.resolved) for b in bottlenecks]
    return {
        "schema": SCHEMA,
        "reckoned": RECKONED,
        "score": rounded(audited.score),
        "stimulus": rounded(audited.stimulus),
        "reasons": [
            {
                "entry": address(evaluated, r.line),
                "exercise": r.line.exercise.id,
                "muscle": r.muscle,
                "serves": line_purpose(evaluated, r.line),
                "sentence": _sentence(r),
                "without": effect_document(r.effect),
            }
            for r in reasons
        ],
        "below": below,
    }
