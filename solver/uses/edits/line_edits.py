"""What a coach changes by hand on one line of a week, each audited before and after under the same brief."""

from __future__ import annotations

from dataclasses import replace
from typing import Any, Final

from setwright.solver.auditing import Audit, audit
from setwright.solver.brief.schema import Brief, Pin
from setwright.solver.evaluation.evaluated_week import EvaluatedWeek, Line
from setwright.solver.evaluation.finding import Finding
from setwright.solver.evaluation.prescriptions import make, rests_of
from setwright.solver.evaluation.resolved_brief import ResolvedBrief
from setwright.solver.evaluation.resolved_day import ResolvedDay
from setwright.solver.evaluation.week import Entry, Week
from setwright.solver.rulebook import resolve
from setwright.solver.rules.pinned import meets
from setwright.solver.uses.edits.editing import entry_as, with_day, without
from setwright.solver.uses.edits.effects import Effect, effect
from setwright.solver.uses.edits.leaving_out import emptied, left_out

WISHES: Final = ("pinned", "must", "exact-band", "days-at-least", "muscle-on-day")
"""The rules under which a brief asks for something outright: a coach may change a week so that it misses one."""


def against_rules(done: Effect) -> tuple[Finding, ...]:
    """The hard rules that a change newly breaks, wishes of the brief left aside."""
    return tuple(finding for finding in done.broken if finding.rule not in WISHES)


def against_wishes(done: Effect) -> tuple[Finding, ...]:
    """The wishes of the brief that a change newly misses."""
    return tuple(finding for finding in done.broken if finding.rule in WISHES)


def taken_out(audited: Audit, line: Line) -> Effect:
    """What it does to take a line out; its partner goes on alone."""
    return effect(audited, without(audited.evaluated, line))


def closed(audited: Audit, line: Line) -> Effect:
    """What it does to take a line's exercise out of every day and out of the brief."""
    resolved = audited.evaluated.resolved
    return _under(audited, left_out(resolved.brief, line.exercise.id), emptied(audited, line.exercise.id))


def with_sets(audited: Audit, line: Line, sets: int) -> Effect:
    """What it does to do a line at another number of sets; its partner keeps in step."""
    evaluated = audited.evaluated
    together = {line.exercise.id, line.entry.partner}
    entries = [
        replace(other.entry, sets=sets) if other.exercise.id in together else other.entry
        for other in evaluated.on[line.day.index]
    ]
    return effect(audited, with_day(evaluated, line.day.index, entries))


def moved(audited: Audit, line: Line, day: ResolvedDay, with_partner: bool = False) -> Effect:
    """What it does to do a line on another day, alone or with its partner; pins of its weekday go with it.

    Sets and technique stay; repetitions are those of the new day, and a line that leaves its partner rests straight.
    """
    evaluated = audited.evaluated
    partner = line.entry.partner if with_partner else None
    going = [x for x in evaluated.on[line.day.index] if x.exercise.id in (line.exercise.id, partner)]
    brief = _pins_moved(evaluated.resolved.brief, going, day)
    resolved = resolve(brief, evaluated.resolved.catalogue)
    entries = [_on(resolved, x, resolved.days[day.index], partner is not None) for x in going]
    return _under(audited, brief, _with_added(_without_all(evaluated, line, going), day, entries))


def pinned(audited: Audit, line: Line, weekday: Any = None) -> Effect:
    """What it does to pin a line's exercise, on a weekday if one is named: the week is the same, the brief is not."""
    return _under(audited, with_pin_of(audited.evaluated.resolved.brief, line.exercise.id, weekday))


def unpinned(audited: Audit, line: Line) -> Effect:
    """What it does to drop every pin of a line's exercise."""
    return _under(audited, without_pins_of(audited.evaluated.resolved.brief, line.exercise.id))


def with_pin_of(brief: Brief, exercise: str, weekday: Any = None) -> Brief:
    """The brief with one more pin; the same where it is there already."""
    pin = Pin(exercise=exercise, day=weekday)
    return brief if pin in brief.pins else brief.model_copy(update={"pins": (*brief.pins, pin)})


def without_pins_of(brief: Brief, exercise: str) -> Brief:
    """The brief without the pins of an exercise."""
    return brief.model_copy(update={"pins": tuple(pin for pin in brief.pins if pin.exercise != exercise)})


def _under(audited: Audit, brief: Brief, week: Week | None = None) -> Effect:
    """A week, the same unless another is named, under a changed brief; both are audited under that."""
    resolved = resolve(brief, audited.evaluated.resolved.catalogue)
    return effect(audit(resolved, audited.evaluated.week), week or audited.evaluated.week)


def _pins_moved(brief: Brief, going: list[Line], day: ResolvedDay) -> Brief:
    """The brief in which the pins that lines meet by their weekday name the weekday of another day."""
    pins = tuple(
        pin.model_copy(update={"day": day.weekday}) if pin.day and any(meets(pin, x) for x in going) else pin
        for pin in brief.pins
    )
    return brief.model_copy(update={"pins": pins})


def _on(resolved: ResolvedBrief, line: Line, day: ResolvedDay, paired: bool) -> Entry:
    """A line as it is done on another day."""
    entry = line.entry
    alone = entry.partner is not None and not paired
    rest = rests_of(resolved, line.exercise)[0] if alone else entry.rest
    prescription = make(resolved, line.exercise, day, entry.sets, rest, entry.technique, entry.drops, paired)
    return entry_as(resolved, line.exercise, day, prescription, entry.partner if paired else None)


def _without_all(evaluated: EvaluatedWeek, line: Line, going: list[Line]) -> EvaluatedWeek:
    """The week without a line, or without it and its partner."""
    if len(going) == 1:
        week = without(evaluated, line)
    else:
        names = {x.exercise.id for x in going}
        left = [x.entry for x in evaluated.on[line.day.index] if x.exercise.id not in names]
        week = with_day(evaluated, line.day.index, left)
    return EvaluatedWeek(evaluated.resolved, week)


def _with_added(evaluated: EvaluatedWeek, day: ResolvedDay, entries: list[Entry]) -> Week:
    """The week with more lines on a day."""
    return with_day(evaluated, day.index, [*(x.entry for x in evaluated.on[day.index]), *entries])
