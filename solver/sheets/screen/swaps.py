"""Swaps in words and as documents: what may stand in each line's place, and one swap carried out."""

from __future__ import annotations

from dataclasses import dataclass
from itertools import islice
from typing import Any

from setwright.catalogue.entries import Exercise
from setwright.catalogue.faults import Fault, SetwrightError, UsageFault
from setwright.solver.auditing import Audit
from setwright.solver.evaluation.evaluated_week import Line
from setwright.solver.rulebook import RULES, sentence_of
from setwright.solver.sheets.common.addresses import address
from setwright.solver.sheets.common.findings import finding_words
from setwright.solver.sheets.common.grid import grid
from setwright.solver.sheets.common.words import clock, day_name, held, listed, note, wrapped
from setwright.solver.sheets.document.json_values import rounded
from setwright.solver.sheets.screen.changes import cut_words, difference_lines, effect_document, signed, signed_clock
from setwright.solver.sheets.screen.week_table import day_lines, labels
from setwright.solver.uses.edits.effects import Effect
from setwright.solver.uses.edits.pinning import with_pin
from setwright.solver.uses.edits.substitutes import candidates
from setwright.solver.uses.edits.swaps import Swap, refused, rules_broken, swap_to, swaps

SCHEMA = "setwright.swaps/1"
ENOUGH = 2
MOST_OF_ONE = 5
MOST_REFUSED = 3
HOW = (
    "Each swap is timed and audited in its week, at sets as near to the line's as keep every rule. "
    "Score and time are what the swap changes."
)

BY_NAME = "the line's pin goes over, or it stands in for the better one that is out"


@dataclass(frozen=True)
class Slot:
    """A line with its swaps, and what was refused where there are few."""

    line: Line
    swaps: tuple[Swap, ...]
    refused: tuple[Swap, ...]


def slots_of(audited: Audit, lines: tuple[Line, ...]) -> tuple[Slot, ...]:
    """Each line's swaps: two of each in a whole week, more where one line is asked about."""
    most = ENOUGH if len(lines) > 1 else MOST_OF_ONE
    return tuple(slot_of(audited, line, most) for line in lines)


def slot_of(audited: Audit, line: Line, most: int) -> Slot:
    """A line's swaps; where they are few, what was refused and why."""
    able = swaps(audited, line, most)
    if len(able) >= ENOUGH:
        return Slot(line, able, ())
    names = {swap.exercise.id for swap in able}
    others = [e for kind in candidates(audited.evaluated, line) for e in kind if e.id not in names]
    return Slot(line, able, tuple(islice(refused(audited, line, others), MOST_REFUSED)))


def swaps_text(audited: Audit, slots: tuple[Slot, ...], width: int) -> str:
    """The swaps for a coach, day by day."""
    width = held(width)
    days = sorted({slot.line.day.index for slot in slots})
    parts = [wrapped(HOW, width)]
    parts += [slot_lines(audited, [s for s in slots if s.line.day.index == day], width) for day in days]
    return "\n\n".join("\n".join(part) for part in parts) + "\n"


def slot_lines(audited: Audit, slots: list[Slot], width: int) -> list[str]:
    """One day's table, then the lines that have few swaps and why."""
    day = slots[0].line.day
    marks = labels(audited.evaluated, day.index)
    table, told = [], []
    for slot in slots:
        mark, name = marks[slot.line.place], slot.line.exercise.name
        for place, swap in enumerate(slot.swaps):
            lead = [mark, name] if place == 0 else ["", ""]
            table.append([*lead, *swap_cells(swap)])
        if not slot.swaps:
            table.append([mark, name, "none", "", "", "", "", ""])
        by_name = [swap.exercise.name for swap in slot.swaps if swap.named]
        if by_name:
            told += wrapped(f"{mark}  {listed(by_name)} would be pinned: {BY_NAME}", width, "   ")
        for swap in slot.swaps:
            if swap.room is not None:
                told += wrapped(f"{mark}  {room_words(swap)}", width, "   ")
        if len(slot.swaps) < ENOUGH:
            told += wrapped(f"{mark}  {few_words(slot)}", width, "   ")
    names = (width - 48) // 2
    widest = [None, names, names, None, None, None, None, 12]
    headings = ["", "Exercise", "Swap", "Sets", "Rest", "Score", "Time", "Note"]
    return [day_name(day), *grid(headings, table, "lllrrrrl", widest), *told]


