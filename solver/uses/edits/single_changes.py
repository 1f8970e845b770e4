"""The single changes that win back most of a week, one on top of the other, by exact reckoning."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

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

MOST_CROWDED = 12
"""Changes that a full day has no room for, for which room is sought: those that would score most."""
SHORTLIST = 60
"""Changes of the first look that are looked at again after each change made."""
A_BREACH = 10_000
"""Score units that a hard rule broken is taken for (convention: one point)."""
A_SECOND = 1_000
"""Score units that a second beyond a day's minutes is taken for (convention: six points a minute)."""
LEAST = 2_000
"""Score units below which a change is not worth a coach's ink (convention: a fifth of a point)."""


@dataclass(frozen=True)
class Change:
    """One change in words' parts, and what it does on top of those before it."""

    kind: str
    """out | in | exchange | done otherwise"""
    day: ResolvedDay
    old: str | None
    new: str | None
    room: Cut | None
    """What else is cut that day so that it fits."""
    effect: Effect


@dataclass(frozen=True)
class Idea:
    """A change that may be made: a day, the exercise it takes out, what stands there instead."""

    kind: str
    day: int
    old: str | None
    new: Exercise | None
    prescription: Prescription | None


@dataclass(frozen=True)
class Tried:
    """An idea carried out, with the cut that made room for it."""

    idea: Idea
    after: Audit
    room: Cut | None = None


def best_changes(found: Audit, most: int) -> tuple[Change, ...]:
    """Up to `most` changes, each the best at its turn by score, rules mended and minutes brought back within the day.

    No change breaks a rule more often than before, nor makes a day that is too long longer; one that a full day has
    no room for is taken with the cut of another line that makes it.
    """
    made: list[Change] = []
    now = found
    shortlist = list(dict.fromkeys(trial.idea for trial in ranked(now, ideas(now))[:SHORTLIST]))
    while len(made) < most:
        able = ranked(now, iter(shortlist))
        if not able or value(able[0].after) < value(now) + LEAST:
            break
        best, idea = able[0], able[0].idea
        day = now.evaluated.resolved.days[idea.day]
        made.append(Change(idea.kind, day, idea.old, new_of(idea), best.room, Effect(now, best.after)))
        now = best.after
    return tuple(made)


def new_of(idea: Idea) -> str | None:
    return idea.new.id if idea.new else None


def value(found: Audit) -> int:
    """What a week is worth to one who mends it: its score, less a price for each hard rule broken and second over."""
    return found.score_units - A_BREACH * hard_breaches(found) - A_SECOND * seconds_over(found)


def hard_breaches(found: Audit) -> int:
    """How often hard rules are broken; repetitions, RIR and order are data, mended with a pencil."""
    return sum(RULES[f.rule].kind == "hard" for f in found.broken)


def seconds_over(found: Audit) -> int:
    """The seconds by which days are beyond their minutes."""
    evaluated = found.evaluated
    return sum(max(0, evaluated.seconds(d.index) - d.limit) for d in evaluated.resolved.days if evaluated.on[d.index])


def ranked(now: Audit, tried: Iterator[Idea]) -> list[Tried]:
    """The ideas that can be carried out and break nothing more often, alone or with room made; the best first."""
    found: list[Tried] = []
    crowded: list[Tried] = []
    for idea in tried:
        week = carried_out(now, idea)
        if week is not None:
            done = effect(now, week)
            trial = Tried(idea, done.after)
            if not done.broken:
                found.append(trial)
            elif idea.new and {f.rule for f in done.broken} == {TIME}:
                crowded.append(trial)
    crowded.sort(key=lambda trial: -trial.after.score_units)
    found += [fit for trial in crowded[:MOST_CROWDED] if (fit := fitted(now, trial)) is not None]
    return sorted(found, key=lambda trial: -value(trial.after))


