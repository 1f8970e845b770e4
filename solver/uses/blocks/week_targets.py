"""The planned targets of all weeks of a block, one progression for each lift and range of repetitions."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import replace

from setwright.solver.evaluation.evaluated_week import EvaluatedWeek, Line
from setwright.solver.uses.blocks.block import BlockWeek
from setwright.solver.uses.blocks.targets import Loading, Progression, Target
from setwright.solver.uses.loads.buildable import Kit
from setwright.solver.uses.loads.kits import kit_on
from setwright.solver.uses.loads.week_loads import week_loads

Key = tuple[str, tuple[int, int]]
"""An exercise and its range of repetitions."""


def with_targets(weeks: Sequence[BlockWeek]) -> tuple[BlockWeek, ...]:
    """The weeks with every line's target; a lift that stands on two days has one target a week."""
    lifts: dict[Key, Progression] = {}
    return tuple(week if week.evaluated is None else _with_targets(week, week.evaluated, lifts) for week in weeks)


def _with_targets(week: BlockWeek, evaluated: EvaluatedWeek, lifts: dict[Key, Progression]) -> BlockWeek:
    """One week with the next target of each of its lifts, which are kept for the weeks after it."""
    lines = {_key(line): line for line in reversed(evaluated.lines)}
    loadings = _loadings(evaluated)
    for key, line in lines.items():
        lifts.setdefault(key, Progression(line.exercise, line.entry.reps, loadings[key], evaluated.resolved.catalogue))
    planned = {key: _target(week, line, lifts[key]) for key, line in lines.items()}
    days = tuple(
        tuple(_built_with(planned[_key(line)], kit_on(line.exercise, evaluated.resolved, line.day)) for line in day)
        for day in evaluated.on
    )
    return replace(week, targets=days)


def _key(line: Line) -> Key:
    return line.exercise.id, line.entry.reps


def _loadings(evaluated: EvaluatedWeek) -> Mapping[Key, Loading]:
    """How each lift is loaded on its first day of the week, and the load that the brief's lifts give for it."""
    loads, found = week_loads(evaluated), {}
    for line in reversed(evaluated.lines):
        known = loads.get((line.day.index, line.place))
        kit = None if line.exercise.timed else kit_on(line.exercise, evaluated.resolved, line.day)
        found[_key(line)] = Loading(kit, known.built.load if known and known.built else None)
    return found


def _target(week: BlockWeek, line: Line, lift: Progression) -> Target:
    """What a line is planned at in its kind of week."""
    if week.kind == "build":
        return lift.build(line.entry.rir)
    if week.kind in ("lighter", "return"):
        return lift.lighter()
    return lift.held()


def _built_with(target: Target, kit: Kit | None) -> Target:
    """The target with a load that can be built with what is at hand on the day."""
    built = None if kit is None or target.load is None else kit.at_most(target.load)
    return target if built is None else replace(target, load=built.load)
