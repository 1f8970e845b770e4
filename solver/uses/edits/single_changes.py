"""The single changes that improve a week most, one on top of the other, each audited."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from typing import Literal

from setwright.catalogue.entries import Exercise
from setwright.solver.auditing import Audit
from setwright.solver.evaluation.evaluated_week import Line
from setwright.solver.evaluation.prescriptions import Prescription, prescriptions_of
from setwright.solver.evaluation.resolved_brief import ResolvedDay
from setwright.solver.evaluation.week import Week
from setwright.solver.rulebook import RULES
from setwright.solver.uses.edits.editing import added, entry_as, exchanged, without
from setwright.solver.uses.edits.effects import TIME, Effect, effect
from setwright.solver.uses.edits.make_room import Cut, room_for

Kind = Literal["out", "in", "exchange", "done otherwise"]
"""A line out, a new line, a line exchanged for another exercise, or its exercise at other sets, rests or technique."""
MOST_CROWDED = 12
"""Changes that a full day has no room for, for which room is sought: those that would score most."""
SHORTLIST = 60
"""Changes of the first look that are looked at again after each change made."""
A_BREACH = 10_000
"""Score units that a hard rule broken is taken for (convention: one point)."""
A_SECOND = 1_000
"""Score units that a second beyond a day's minutes is taken for (convention: six points a minute)."""
LEAST = 2_000
"""Score units below which a change is not worth a coach's while (convention: a fifth of a point)."""


@dataclass(frozen=True)
class SingleChange:
    """One change of a day, and what it does on top of those before it; exercises by id."""

    kind: Kind
    day: ResolvedDay
    old: str | None
    new: str | None
    room: Cut | None
    """What else is cut that day so that it fits."""
    effect: Effect


@dataclass(frozen=True)
class Move:
    """A change that may be made: a day, the exercise it takes out (id), what stands there instead and how."""

    kind: Kind
    day: int
    old: str | None
    new: Exercise | None
    prescription: Prescription | None


@dataclass(frozen=True)
class TriedMove:
    """A move carried out, with the cut that made room for it."""

    move: Move
    after: Audit
    room: Cut | None = None


def best_changes(found: Audit, most: int) -> tuple[SingleChange, ...]:
    """Up to `most` changes, each the best at its turn by score, rules no longer broken and minutes no longer too many.

    No change breaks a rule more often than before, nor makes a day that is too long longer; one that a full day has
    no room for is taken with the cut of another line that makes it.
    """
    made: list[SingleChange] = []
    now = found
    shortlist = list(dict.fromkeys(trial.move for trial in _ranked(now, moves(now))[:SHORTLIST]))
    while len(made) < most:
        able = _ranked(now, iter(shortlist))
        if not able or value(able[0].after) < value(now) + LEAST:
            break
        best, move = able[0], able[0].move
        day = now.evaluated.resolved.days[move.day]
        made.append(SingleChange(move.kind, day, move.old, _new_of(move), best.room, Effect(now, best.after)))
        now = best.after
    return tuple(made)


def _new_of(move: Move) -> str | None:
    return move.new.id if move.new else None


def value(found: Audit) -> int:
    """A week's score less a price for each hard rule broken and each second beyond a day's minutes, in score units."""
    return found.score_units - A_BREACH * _hard_breaches(found) - A_SECOND * seconds_over(found)


def _hard_breaches(found: Audit) -> int:
    """How often hard rules are broken; repetitions, RIR and order are data, put right with a pencil."""
    return sum(RULES[f.rule].kind == "hard" for f in found.broken)


def seconds_over(found: Audit) -> int:
    """The seconds by which days are beyond their minutes."""
    evaluated = found.evaluated
    return sum(max(0, evaluated.seconds(d.index) - d.limit) for d in evaluated.resolved.days if evaluated.on[d.index])


def _ranked(now: Audit, tried: Iterator[Move]) -> list[TriedMove]:
    """The moves that can be carried out and break nothing more often, alone or with room made; the best first."""
    found: list[TriedMove] = []
    crowded: list[TriedMove] = []
    for move in tried:
        week = week_after(now, move)
        if week is not None:
            done = effect(now, week)
            trial = TriedMove(move, done.after)
            if not done.broken:
                found.append(trial)
            elif move.new and {f.rule for f in done.broken} == {TIME}:
                crowded.append(trial)
    crowded.sort(key=lambda trial: -trial.after.score_units)
    found += [fit for trial in crowded[:MOST_CROWDED] if (fit := _fitted(now, trial)) is not None]
    return sorted(found, key=lambda trial: -value(trial.after))


def _fitted(now: Audit, trial: TriedMove) -> TriedMove | None:
    """A move with the cut of another line of its day that makes room for it."""
    made = room_for(now, trial.after, trial.move.day, _new_of(trial.move) or "")
    return None if made is None else TriedMove(trial.move, made[1].after, made[0])


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