def fitted(now: Audit, trial: Tried) -> Tried | None:
    """An idea with the cut of another line of its day that makes room for it."""
    made = room_for(now, trial.after, trial.idea.day, new_of(trial.idea) or "")
    return None if made is None else Tried(trial.idea, made[1].after, made[0])


def carried_out(now: Audit, idea: Idea) -> Week | None:
    """The week after a change, or None where its line is gone or its exercise there already."""
    evaluated, day = now.evaluated, now.evaluated.resolved.days[idea.day]
    line = next((x for x in evaluated.on[idea.day] if x.exercise.id == idea.old), None)
    if idea.old is not None and line is None:
        return None
    if idea.new is None or idea.prescription is None:
        return without(evaluated, line) if line else None
    if idea.new.id != idea.old and any(x.exercise.id == idea.new.id for x in evaluated.on[idea.day]):
        return None
    partner = line.entry.partner if line and idea.prescription.paired else None
    entry = entry_as(evaluated.resolved, idea.new, day, idea.prescription, partner)
    return added(evaluated, idea.day, entry) if line is None else exchanged(evaluated, line, entry)


# ---- ideas


def ideas(now: Audit) -> Iterator[Idea]:
    """Every single change that is looked at: lines out, done otherwise, exchanged, and new lines."""
    evaluated = now.evaluated
    for day in evaluated.resolved.days:
        openings = list(first_choices(now, day))
        for line in evaluated.on[day.index]:
            yield Idea("out", day.index, line.exercise.id, None, None)
            yield from otherwise(now, line)
            for exercise in openings:
                yield from placed(now, line, exercise)
        for exercise in openings:
            prescription = shortest(prescriptions_of(evaluated.resolved, exercise, day))
            if prescription:
                yield Idea("in", day.index, None, exercise, prescription)


def first_choices(now: Audit, day: ResolvedDay) -> Iterator[Exercise]:
    """The best-ranked open exercise of each slot."""
    resolved = now.evaluated.resolved
    seen: set[str] = set()
    for exercise in sorted(resolved.open_on[day.index], key=lambda e: resolved.rank(e, day)):
        if exercise.slot.id not in seen and exercise.id not in resolved.brief.dislike:
            seen.add(exercise.slot.id)
            yield exercise


def otherwise(now: Audit, line: Line) -> Iterator[Idea]:
    """A line's exercise at a set more or less, or at another rest or technique; pairs are left as they are."""
    if line.entry.partner is not None or now.evaluated.resolved.excluded_by(line.exercise, line.day):
        return
    for prescription in prescriptions_of(now.evaluated.resolved, line.exercise, line.day):
        if not prescription.paired and abs(prescription.sets - line.sets) <= 1:
            yield Idea("done otherwise", line.day.index, line.exercise.id, line.exercise, prescription)


def placed(now: Audit, line: Line, exercise: Exercise) -> Iterator[Idea]:
    """Another exercise in a line's place, at sets as near as there are and at the shortest rest; in step in a pair."""
    if exercise.id == line.exercise.id:
        return
    prescriptions = prescriptions_of(now.evaluated.resolved, exercise, line.day)
    if line.entry.partner is not None:
        in_step = (line.sets, line.entry.rest, True)
        same = [o for o in prescriptions if (o.sets, o.rest, o.paired) == in_step]
        yield from (Idea("exchange", line.day.index, line.exercise.id, exercise, prescription) for prescription in same)
        return
    straight = [o for o in prescriptions if not o.paired]
    near = min((abs(o.sets - line.sets) for o in straight), default=0)
    prescription = shortest(tuple(o for o in straight if abs(o.sets - line.sets) == near))
    if prescription:
        yield Idea("exchange", line.day.index, line.exercise.id, exercise, prescription)


def shortest(prescriptions: tuple[Prescription, ...]) -> Prescription | None:
    """The straight option of fewest sets and least time."""
    straight = [o for o in prescriptions if not o.paired and o.technique == "straight"]
    return min(straight, key=lambda o: (o.sets, o.half_seconds, o.rest), default=None)
