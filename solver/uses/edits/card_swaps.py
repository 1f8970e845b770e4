"""The swaps that a card names for each line, so that a client whose station is taken has something to do."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from dataclasses import dataclass

from setwright.catalogue.entries import Exercise
from setwright.solver.auditing import Audit
from setwright.solver.evaluation.evaluated_week import Line
from setwright.solver.uses.edits.effects import TIME
from setwright.solver.uses.edits.substitutes import candidates
from setwright.solver.uses.edits.swaps import Swap, least_breaking, rules_broken, ways

CardSwaps = Mapping[tuple[int, int], tuple[Exercise, ...]]
"""(day, place of the line on the day) -> exercises that may stand in its place, the best first."""
MOST = 2
"""Swaps named for one line."""


def swaps_on_cards(audited: Audit, days: Iterable[int] | None = None) -> CardSwaps:
    """The swaps of every line of a week, or of some of its days; each line's by several audits, so ask once."""
    wanted = range(len(audited.evaluated.on)) if days is None else days
    lines = [line for day in wanted for line in audited.evaluated.on[day]]
    return {(line.day.index, line.place): line_swaps(audited, line, MOST) for line in lines}


def line_swaps(audited: Audit, line: Line, most: int) -> tuple[Exercise, ...]:
    """Up to `most` swaps of a line: those that break nothing, then those that only run a full day over its minutes.

    Exercises of the line's movement come first, each kind with those that fit at the line's own sets leading.
    """
    named: list[Exercise] = []
    for kind in candidates(audited.evaluated, line):
        exercises = [e for e in kind if may_be_named(audited, line, e)]
        named += _best(audited, line, exercises, most - len(named))
        if len(named) >= most:
            break
    return tuple(named)


def may_be_named(audited: Audit, line: Line, exercise: Exercise) -> bool:
    """Whether the brief leaves an exercise open in a line's place: there is its kit, nobody forbids or dislikes it."""
    resolved = audited.evaluated.resolved
    return not resolved.excluded_by(exercise, line.day) and exercise.id not in resolved.brief.dislike


@dataclass(frozen=True)
class _Trial:
    """An exercise in a line's place, at the sets nearest to the line's own at which it breaks nothing."""

    exercise: Exercise
    sets: int | None
    """None where it breaks a rule at any."""
    only_time: bool
    """Whether all that it breaks is the day's minutes, done in the way that breaks least."""


def _best(audited: Audit, line: Line, exercises: list[Exercise], most: int) -> list[Exercise]:
    """Up to `most` of some exercises of one kind."""
    trials: list[_Trial] = []
    for exercise in exercises:
        trials.append(_tried(audited, line, exercise))
        if sum(trial.sets == line.sets for trial in trials) == most:
            break
    fitting = sorted((t for t in trials if t.sets is not None), key=lambda trial: trial.sets != line.sets)
    over = [trial for trial in trials if trial.only_time]
    return [trial.exercise for trial in (*fitting, *over)][:most]


def _tried(audited: Audit, line: Line, exercise: Exercise) -> _Trial:
    """One exercise tried, no further than to the first way that breaks nothing: a card needs no more."""
    broken: list[Swap] = []
    for sets, trials in ways(audited, line, exercise):
        for trial in trials:
            if not trial.effect.broken:
                return _Trial(exercise, sets, False)
            broken.append(trial)
    least = least_breaking(broken)
    return _Trial(exercise, None, least is not None and rules_broken(least) == (TIME,))