def swap_cells(swap: Swap) -> list[str]:
    entry, effect = swap.entry, swap.effect
    more = (
        "needs room"
        if swap.room
        else "by name"
        if swap.named
        else note(entry, swap.exercise).removeprefix("last set: ")
    )
    return [
        swap.exercise.name,
        str(entry.sets),
        clock(entry.rest),
        signed(effect.score),
        signed_clock(effect.seconds),
        more,
    ]


def room_words(swap: Swap) -> str:
    """What is cut so that a swap fits."""
    cut = cut_words(swap.room) if swap.room else ""
    return f"{swap.exercise.name} fits only with {cut}; both are reckoned, and `--settle` finds the best way"


def few_words(slot: Slot) -> str:
    """Why a line has few swaps."""
    lead = "no swap" if not slot.swaps else "one swap only"
    if not slot.refused:
        pair = " and fits its pair" if slot.line.entry.partner else ""
        return f"{lead}: nothing else that is open does this work{pair}, without loading the spine more"
    said = listed(f"{s.exercise.name} ({listed(rules_broken(s))})" for s in slot.refused)
    return f"{lead}; these would break a rule: {said}"


def swaps_document(audited: Audit, slots: tuple[Slot, ...]) -> dict[str, Any]:
    """The swaps as JSON."""
    return {
        "schema": SCHEMA,
        "score": rounded(audited.score),
        "entries": [
            {
                "entry": address(audited.evaluated, slot.line),
                "exercise": slot.line.exercise.id,
                "swaps": [swap_document(swap) for swap in slot.swaps],
                "refused": [{"exercise": s.exercise.id, "breaks": list(rules_broken(s))} for s in slot.refused],
            }
            for slot in slots
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


# ---- one swap carried out


def swap_asked(audited: Audit, line: Line, exercise: Exercise, settle: bool) -> Swap:
    """The swap asked for; raises with every rule that it would break, unless it is to be settled afterwards."""
    evaluated = audited.evaluated
    where = address(evaluated, line)
    if exercise.id in {other.exercise.id for other in evaluated.on[line.day.index]}:
        raise UsageFault(Fault(where, f"{exercise.name} stands on that day already", "name another exercise"))
    closing = with_pin(evaluated.resolved, exercise, line.day.weekday).excluded_by(exercise, line.day)
    if closing:
        said = f"{exercise.name} is not open that day: "
        raise UsageFault(
            [Fault(where, said + sentence_of(rule, evaluated.resolved), RULES[rule].remedy) for rule in closing]
        )
    swap = swap_to(audited, line, exercise)
    if swap is None:
        partner = evaluated.resolved.catalogue.exercises[line.entry.partner or line.exercise.id].name
        said = f"{exercise.name} cannot be done in turn with {partner} in the same rounds"
        raise UsageFault(Fault(where, said, "swap its partner first, or name another"))
    if swap.effect.broken and not settle:
        resolved = swap.effect.after.evaluated.resolved
        faults = [
            Fault(where, f"breaks {f.rule}: {finding_words(f, resolved)}", RULES[f.rule].remedy)
            for f in swap.effect.broken
        ]
        raise SetwrightError([*faults, Fault("", "--settle solves the sets around it anew")])
    return swap


def swapped_text(before: Audit, after: Audit, day: int, width: int) -> str:
    """The swapped day as it is now, and what the swap changed."""
    width = held(width)
    parts = [day_lines(after.evaluated, day, width), ["What changes:", *difference_lines(Effect(before, after), width)]]
    parts.append(wrapped("`-o new.json` writes the new week.", width))
    return "\n\n".join("\n".join(part) for part in parts) + "\n"
