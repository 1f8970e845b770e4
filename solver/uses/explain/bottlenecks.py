"""What holds a muscle below its band: one more set is tried wherever it could stand, and the audit says why not."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterator
from dataclasses import dataclass, replace
from typing import Literal

from setwright.catalogue.entries import Exercise
from setwright.solver.auditing import Audit
from setwright.solver.evaluation.evaluated_week import WHOLE, Line
from setwright.solver.evaluation.prescriptions import prescriptions_of
from setwright.solver.evaluation.resolved_brief import MuscleTarget, ResolvedDay
from setwright.solver.evaluation.week import Entry
from setwright.solver.uses.edits.editing import added, entry_as, exchanged, with_day
from setwright.solver.uses.edits.effects import TIME, Effect, effect
from setwright.solver.uses.edits.make_room import Cut, room_for

Hold = Literal["kit", "time", "spacing", "cap", "cost", "minutes kept", "open"]
"""kit: nothing open trains it directly; time, spacing, cap: what forbids the nearest further set; cost: one fits but
costs more than it gives; minutes kept: one fits and pays, but efficiency gives it up for minutes; open: one pays."""
SPACING = frozenset({"hard-days", "exercise-days"})


@dataclass(frozen=True)
class Trial:
    """One way to give a muscle more: a line with a set more, or a new line, and what that does."""

    day: ResolvedDay
    entry: Entry
    new: bool
    effect: Effect

    @property
    def rules(self) -> tuple[str, ...]:
        """The rules it would break, sorted, each once."""
        return tuple(sorted({f.rule for f in self.effect.broken}))

    @property
    def over(self) -> int:
        """Seconds by which its day is over its minutes."""
        return max(0, self.effect.after.evaluated.seconds(self.day.index) - self.day.limit)


@dataclass(frozen=True)
class Held:
    """A muscle below its band and what holds it there."""

    muscle: MuscleTarget
    name: str
    sets: float
    hold: Hold
    open_direct: int
    """Exercises open on some day that train it directly."""
    closed: tuple[tuple[str, int], ...]
    """Rules that close direct exercises on every day, with how many; said where none is open."""
    trial: Trial | None
    """The nearest way to give it a set more."""
    room: tuple[Cut, Effect] | None
    """Where time holds it: the cut of another line that makes room at the least cost, and what both do."""


def held_below(audited: Audit) -> tuple[Held, ...]:
    """What holds each sought muscle that is below its band, in the catalogue's order."""
    evaluated = audited.evaluated
    low = [
        m
        for m in evaluated.resolved.muscles.values()
        if m.weight and evaluated.weekly_sets(m.id) < round(m.low * WHOLE)
    ]
    return tuple(held(audited, m) for m in low)


def held(audited: Audit, muscle: MuscleTarget) -> Held:
    """What holds one muscle, found by trying."""
    resolved, sets = audited.evaluated.resolved, audited.evaluated.weekly_sets(muscle.id) / WHOLE
    name = resolved.catalogue.muscles[muscle.id].name.lower()
    able = {e.id for day in resolved.days for e in resolved.open_on[day.index] if muscle.id in e.direct}
    if not able:
        return Held(muscle, name, sets, "kit", 0, closed(audited, muscle.id), None, None)
    nearest = min(trials(audited, muscle.id), key=nearness, default=None)
    if nearest is None:
        return Held(muscle, name, sets, "cap", len(able), (), None, None)
    hold = hold_of(audited, nearest)
    room = None
    if hold == "time":
        room = room_for(audited, nearest.effect.after, nearest.day.index, nearest.entry.exercise)
    return Held(muscle, name, sets, hold, len(able), (), nearest, room)


def hold_of(audited: Audit, trial: Trial) -> Hold:
    """The kind of hold that the nearest trial meets."""
    if TIME in trial.rules:
        return "time"
    if SPACING.intersection(trial.rules):
        return "spacing"
    if trial.rules:
        return "cap"
    if trial.effect.score <= 0:
        return "cost"
    return "minutes kept" if audited.evaluated.resolved.goal == "efficiency" else "open"


def nearness(trial: Trial) -> tuple[object, ...]:
    """What breaks nothing first, then minutes alone by how many, then spacing alone, then other rules; best score."""
    rules = set(trial.rules)
    kind = 0 if not rules else 1 if rules == {TIME} else 2 if rules <= SPACING else 3
    return (
        kind,
        len(rules),
        trial.over if kind == 1 else 0,
        -trial.effect.after.score_units,
        trial.day.index,
        trial.entry.exercise,
    )


def closed(audited: Audit, muscle: str) -> tuple[tuple[str, int], ...]:
    """The rules that close a muscle's direct exercises, by how many each closes first."""
    resolved = audited.evaluated.resolved
    found: Counter[str] = Counter()
    for exercise in resolved.catalogue.exercises.values():
        if muscle in exercise.direct:
            found[resolved.excluded_by(exercise, resolved.days[0])[0]] += 1
    return tuple(sorted(found.items(), key=lambda pair: (-pair[1], pair[0])))


# ---- trials


def trials(audited: Audit, muscle: str) -> Iterator[Trial]:
    """Every line of the muscle's with a set more, and every open exercise for it as a new line of fewest sets."""
    evaluated = audited.evaluated
    for day in evaluated.resolved.days:
        for line in evaluated.on[day.index]:
            if muscle in line.exercise.direct:
                yield from longer(audited, line)
        for exercise in firsts(audited, muscle, day):
            yield from newly(audited, exercise, day)


def longer(audited: Audit, line: Line) -> Iterator[Trial]:
    """A line with a set more, and its partner too; a pair goes on in step."""
    entry = replace(line.entry, sets=line.sets + 1)
    week = exchanged(audited.evaluated, line, entry)
    if line.entry.partner is not None:
        entries = [replace(e, sets=entry.sets) if e.exercise == entry.partner else e for e in week.days[line.day.index]]
        week = with_day(audited.evaluated, line.day.index, entries)
    yield Trial(line.day, entry, False, effect(audited, week))


def newly(audited: Audit, exercise: Exercise, day: ResolvedDay) -> Iterator[Trial]:
    """A new line of fewest sets at the shortest rest."""
    resolved = audited.evaluated.resolved
    straight = [o for o in prescriptions_of(resolved, exercise, day) if not o.paired and o.technique == "straight"]
    if straight:
        prescription = min(straight, key=lambda o: (o.sets, o.half_seconds, o.rest))
        entry = entry_as(resolved, exercise, day, prescription)
        yield Trial(day, entry, True, effect(audited, added(audited.evaluated, day.index, entry)))


def firsts(audited: Audit, muscle: str, day: ResolvedDay) -> list[Exercise]:
    """The best-ranked exercise of each slot that trains a muscle directly and is not in the day yet."""
    resolved = audited.evaluated.resolved
    here = {line.exercise.id for line in audited.evaluated.on[day.index]}
    able = [e for e in resolved.open_on[day.index] if muscle in e.direct and e.id not in here]
    best: dict[str, Exercise] = {}
    for exercise in sorted(able, key=lambda e: resolved.rank(e, day)):
        best.setdefault(exercise.slot.id, exercise)
    return list(best.values())
