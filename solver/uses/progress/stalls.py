"""Lifts that do not move: a stated definition, and what to try, in order."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from datetime import date
from statistics import mean
from typing import Literal

from setwright.catalogue.entries import Catalogue, Exercise
from setwright.solver.auditing import Audit
from setwright.solver.brief.schema import Unit
from setwright.solver.evaluation.evaluated_week import WHOLE, Line
from setwright.solver.log.values import LoggedSession, exposures
from setwright.solver.uses.loads.buildable import Built
from setwright.solver.uses.progress.ladder import Ladder
from setwright.solver.uses.progress.matching import refuse_other_units
from setwright.solver.uses.progress.maximum_course import MaximumEstimate, maximum_course
from setwright.solver.uses.progress.next_targets import KitOf
from setwright.solver.uses.progress.numbers import ProgressNumbers

Advice = Literal["sleep-and-effort", "load-back", "another-lift", "change-sets"]
Effort = Literal["easier", "as-asked", "harder", "unsaid"]
SetsAdvice = Literal["more", "fewer", "either"]
ORDER: tuple[Advice, ...] = ("sleep-and-effort", "load-back", "another-lift", "change-sets")
"""The order in which a stall is looked into: what costs least first (common practice, no source)."""


@dataclass(frozen=True)
class Stall:
    """A lift whose estimated maximum has not risen by as much as half a repetition is worth."""

    exercise: str
    since: date
    until: date
    course: tuple[MaximumEstimate, ...]
    """The estimates of the window that was looked at."""
    rise: float
    """The best estimate of its later half less that of its earlier half, in the unit of the log."""
    one_rep: float
    """What one repetition more would be worth, in the same unit."""
    effort: Effort
    """Whether its sets left more repetitions than asked for on average (easier), as many, or fewer (harder)."""
    advice: tuple[Advice, ...]
    """What to try, in order; what cannot be done here is left out."""
    back_to: Built | None
    """The load that is 5 to 10 % easier than the last, or as near to it as can be built."""
    others: tuple[str, ...]
    """Exercises of the same slot that are open on its day and not yet in the week."""
    sets: SetsAdvice
    """Whether its muscle gets fewer sets than its band, more, or neither."""


def stalls(audit: Audit, sessions: Sequence[LoggedSession], kit_of: KitOf, unit: Unit) -> tuple[Stall, ...]:
    """The stalled lifts of a week, in its order, each once; raises UsageFault for loads in another unit than `unit`."""
    refuse_other_units(sessions, unit)
    found: dict[str, Stall] = {}
    for line in audit.evaluated.lines:
        if line.exercise.id not in found:
            stall = _stall_of(line, audit, sessions, kit_of)
            if stall is not None:
                found[line.exercise.id] = stall
    return tuple(found.values())


def stalled(course: Sequence[MaximumEstimate], catalogue: Catalogue) -> tuple[MaximumEstimate, ...]:
    """The shortest window at the end of a course with enough sessions and days, if its maximum does not rise in it.

    It rises where the best estimate of the later half is over that of the earlier half by what half a repetition is
    worth: errors of the formulas, and of a person who always leaves more than is said, are the same in both halves.
    Empty where it rises, or where there is too little to tell.
    """
    least, days = round(catalogue.number("stall-exposures")), catalogue.number("stall-days")
    for start in range(len(course) - least, -1, -1):
        window = tuple(course[start:])
        if (window[-1].on - window[0].on).days >= days:
            rise, one_rep = rise_of(window)
            return window if rise < catalogue.number("stall-rise-reps") * one_rep else ()
    return ()


def rise_of(window: Sequence[MaximumEstimate]) -> tuple[float, float]:
    """The rise from the earlier half's best estimate to the later half's, and what one repetition is worth."""
    half = len(window) // 2
    before = max(window[:half], key=_value)
    after = max(window[half:], key=_value)
    return after.value - before.value, before.one_rep


def _stall_of(line: Line, audit: Audit, sessions: Sequence[LoggedSession], kit_of: KitOf) -> Stall | None:
    catalogue, exercise = audit.evaluated.resolved.catalogue, line.exercise
    course = maximum_course(sessions, line.entry, catalogue)
    window = stalled(course, catalogue)
    if not window:
        return None
    numbers, kit = ProgressNumbers.of(catalogue), kit_of(exercise, line.day.index)
    back = None if kit is None else Ladder(exercise, kit, numbers).easier(window[-1].load, numbers.back)
    others = _others(line, audit)
    possible: dict[Advice, bool] = {"load-back": back is not None, "another-lift": bool(others)}
    rise, one_rep = rise_of(window)
    return Stall(
        exercise=exercise.id,
        since=window[0].on,
        until=window[-1].on,
        course=window,
        rise=rise,
        one_rep=one_rep,
        effort=_effort(sessions, exercise, window[0].on, line.entry.rir),
        advice=tuple(advice for advice in ORDER if possible.get(advice, True)),
        back_to=back,
        others=others,
        sets=_sets(line, audit),
    )


def _effort(sessions: Sequence[LoggedSession], exercise: Exercise, since: date, asked: int) -> Effort:
    """The repetitions left on average since a date beside those asked for; half a repetition apart counts."""
    said = [
        done.rir
        for session, sets in exposures(sessions, exercise.id)
        for done in sets
        if done.rir is not None and session.on >= since
    ]
    if not said:
        return "unsaid"
    over = mean(said) - asked
    return "easier" if over > HALF else "harder" if over < -HALF else "as-asked"


def _others(line: Line, audit: Audit) -> tuple[str, ...]:
    """Open exercises of the line's slot that the week does not have, the better ranked first."""
    resolved, here = audit.evaluated.resolved, audit.evaluated.days_of
    found = [e for e in resolved.open_on[line.day.index] if e.slot.id == line.exercise.slot.id and e.id not in here]
    return tuple(e.id for e in sorted(found, key=lambda e: resolved.rank(e, line.day)))[:MOST_OTHERS]


def _sets(line: Line, audit: Audit) -> SetsAdvice:
    """More where the lift's own muscle is under its band, fewer where it is over it."""
    evaluated = audit.evaluated
    muscle = evaluated.resolved.own_muscle(line.exercise)
    if muscle is None:
        return "either"
    target, sets = evaluated.resolved.muscles[muscle], evaluated.weekly_sets(muscle) / WHOLE
    return "more" if sets < target.low else "fewer" if sets > target.high else "either"


def _value(estimate: MaximumEstimate) -> float:
    return estimate.value


HALF = 0.5
MOST_OTHERS = 3
"""Other exercises that are named."""
