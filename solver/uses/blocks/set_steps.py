"""Weeks of ever fewer sets below a week: one set, or one round of a pair, taken off at a time and spread evenly."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import replace

from setwright.solver.auditing import audit
from setwright.solver.evaluation.evaluated_week import WHOLE, EvaluatedWeek, Line
from setwright.solver.evaluation.prescriptions import set_span
from setwright.solver.evaluation.resolved_brief import ResolvedBrief
from setwright.solver.evaluation.week import Week

Unit = tuple[tuple[int, int], ...]
"""The (day, place) of one line, or of the two lines of a pair."""
SLACK = 1e-9


def weekly_sets(resolved: ResolvedBrief, week: Week) -> dict[str, float]:
    """Each muscle's weekly fractional sets."""
    evaluated = EvaluatedWeek(resolved, week)
    return {muscle: evaluated.weekly_sets(muscle) / WHOLE for muscle in resolved.muscles}


def set_steps(base: EvaluatedWeek, floors: Mapping[str, float], caps: Mapping[str, float]) -> tuple[Week, ...]:
    """The base week and below it weeks that have one set less each, down to the floors (muscle -> weekly sets).

    Every one of them breaks no hard rule of the base week's brief. The set taken off is the one whose muscles have
    lost the smallest part of what they can lose. Where a muscle is above its cap then, its lifts go on losing sets
    whatever the floors of the muscles beside it.
    """
    steps = _steps_from([base.week], base, floors, units_of(base))
    resolved, bare = base.resolved, dict.fromkeys(base.resolved.muscles, 0.0)
    while True:
        sets = weekly_sets(resolved, steps[-1])
        over = frozenset(muscle for muscle, cap in caps.items() if sets[muscle] > cap + SLACK)
        units = [unit for unit in units_of(base) if over.intersection(_muscles(base, unit))]
        more = _steps_from(steps, base, bare, units, 1)
        if len(more) == len(steps):
            return tuple(steps)
        steps = more


def _steps_from(
    steps: list[Week], base: EvaluatedWeek, floors: Mapping[str, float], units: Sequence[Unit], most: int = 10_000
) -> list[Week]:
    """The steps with more below them, down to the floors, at most so many."""
    resolved, steps = base.resolved, list(steps)
    top, end = weekly_sets(resolved, base.week), len(steps) + most
    while len(steps) < end:
        ranked = sorted(
            (loss, -_sets(steps[-1], unit), unit, fewer)
            for unit in units
            if (fewer := without_a_set(resolved, steps[-1], unit)) is not None
            and (loss := _loss(base, fewer, unit, top, floors)) is not None
        )
        found = next((fewer for *_, fewer in ranked if not audit(resolved, fewer).broken), None)
        if found is None:
            break
        steps.append(found)
    return steps


def units_of(evaluated: EvaluatedWeek) -> tuple[Unit, ...]:
    """The lines and pairs whose sets may change: all but those whose sets are pinned."""
    return tuple(unit for day in evaluated.on for unit in _units(day) if not _pinned(evaluated, unit))


def _units(lines: tuple[Line, ...]) -> Iterator[Unit]:
    places = {line.exercise.id: line.place for line in lines}
    for line in lines:
        partner = places.get(line.entry.partner or "")
        here = (line.day.index, line.place)
        if partner is None:
            yield (here,)
        elif line.place < partner:
            yield here, (line.day.index, partner)


def _pinned(evaluated: EvaluatedWeek, unit: Unit) -> bool:
    names = {evaluated.on[day][place].exercise.id for day, place in unit}
    return any(pin.sets is not None and pin.exercise in names for pin in evaluated.resolved.brief.pins)


def without_a_set(resolved: ResolvedBrief, week: Week, unit: Unit) -> Week | None:
    """The week with one set less on each line of the unit; None where one has no set to spare."""
    days = [list(day) for day in week.days]
    for day, place in unit:
        entry = days[day][place]
        least, _ = set_span(resolved, resolved.catalogue.exercises[entry.exercise])
        if entry.sets <= least:
            return None
        days[day][place] = replace(entry, sets=entry.sets - 1)
    return Week(tuple(tuple(day) for day in days))


def _muscles(base: EvaluatedWeek, unit: Unit) -> set[str]:
    return {muscle for day, place in unit for muscle, _ in base.on[day][place].exercise.contributions}


def _sets(week: Week, unit: Unit) -> int:
    return sum(week.days[day][place].sets for day, place in unit)


def _loss(
    base: EvaluatedWeek, fewer: Week, unit: Unit, top: Mapping[str, float], floors: Mapping[str, float]
) -> tuple[float, float] | None:
    """How much of what they can lose the unit's muscles have lost: the worst of them, and all; None below a floor."""
    left = weekly_sets(base.resolved, fewer)
    parts = []
    for muscle in sorted(_muscles(base, unit)):
        room = top[muscle] - floors[muscle]
        if left[muscle] < floors[muscle] - SLACK:
            return None
        parts.append((top[muscle] - left[muscle]) / room)
    return max(parts), sum(parts)
