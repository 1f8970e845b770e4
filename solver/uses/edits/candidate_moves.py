"""Every single change of a week that is looked at: lines out, in, exchanged or done otherwise."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from typing import Literal

from setwright.catalogue.entries import Exercise
from setwright.solver.auditing import Audit
from setwright.solver.evaluation.evaluated_week import Line
from setwright.solver.evaluation.prescriptions import Prescription, prescriptions_of
from setwright.solver.evaluation.resolved_day import ResolvedDay
from setwright.solver.evaluation.week import Week
from setwright.solver.uses.edits.editing import added, entry_as, exchanged, without

Kind = Literal["out", "in", "exchange", "done otherwise"]
"""A line out, a new line, a line exchanged for another exercise, or its exercise at other sets, rests or technique."""


@dataclass(frozen=True)
class Move:
    """A change that may be made: a day, the exercise it takes out (id), what stands there instead and how."""

    kind: Kind
    day: int
    old: str | None
    new: Exercise | None
    prescription: Prescription | None


def week_after(now: Audit, move: Move) -> Week | None:
    """The week after a change, or None where its line is gone or its exercise there already."""
    evaluated, day = now.evaluated, now.evaluated.resolved.days[move.day]
    line = next((x for x in evaluated.on[move.day] if x.exercise.id == move.old), None)
    if move.old is not None and line is None:
        return None
    if move.new is None or move.prescription is None:
        return without(evaluated, line) if line else None
    if move.new.id != move.old and any(x.exercise.id == move.new.id for x in evaluated.on[move.day]):
        return None
    partner = line.entry.partner if line and move.prescription.paired else None
    entry = entry_as(evaluated.resolved, move.new, day, move.prescription, partner)
    return added(evaluated, move.day, entry) if line is None else exchanged(evaluated, line, entry)


# ---- moves


def moves(now: Audit) -> Iterator[Move]:
    """Every single change that is looked at: lines out, done otherwise, exchanged, and new lines."""
    evaluated = now.evaluated
    for day in evaluated.resolved.days:
        openings = list(_first_choices(now, day))
        for line in evaluated.on[day.index]:
            yield Move("out", day.index, line.exercise.id, None, None)
            yield from _otherwise(now, line)
            for exercise in openings:
                yield from _exchanged_for(now, line, exercise)
        for exercise in openings:
            prescription = _shortest(prescriptions_of(evaluated.resolved, exercise, day))
            if prescription:
                yield Move("in", day.index, None, exercise, prescription)


def _first_choices(now: Audit, day: ResolvedDay) -> Iterator[Exercise]:
    """The best-ranked open exercise of each slot."""
    resolved = now.evaluated.resolved
    seen: set[str] = set()
    for exercise in sorted(resolved.open_on[day.index], key=lambda e: resolved.rank(e, day)):
        if exercise.slot.id not in seen and exercise.id not in resolved.brief.dislike:
            seen.add(exercise.slot.id)
            yield exercise


def _otherwise(now: Audit, line: Line) -> Iterator[Move]:
    """A line's exercise at a set more or less, or at another rest or technique; pairs are left as they are."""
    if line.entry.partner is not None or now.evaluated.resolved.excluded_by(line.exercise, line.day):
        return
    for prescription in prescriptions_of(now.evaluated.resolved, line.exercise, line.day):
        if not prescription.paired and abs(prescription.sets - line.sets) <= 1:
            yield Move("done otherwise", line.day.index, line.exercise.id, line.exercise, prescription)


def _exchanged_for(now: Audit, line: Line, exercise: Exercise) -> Iterator[Move]:
    """Another exercise in a line's place, at sets as near as there are and at the shortest rest; in step in a pair."""
    if exercise.id == line.exercise.id:
        return
    prescriptions = prescriptions_of(now.evaluated.resolved, exercise, line.day)
    if line.entry.partner is not None:
        in_step = (line.sets, line.entry.rest, True)
        same = [o for o in prescriptions if (o.sets, o.rest, o.paired) == in_step]
        yield from (Move("exchange", line.day.index, line.exercise.id, exercise, prescription) for prescription in same)
        return
    straight = [o for o in prescriptions if not o.paired]
    nearest = min((abs(o.sets - line.sets) for o in straight), default=0)
    prescription = _shortest(tuple(o for o in straight if abs(o.sets - line.sets) == nearest))
    if prescription:
        yield Move("exchange", line.day.index, line.exercise.id, exercise, prescription)


def _shortest(prescriptions: tuple[Prescription, ...]) -> Prescription | None:
    """The straight prescription of fewest sets and least time; None where there is none."""
    straight = [o for o in prescriptions if not o.paired and o.technique == "straight"]
    return min(straight, key=lambda o: (o.sets, o.half_seconds, o.rest), default=None)
