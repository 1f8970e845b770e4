"""What keeps a muscle below its band: one more set is tried wherever it could stand, and the audit says why not."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterator
from dataclasses import dataclass, replace
from typing import Literal

from setwright.catalogue.entries import Exercise
from setwright.solver.auditing import Audit
from setwright.solver.evaluation.evaluated_week import WHOLE, Line
from setwright.solver.evaluation.prescriptions import prescriptions_of
from setwright.solver.evaluation.resolved_day import MuscleTarget, ResolvedDay
from setwright.solver.evaluation.week import Entry
from setwright.solver.uses.edits.editing import added, entry_as, exchanged, with_day
from setwright.solver.uses.edits.effects import TIME, Effect, effect
from setwright.solver.uses.edits.make_room import Cut, room_for

Cause = Literal["kit", "time", "spacing", "cap", "cost", "minutes kept", "open"]
"""kit: no exercise for it is open; time, spacing, cap: what forbids the nearest further set; cost: one is allowed but
costs more than it gives; minutes kept: one is allowed and pays, but efficiency saves its minutes; open: one pays."""
SPACING = frozenset({"hard-days", "exercise-days"})
"""Rules that ask for days between."""


@dataclass(frozen=True)
class Increase:
    """One way to give a muscle more: a line with a set more, or a new line, and what that does to the week."""

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
class Bottleneck:
    """A muscle below its band and what keeps it there."""

    muscle: MuscleTarget
    sets: float
    """Its weekly fractional sets."""
    cause: Cause
    open_direct: int
    """Exercises open on some day that train it directly."""
    excluded_by: tuple[tuple[str, int], ...]
    """Rules that exclude its direct exercises on every day, with how many each; told where none is open."""
    nearest: Increase | None
    """The nearest way to give it a set more."""
    room: tuple[Cut, Effect] | None
    """Where time is the cause: the cut of another line that makes room at the least cost, and what both do."""


def bottlenecks_of(audited: Audit) -> tuple[Bottleneck, ...]:
    """What keeps each sought muscle that is below its band there, in the catalogue's order."""
    return tuple(bottleneck_of(audited, muscle) for muscle in audited.evaluated.below_band)


def bottleneck_of(audited: Audit, muscle: MuscleTarget) -> Bottleneck:
    """What keeps one muscle from more sets, found by trying one more wherever it could stand."""
    resolved, sets = audited.evaluated.resolved, audited.evaluated.weekly_sets(muscle.id) / WHOLE
    able = {e.id for day in resolved.days for e in resolved.open_on[day.index] if muscle.id in e.direct}
    if not able:
        return Bottleneck(muscle, sets, "kit", 0, _excluders(audited, muscle.id), None, None)
    nearest = min(increases(audited, muscle.id), key=_nearness, default=None)
    if nearest is None:
        return Bottleneck(muscle, sets, "cap", len(able), (), None, None)
    cause, room = _cause_of(audited, nearest), None
    if cause == "time":
        room = room_for(audited, nearest.effect.after, nearest.day.index, nearest.entry.exercise)
    return Bottleneck(muscle, sets, cause, len(able), (), nearest, room)


def _cause_of(audited: Audit, nearest: Increase) -> Cause:
    """What stands against the nearest increase."""
    if TIME in nearest.rules:
        return "time"
    if SPACING.intersection(nearest.rules):
        return "spacing"
    if nearest.rules:
        return "cap"
    if nearest.effect.score <= 0:
        return "cost"
    return "minutes kept" if audited.evaluated.resolved.goal == "efficiency" else "open"


def _nearness(increase: Increase) -> tuple[object, ...]:
    """What breaks nothing first, then minutes alone by how many, then spacing alone, then other rules; best score."""
    rules = set(increase.rules)
    kind = 0 if not rules else 1 if rules == {TIME} else 2 if rules <= SPACING else 3
    return (
        kind,
        len(rules),
        increase.over if kind == 1 else 0,
        -increase.effect.after.score_units,
        increase.day.index,
        increase.entry.exercise,
    )


def _excluders(audited: Audit, muscle: str) -> tuple[tuple[str, int], ...]:
    """The rules that exclude a muscle's direct exercises, by how many each excludes first."""
    resolved = audited.evaluated.resolved
    found: Counter[str] = Counter()
    for exercise in resolved.catalogue.exercises.values():
        if muscle in exercise.direct:
            found[resolved.excluded_by(exercise, resolved.days[0])[0]] += 1
    return tuple(sorted(found.items(), key=lambda pair: (-pair[1], pair[0])))


# ---- ways to give a muscle more


def increases(audited: Audit, muscle: str) -> Iterator[Increase]:
    """Every line of the muscle's with a set more, and every open exercise for it as a new line of fewest sets."""
    evaluated = audited.evaluated
    for day in evaluated.resolved.days:
        for line in evaluated.on[day.index]:
            if muscle in line.exercise.direct:
                yield _a_set_more(audited, line)
        for exercise in _first_choices(audited, muscle, day):
            yield from new_line(audited, exercise, day)


def _a_set_more(audited: Audit, line: Line) -> Increase:
    """A line with a set more, and its partner too: a pair goes on in step."""
    entry = replace(line.entry, sets=line.sets + 1)
    week = exchanged(audited.evaluated, line, entry)
    if line.entry.partner is not None:
        entries = [replace(e, sets=entry.sets) if e.exercise == entry.partner else e for e in week.days[line.day.index]]
        week = with_day(audited.evaluated, line.day.index, entries)
    return Increase(line.day, entry, False, effect(audited, week))


def new_line(audited: Audit, exercise: Exercise, day: ResolvedDay) -> Iterator[Increase]:
    """A new line of fewest sets at the shortest rest; none where the exercise has no straight sets."""
    resolved = audited.evaluated.resolved
    straight = [o for o in prescriptions_of(resolved, exercise, day) if not o.paired and o.technique == "straight"]
    if straight:
        prescription = min(straight, key=lambda o: (o.sets, o.half_seconds, o.rest))
        entry = entry_as(resolved, exercise, day, prescription)
        yield Increase(day, entry, True, effect(audited, added(audited.evaluated, day.index, entry)))


def _first_choices(audited: Audit, muscle: str, day: ResolvedDay) -> list[Exercise]:
    """The best-ranked exercise of each slot that trains a muscle directly and is not in the day yet."""
    resolved = audited.evaluated.resolved
    here = {line.exercise.id for line in audited.evaluated.on[day.index]}
    able = [e for e in resolved.open_on[day.index] if muscle in e.direct and e.id not in here]
    best: dict[str, Exercise] = {}
    for exercise in sorted(able, key=lambda e: resolved.rank(e, day)):
        best.setdefault(exercise.slot.id, exercise)
    return list(best.values())
