"""The planned targets of all weeks of a block, one progression for each lift and range of repetitions."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace

from setwright.catalogue.entries import Catalogue
from setwright.solver.brief.schema import Brief
from setwright.solver.evaluation.evaluated_week import Line
from setwright.solver.uses.blocks.block import BlockWeek
from setwright.solver.uses.blocks.targets import Loading, Progression, Target
from setwright.solver.uses.loads.kits import usual_kit

Key = tuple[str, tuple[int, int]]
"""An exercise and its range of repetitions."""


def with_targets(weeks: Sequence[BlockWeek], brief: Brief, catalogue: Catalogue) -> tuple[BlockWeek, ...]:
    """The weeks with every line's target; a lift that stands on two days has one target a week."""
    lifts: dict[Key, Progression] = {}
    found = []
    for week in weeks:
        if week.evaluated is None:
            found.append(week)
            continue
        targets = {_key(line): line for line in week.evaluated.lines}
        planned = {key: _target(week, line, _lift(lifts, line, brief, catalogue)) for key, line in targets.items()}
        days = tuple(tuple(planned[_key(line)] for line in day) for day in week.evaluated.on)
        found.append(replace(week, targets=days))
    return tuple(found)


def _key(line: Line) -> Key:
    return line.exercise.id, line.entry.reps


def _lift(lifts: dict[Key, Progression], line: Line, brief: Brief, catalogue: Catalogue) -> Progression:
    key = _key(line)
    if key not in lifts:
        loading = Loading(usual_kit(line.exercise, brief.client.unit, None, None))
        lifts[key] = Progression(line.exercise, line.entry.reps, loading, catalogue)
    return lifts[key]


def _target(week: BlockWeek, line: Line, lift: Progression) -> Target:
    """What a line is planned at in its kind of week."""
    if week.kind == "build":
        return lift.build(line.entry.rir)
    if week.kind in ("lighter", "return"):
        return lift.lighter()
    return lift.held()
