"""A week with one line taken out, put in or exchanged, each changed day in the order it is done."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import replace

from setwright.catalogue.entries import Exercise
from setwright.solver.evaluation.evaluated_week import EvaluatedWeek, Line
from setwright.solver.evaluation.order import in_order
from setwright.solver.evaluation.prescriptions import Prescription, reps_of, rests_of, rir_of
from setwright.solver.evaluation.resolved_brief import ResolvedBrief
from setwright.solver.evaluation.resolved_day import ResolvedDay
from setwright.solver.evaluation.week import Entry, Week


def entry_as(
    resolved: ResolvedBrief,
    exercise: Exercise,
    day: ResolvedDay,
    prescription: Prescription,
    partner: str | None = None,
) -> Entry:
    """A line of an exercise done one way, with the repetitions and RIR that the brief gives it."""
    return Entry(
        exercise=exercise.id,
        sets=prescription.sets,
        reps=reps_of(resolved, exercise, day),
        rir=rir_of(resolved, exercise),
        rest=prescription.rest,
        technique=prescription.technique,
        drops=prescription.drops,
        partner=partner,
    )


def without(evaluated: EvaluatedWeek, line: Line) -> Week:
    """The week without a line; a partner left behind goes on alone, at its shortest straight rest."""
    left = [other.entry for other in evaluated.on[line.day.index] if other.place != line.place]
    return with_day(evaluated, line.day.index, [_alone(evaluated.resolved, e, line.exercise.id) for e in left])


def _alone(resolved: ResolvedBrief, entry: Entry, gone: str) -> Entry:
    if entry.partner != gone:
        return entry
    return replace(entry, partner=None, rest=rests_of(resolved, resolved.catalogue.exercises[entry.exercise])[0])


def exchanged(evaluated: EvaluatedWeek, line: Line, entry: Entry) -> Week:
    """The week with one line exchanged for an entry; a partner goes on with the new one."""
    entries = []
    for other in evaluated.on[line.day.index]:
        partner = other.entry.partner
        met = partner == line.exercise.id and other.place != line.place
        entries.append(
            entry if other.place == line.place else replace(other.entry, partner=entry.exercise) if met else other.entry
        )
    return with_day(evaluated, line.day.index, entries)


def added(evaluated: EvaluatedWeek, day: int, entry: Entry) -> Week:
    """The week with one more line on a day."""
    return with_day(evaluated, day, [*(line.entry for line in evaluated.on[day]), entry])


def with_day(evaluated: EvaluatedWeek, day: int, entries: Iterable[Entry]) -> Week:
    """The week with other entries on one day, sorted where the day was in its due order before."""
    before = [line.entry for line in evaluated.on[day]]
    entries = tuple(entries)
    if _names(sorted_as_done(evaluated.resolved, before)) == _names(before):
        entries = sorted_as_done(evaluated.resolved, entries)
    days = evaluated.week.days
    return Week((*days[:day], entries, *days[day + 1 :]))


def sorted_as_done(resolved: ResolvedBrief, entries: Iterable[Entry]) -> tuple[Entry, ...]:
    """The entries of a day in the order in which they are done."""
    by_id = {entry.exercise: entry for entry in entries}
    lifts = [(resolved.catalogue.exercises[key], entry.partner) for key, entry in by_id.items()]
    return tuple(by_id[exercise.id] for exercise in in_order(resolved, lifts))


def _names(entries: Iterable[Entry]) -> list[str]:
    return [entry.exercise for entry in entries]
