"""Whole linear models of a brief: columns, region days, every rule's constraints, the stimulus."""

from __future__ import annotations

from collections.abc import Iterable

from setwright.solver.engines.stimulus import post_stimulus
from setwright.solver.linear.columns import (
    Column,
    DayGroup,
    day_groups,
    half_columns,
    pairs_of,
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
    return build(instance, groups, columns_with_halves(instance, groups))


def pattern_model(instance: Instance, keep: frozenset[tuple[int, Assignment]] | None = None) -> LinearModel:
    """The week without a day index, by region patterns of days: tighter for weeks of many days.

    `keep` names the (group of like days, assignment) pairs whose columns are in; None takes all.
    """
    groups = pattern_groups(instance)
    columns = columns_with_halves(instance, groups)
    if keep is not None:
        columns = [c for c in columns if (groups[c.group].like, c.assignments[0]) in keep]
    return build(instance, groups, columns)


def day_model(instance: Instance, columns: Iterable[Column]) -> LinearModel:
    """The week on its days, over some columns: with real pairs, or with halves that pair-fit matches."""
    return build(instance, day_groups(instance), columns)


def all_day_columns(instance: Instance) -> tuple[Column, ...]:
    """Every column of the week on its days, all pairs included: the statement of the problem."""
    groups = day_groups(instance)
    found: list[Column] = []
    for group in groups:
        found += single_columns(instance, group)
        found += (Column(group.index, pair) for pair in pairs_of(instance, group.like))
    return tuple(found)


def columns_with_halves(instance: Instance, groups: tuple[DayGroup, ...]) -> list[Column]:
    """Every column of some groups of days, with halves in place of pairs: the rule pair-fit matches them."""
    found: list[Column] = []
    for group in groups:
        found += single_columns(instance, group)
        found += half_columns(instance, group)
    return found
