"""A week without a single set: what of the brief leaves no room for one."""

from __future__ import annotations

from collections.abc import Iterator

from setwright.solver.evaluation.evaluated_week import EvaluatedWeek
from setwright.solver.evaluation.finding import ClashMember
from setwright.solver.evaluation.prescriptions import Prescription, prescriptions_of, reps_of, rir_of
from setwright.solver.evaluation.resolved_brief import ResolvedBrief
from setwright.solver.evaluation.week import Entry, Week


def what_leaves_no_room(resolved: ResolvedBrief) -> tuple[ClashMember, ...]:
    """The rules by which no day holds one exercise of a wanted muscle: its minutes, or what closes them; else none."""
    lone = list(_lone_weeks(resolved))
    if not lone:
        closing = {
            rule
            for day in resolved.days
            for exercise in resolved.catalogue.exercises.values()
            for rule in resolved.excluded_by(exercise, day)
        }
        return tuple(ClashMember(rule) for rule in resolved.catalogue.rules if rule in closing and rule != "stand-in")
    if any(_fits(resolved, week, day) for week, day in lone):
        return ()
    return (ClashMember("day-minutes"),)


def _lone_weeks(resolved: ResolvedBrief) -> Iterator[tuple[Week, int]]:
    """For each day and open exercise of a wanted muscle the week of that exercise alone, at its shortest."""
    for day in resolved.days:
        for exercise in resolved.open_on[day.index]:
            if not any(resolved.muscles[muscle].weight for muscle, _ in exercise.contributions):
                continue
            alone = [o for o in prescriptions_of(resolved, exercise, day) if not o.paired and o.technique == "straight"]
            if not alone:
                continue
            shortest: Prescription = min(alone, key=lambda o: o.half_seconds)
            reps, rir = reps_of(resolved, exercise, day), rir_of(resolved, exercise)
            entry = Entry(exercise.id, shortest.sets, reps, rir, shortest.rest)
            yield Week(tuple((entry,) if d.index == day.index else () for d in resolved.days)), day.index


def _fits(resolved: ResolvedBrief, week: Week, day: int) -> bool:
    """Whether the session of a day is within its minutes."""
    return EvaluatedWeek(resolved, week).seconds(day) <= resolved.days[day].limit
