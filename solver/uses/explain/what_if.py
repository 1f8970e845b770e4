"""What-if questions of a week, answered by solving anew: without a line, with an exercise, with more minutes."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass

from setwright.catalogue.entries import Exercise
from setwright.solver.auditing import Audit, audit
from setwright.solver.brief.defaults import LIMITS
from setwright.solver.brief.schema import Brief
from setwright.solver.evaluation.evaluated_week import Line
from setwright.solver.evaluation.resolved_brief import ResolvedBrief
from setwright.solver.evaluation.resolved_day import ResolvedDay
from setwright.solver.evaluation.week import Week
from setwright.solver.planning import Reoptimised, Unsolved, reoptimise
from setwright.solver.rulebook import resolve
from setwright.solver.search.limits import Limits
from setwright.solver.search.solve_options import SolveOptions
from setwright.solver.uses.edits.effects import Effect, effect
from setwright.solver.uses.edits.leaving_out import emptied, left_out
from setwright.solver.uses.edits.pinning import with_pin
from setwright.solver.uses.edits.swaps import swapped
from setwright.solver.uses.explain.bottlenecks import new_line

Stopped = Callable[[], bool]
MOST_SEEDS = 4
"""Weeks with the exercise that the search starts from besides."""


@dataclass(frozen=True)
class Answer:
    """What solving anew does to the week: both weeks audited under one brief, and what is proven of the new one."""

    effect: Effect
    gap: float
    """Index points by which a better week is not ruled out."""
    ended_by: str
    pin_dropped: bool = False
    """Whether the brief's pin of the exercise left out was dropped."""
    alone: Effect | None = None
    """The best answer by one exchange or one more line, the rest left as it is."""


@dataclass(frozen=True)
class Excluded:
    """An exercise that no day of the brief has open, with the rules that exclude it."""

    rules: tuple[str, ...]
    resolved: ResolvedBrief


# ---- without


def solved_without(found: Audit, line: Line, limits: Limits, stopped: Stopped = lambda: False) -> Answer | Unsolved:
    """The best week found when a line's exercise is left out of the whole week; both weeks audited under the brief."""
    resolved, gone = found.evaluated.resolved, line.exercise.id
    removed = emptied(found, gone)
    options = SolveOptions(limits, stopped=stopped)
    end = reoptimise(resolve(left_out(resolved.brief, gone), resolved.catalogue), removed, (), options)
    if isinstance(end, Unsolved):
        return end
    as_asked = [audit(resolved, end.audit.evaluated.week), audit(resolved, removed)]
    best = max(enumerate(as_asked), key=lambda pair: (_keeps_rules(found, pair[1]), pair[1].score_units, -pair[0]))[1]
    pinned = any(gone in (pin.exercise, pin.pair_with) for pin in resolved.brief.pins)
    return Answer(Effect(found, best), end.gap, end.ended_by, pinned)


def _keeps_rules(before: Audit, after: Audit) -> bool:
    """Whether nothing but a pin is newly broken."""
    return all(f.rule == "pinned" for f in Effect(before, after).broken)


# ---- with


def solved_with(
    found: Audit, exercise: Exercise, limits: Limits, stopped: Stopped = lambda: False
) -> Answer | Unsolved | Excluded:
    """The best week found that holds an exercise, against the week as it is; both audited as if it were pinned."""
    resolved = with_pin(found.evaluated.resolved, exercise)
    before = audit(resolved, found.evaluated.week)
    excluding = [resolved.excluded_by(exercise, day) for day in resolved.days]
    if all(excluding):
        return Excluded(tuple(dict.fromkeys(rule for rules in excluding for rule in rules)), resolved)
    seeds = _weeks_with(before, exercise)
    end = reoptimise(resolved, found.evaluated.week, seeds, SolveOptions(limits, stopped=stopped))
    if isinstance(end, Unsolved):
        return end
    alone = effect(before, seeds[0]) if seeds else None
    return Answer(Effect(before, end.audit), end.gap, end.ended_by, alone=alone)


def _weeks_with(before: Audit, exercise: Exercise) -> tuple[Week, ...]:
    """The best weeks that hold an exercise by one exchange or one more line, each audited."""
    evaluated = before.evaluated
    found: list[Audit] = []
    for day in evaluated.resolved.days:
        if not evaluated.resolved.excluded_by(exercise, day) and day.index not in evaluated.days_of.get(
            exercise.id, ()
        ):
            trials = [swapped(before, line, exercise) for line in evaluated.on[day.index]]
            found += [trial.effect.after for trial in trials if trial is not None]
            found += [trial.effect.after for trial in new_line(before, exercise, day)]
    sound = [after for after in found if not after.broken]
    return tuple(a.evaluated.week for a in sorted(sound, key=lambda a: -a.score_units)[:MOST_SEEDS])


# ---- more minutes


@dataclass(frozen=True)
class LongerDay:
    """What so many more minutes on one day buy, against the best week found in the minutes as they are."""

    day: ResolvedDay
    answer: Answer


@dataclass(frozen=True)
class MoreMinutes:
    """The days ranked by what more minutes buy; `already` is what the same search gains without any."""

    minutes: int
    already: Effect
    days: tuple[LongerDay, ...]


def more_minutes(
    found: Audit,
    minutes: int,
    limits: Limits,
    stopped: Stopped = lambda: False,
    tell: Callable[[ResolvedDay | None], None] = lambda _: None,
) -> MoreMinutes | Unsolved:
    """The week solved anew with more minutes on each day in turn, the day that gains most score first.

    `tell` is called before each solve with the day, and with None before that in the minutes as they are.
    """
    resolved = found.evaluated.resolved
    tell(None)
    options = SolveOptions(limits, stopped=stopped)
    base = reoptimise(resolved, found.evaluated.week, (), options)
    if isinstance(base, Unsolved):
        return base
    days = []
    for day in resolved.days:
        if day.minutes + minutes <= LIMITS["minutes"][1]:
            tell(day)
            longer = resolve(_lengthened(resolved.brief, day.index, minutes), resolved.catalogue)
            end = reoptimise(longer, base.audit.evaluated.week, (), options)
            if isinstance(end, Reoptimised):
                days.append(LongerDay(day, Answer(Effect(base.audit, end.audit), end.gap, end.ended_by)))
    ranked = sorted(days, key=lambda d: (-d.answer.effect.score, d.day.index))
    return MoreMinutes(minutes, Effect(found, base.audit), tuple(ranked))


def _lengthened(brief: Brief, day: int, minutes: int) -> Brief:
    """The brief with more minutes on one day."""
    days = list(brief.days)
    days[day] = days[day].model_copy(update={"minutes": days[day].minutes + minutes})
    return brief.model_copy(update={"days": tuple(days)})
