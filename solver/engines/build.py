"""Whole linear models of a brief: columns, region days, every rule's constraints, the stimulus."""

from __future__ import annotations

from collections.abc import Iterable

from setwright.solver.engines.stimulus import post_stimulus
from setwright.solver.linear.columns import (
    Column,
    DayGroup,
    day_groups,
    pair_columns,
    pattern_groups,
    single_columns,
    undated_groups,
)
from setwright.solver.linear.instance import Assignment, Instance
from setwright.solver.linear.linear_model import LinearModel
from setwright.solver.linear.region_days import post_regions
from setwright.solver.rulebook import post_all


def build(instance: Instance, groups: tuple[DayGroup, ...], columns: Iterable[Column]) -> LinearModel:
    """The linear model of some columns, with all that the rules post."""
    model = LinearModel(instance, groups, columns)
    post_regions(model)
    post_all(model)
    post_stimulus(model)
    return model


def week_model(instance: Instance) -> LinearModel:
    """The week without a day index: a relaxation whose bound holds for every week."""
    groups = undated_groups(instance)
    return build(instance, groups, single_columns(instance, groups, halves=True))


def pattern_model(instance: Instance, keep: frozenset[tuple[int, Assignment]] | None = None) -> LinearModel:
    """The week without a day index, by region patterns of days: tighter for weeks of many days.

    `keep` names the (group of like days, assignment) pairs whose columns are in; None takes all.
    """
    groups = pattern_groups(instance)
    columns = single_columns(instance, groups, halves=True)
    if keep is not None:
        columns = (c for c in columns if (groups[c.group].like, c.assignments[0]) in keep)
    return build(instance, groups, columns)


def day_model(instance: Instance, columns: Iterable[Column]) -> LinearModel:
    """The week on its days, over some columns."""
    return build(instance, day_groups(instance), columns)


def all_day_columns(instance: Instance) -> tuple[Column, ...]:
    """Every column of the week on its days, all pairs included: the statement of the problem."""
    groups = day_groups(instance)
    found: list[Column] = []
    for group in groups:
        here = list(single_columns(instance, (group,), halves=True))
        found += [c for c in here if not c.assignments[0].prescription.paired]
        found += pair_columns(instance, group, [c.assignments[0] for c in here if c.assignments[0].prescription.paired])
    return tuple(found)
