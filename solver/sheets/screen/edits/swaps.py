"""Swaps in words and as documents: what may stand in each line's place, and what was refused."""

from __future__ import annotations

from typing import Any

from setwright.solver.auditing import Audit
from setwright.solver.sheets.common.grid import grid
from setwright.solver.sheets.common.json_values import rounded
from setwright.solver.sheets.common.words import clock, day_name, listed, note, page_width, technique_words, wrapped
from setwright.solver.sheets.document.card_labels import line_labels
from setwright.solver.sheets.screen.addresses import address
from setwright.solver.sheets.screen.edits.differences import cut_words, effect_document, signed, signed_clock
from setwright.solver.uses.edits.ranked_swaps import ENOUGH, RankedSwaps
from setwright.solver.uses.edits.swaps import Swap, rules_broken

SCHEMA = "setwright.swaps/1"
HOW = (
    "Each swap is timed and audited in its week, at sets as near to the line's own as the rules allow. "
    "Score and time: what the swap changes."
)
WHY_PINNED = "the pin of the line goes over to it, or it stands in for a better exercise that is taken out"


def swaps_text(audited: Audit, found: tuple[RankedSwaps, ...], width: int) -> str:
    """The swaps for a coach, day by day."""
    width = page_width(width)
    days = sorted({one.line.day.index for one in found})
    parts = [wrapped(HOW, width)]
    parts += [_day_lines(audited, [one for one in found if one.line.day.index == day], width) for day in days]
    return "\n\n".join("\n".join(part) for part in parts) + "\n"


def _day_lines(audited: Audit, found: list[RankedSwaps], width: int) -> list[str]:
    """One day's table, then what is to be said of single swaps, and of lines that have few."""
    day = found[0].line.day
    labels = line_labels(audited.evaluated, day.index)
    table, told = [], []
    for one in found:
        label, name = str(labels[one.line.place]), one.line.exercise.name
        for place, swap in enumerate(one.swaps):
            lead = [label, name] if place == 0 else ["", ""]
            table.append([*lead, *_cells(swap)])
        if not one.swaps:
            table.append([label, name, "none", "", "", "", "", ""])
        for said in _notes(one):
            told += wrapped(f"{label}  {said}", width, "   ")
    names = (width - 48) // 2
    widest = [None, names, names, None, None, None, None, 12]
    headings = ["", "Exercise", "Swap", "Sets", "Rest", "Score", "Time", "Note"]
    return [day_name(day), *grid(headings, table, "lllrrrrl", widest), *told]


def _cells(swap: Swap) -> list[str]:
    """The cells of a swap: exercise, sets, rest, score, time, note."""
    entry, effect = swap.entry, swap.effect
    plain = technique_words(entry) or note(entry, swap.exercise)
    said = "needs room" if swap.room else "pinned" if swap.named else plain
    return [
        swap.exercise.name,
        str(entry.sets),
        clock(entry.rest),
        signed(effect.score),
        signed_clock(effect.seconds),
        said,
    ]


def _notes(found: RankedSwaps) -> list[str]:
    """What is to be said of a line's swaps beside the table."""
    pinned = [swap.exercise.name for swap in found.swaps if swap.named]
    said = [f"{listed(pinned)} would be pinned: {WHY_PINNED}"] if pinned else []
    said += [
        f"{swap.exercise.name} fits only with {cut_words(swap.room)}; the numbers hold for both, and `--settle` finds "
        "the best way"
        for swap in found.swaps
        if swap.room is not None
    ]
    return [*said, _few_words(found)] if len(found.swaps) < ENOUGH else said


def _few_words(found: RankedSwaps) -> str:
    """Why a line has few swaps."""
    lead = "only one swap" if found.swaps else "no swap"
    if not found.refused:
        pair = " and fits its pair" if found.line.entry.partner else ""
        return f"{lead}: nothing else that is open does this work{pair} without loading the spine more"
    said = listed(f"{s.exercise.name} ({listed(rules_broken(s))})" for s in found.refused)
    return f"{lead}; these would break a rule: {said}"


# ---- as a document


def swaps_document(audited: Audit, found: tuple[RankedSwaps, ...]) -> dict[str, Any]:
    """The swaps as JSON; every difference is after less before."""
    return {
        "schema": SCHEMA,
        "score": rounded(audited.score),
        "entries": [
            {
                "entry": address(audited.evaluated, one.line),
                "exercise": one.line.exercise.id,
                "swaps": [swap_document(swap) for swap in one.swaps],
                "refused": [{"exercise": s.exercise.id, "breaks": list(rules_broken(s))} for s in one.refused],
            }
            for one in found
        ],
    }


def swap_document(swap: Swap) -> dict[str, Any]:
    entry = swap.entry
    return {
        "exercise": swap.exercise.id,
        "name": swap.exercise.name,
        "sets": entry.sets,
        "reps": list(entry.reps),
        "rir": entry.rir,
        "rest_seconds": entry.rest,
        "technique": entry.technique,
        "drops": entry.drops,
        "by_name": swap.named,
        "room": None if swap.room is None else {"cut": swap.room.line.exercise.id, "to_sets": swap.room.sets},
        "does": effect_document(swap.effect),
    }
