"""A change that a coach asks for on one line of a week: made, or refused with every reason, and said in words."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from dataclasses import dataclass
from types import MappingProxyType
from typing import Final

from setwright.catalogue.faults import Fault, SetwrightError, UsageFault
from setwright.solver.auditing import Audit
from setwright.solver.brief.defaults import MOST_SETS
from setwright.solver.brief.lifts.named import exercise_named
from setwright.solver.brief.schema import Brief
from setwright.solver.evaluation.evaluated_week import Line
from setwright.solver.sheets.common.words import day_name, some_sets
from setwright.solver.sheets.screen.addresses import address, day_at
from setwright.solver.sheets.screen.edits.asked_swap import breaking_faults, possible_swap, refuse_closed
from setwright.solver.sheets.screen.edits.differences import cut_words
from setwright.solver.uses.edits.effects import Effect
from setwright.solver.uses.edits.leaving_out import left_out
from setwright.solver.uses.edits.line_edits import (
    against_rules,
    closed,
    moved,
    pinned,
    taken_out,
    unpinned,
    with_pin_of,
    with_sets,
    without_pins_of,
)
from setwright.solver.uses.edits.swaps import with_cut

WITH_MORE: Final = "+"
"""Ends the day of a move that the line's partner makes too, and a swap for which another line is cut."""


@dataclass(frozen=True)
class CoachEdit:
    """One change: what it does, what is said of it, and the lines that stay when sets are solved anew around it."""

    line: Line
    effect: Effect
    said: str
    """Without a full stop: Cable curl in the place of Curl-bar curl on Monday."""
    kept: tuple[tuple[int, str], ...] = ()
    """(day, exercise id)."""
    sets: int | None = None
    """The sets at which the first of these stays, where the change is about them."""


def edit_asked(audited: Audit, line: Line, act: str, value: str) -> CoachEdit:
    """The change of a line that an act and its value name, whatever rules it breaks; raises UsageFault.

    swap EXERCISE (with a + another line is cut for it), sets NUMBER, move DAY (with a + its partner goes too), pin (on
    its weekday where the value is `day`), unpin, out, close.
    """
    if act not in ACTS:
        raise UsageFault(Fault("act", f"got {act!r}, expected one of {', '.join(ACTS)}"))
    return ACTS[act](audited, line, value)


def refuse_breaking(edit: CoachEdit) -> None:
    """Raise SetwrightError with every rule that a change newly breaks, wishes of the brief left aside."""
    broken = against_rules(edit.effect)
    if broken:
        where = address(edit.effect.before.evaluated, edit.line)
        raise SetwrightError(breaking_faults(edit.effect, broken, where))


def brief_edits(edit: CoachEdit, act: str) -> Callable[[Brief], Brief] | None:
    """What an act changes in the brief that later weeks are planned by; None where it is about this week alone."""
    exercise = edit.line.exercise.id
    match act:
        case "close":
            return lambda brief: left_out(brief, exercise)
        case "unpin":
            return lambda brief: without_pins_of(brief, exercise)
        case "pin":
            pins = edit.effect.after.evaluated.resolved.brief.pins
            weekday = next(pin.day for pin in reversed(pins) if pin.exercise == exercise)
            return lambda brief: with_pin_of(brief, exercise, weekday)
        case _:
            return None


# ---- the acts


def _swap(audited: Audit, line: Line, value: str) -> CoachEdit:
    exercise = exercise_named(value.removesuffix(WITH_MORE), audited.evaluated.resolved.catalogue)
    swap = possible_swap(audited, line, exercise)
    if value.endswith(WITH_MORE):
        swap = with_cut(line, swap) or swap
    room = f", {cut_words(swap.room)}" if swap.room else ""
    said = f"{swap.exercise.name} in the place of {line.exercise.name} on {day_name(line.day)}{room}"
    return CoachEdit(line, swap.effect, said, ((line.day.index, swap.exercise.id),))


def _sets(audited: Audit, line: Line, value: str) -> CoachEdit:
    sets = int(value) if value.isascii() and value.isdigit() else 0
    if not 1 <= sets <= MOST_SETS:
        said = f"got {value!r}, expected a whole number from 1 to {MOST_SETS}"
        raise UsageFault(Fault("sets", said, "to do without the line take it out"))
    said = f"{line.exercise.name} at {some_sets(sets)} instead of {line.sets} on {day_name(line.day)}"
    return CoachEdit(line, with_sets(audited, line, sets), said, ((line.day.index, line.exercise.id),), sets)


def _out(audited: Audit, line: Line, value: str) -> CoachEdit:
    return CoachEdit(line, taken_out(audited, line), f"{line.exercise.name} taken out on {day_name(line.day)}")


def _close(audited: Audit, line: Line, value: str) -> CoachEdit:
    said = f"{line.exercise.name} taken out of the week and closed in the brief"
    return CoachEdit(line, closed(audited, line), said)


def _move(audited: Audit, line: Line, value: str) -> CoachEdit:
    resolved, where = audited.evaluated.resolved, address(audited.evaluated, line)
    partner = resolved.catalogue.exercises.get(line.entry.partner or "") if value.endswith(WITH_MORE) else None
    day = day_at(resolved, value.removesuffix(WITH_MORE), "day")
    going = (line.exercise, *([partner] if partner else []))
    there = {other.exercise.id for other in audited.evaluated.on[day.index]}
    for exercise in going:
        if exercise.id in there:
            raise UsageFault(Fault(where, f"{exercise.name} stands on {day_name(day)} already", "choose another day"))
        refuse_closed(resolved, exercise, day, where)
    names = " and ".join(exercise.name for exercise in going)
    said = f"{names} moved from {day_name(line.day)} to {day_name(day)}"
    kept = tuple((day.index, exercise.id) for exercise in going)
    return CoachEdit(line, moved(audited, line, day, partner is not None), said, kept)


def _pin(audited: Audit, line: Line, value: str) -> CoachEdit:
    weekday = line.day.weekday if value == "day" else None
    said = f"{line.exercise.name} pinned" + (f" on {day_name(line.day)}" if weekday else "")
    return CoachEdit(line, pinned(audited, line, weekday), said)


def _unpin(audited: Audit, line: Line, value: str) -> CoachEdit:
    return CoachEdit(line, unpinned(audited, line), f"{line.exercise.name} pinned no longer")


ACTS: Final[Mapping[str, Callable[[Audit, Line, str], CoachEdit]]] = MappingProxyType(
    {"swap": _swap, "sets": _sets, "move": _move, "pin": _pin, "unpin": _unpin, "out": _out, "close": _close}
)
