"""Which columns the search looks at: the best by reduced cost on each day, and what the brief pins."""

from __future__ import annotations

from dataclasses import dataclass

from setwright.solver.engines.highs import LinearRelaxation
from setwright.solver.linear.columns import (
    Assignment,
    Column,
    DayGroup,
    Instance,
    day_groups,
    pair_columns,
)
from setwright.solver.linear.linear_model import LinearModel

SINGLES = 260
HALVES = 70
PAIRS = 260


@dataclass(frozen=True)
class Candidates:
    """Columns on days, each day's in the order they are worth trying."""

    columns: tuple[Column, ...]
    ranked: tuple[tuple[int, ...], ...]
    """For each day, indices into `columns`, best first; single and paired by turns."""
    must: frozenset[int]
    """Columns that a pin may need, open in every neighbourhood."""


def candidates_of(instance: Instance, week: LinearModel, relaxed: LinearRelaxation) -> Candidates:
    """The candidates of a brief, by the reduced costs of its week without days."""
    value = {(week.groups[c.group].like, c.assignments[0]): relaxed.reduced[j] for j, c in enumerate(week.columns)}
    columns: list[Column] = []
    ranked: list[tuple[int, ...]] = []
    must: set[int] = set()
    for group in day_groups(instance):
        mine = sorted(
            (a for g, a in value if g == group.like), key=lambda a: (-value[group.like, a], a.cls, a.prescription)
        )
        singles = [Column(group.index, (a,)) for a in mine if not a.prescription.paired]
        pinned = [c for c in singles if pinned_column(instance, c)]
        pairs = best_pairs(instance, group, [a for a in mine if a.prescription.paired], value)
        pinned += [c for c in pairs if pinned_column(instance, c)]
        singles, pairs = singles[:SINGLES], pairs[:PAIRS]
        here = list(dict.fromkeys([*by_turns(singles, pairs), *pinned]))
        first = len(columns)
        columns += here
        ranked.append(tuple(range(first, len(columns))))
        must |= {first + i for i, c in enumerate(here) if c in set(pinned)}
    return Candidates(tuple(columns), tuple(ranked), frozenset(must))


def candidates_by_day(instance: Instance, model: LinearModel, relaxed: LinearRelaxation) -> Candidates:
    """The candidates by the reduced costs of the week on its days, whose pairs are real ones and not halves."""
    columns: list[Column] = []
    ranked: list[tuple[int, ...]] = []
    must: set[int] = set()
    for mine in model.by_group:
        order = sorted(mine, key=lambda j: (-relaxed.reduced[j], j))
        found = [model.columns[j] for j in order]
        singles = [c for c in found if len(c.assignments) == 1 and not c.assignments[0].prescription.paired]
        pairs = [c for c in found if len(c.assignments) == 2]
        pinned = {c for c in found if pinned_column(instance, c)}
        here = list(dict.fromkeys([*by_turns(singles[:SINGLES], pairs[:PAIRS]), *(c for c in found if c in pinned)]))
        first = len(columns)
        columns += here
        ranked.append(tuple(range(first, len(columns))))
        must |= {first + i for i, c in enumerate(here) if c in pinned}
    return Candidates(tuple(columns), tuple(ranked), frozenset(must))


def pinned_column(instance: Instance, column: Column) -> bool:
    return any(instance.classes[a.cls].exercise.id in instance.resolved.pinned for a in column.assignments)


def best_pairs(
    instance: Instance, group: DayGroup, halves: list[Assignment], value: dict[tuple[int, Assignment], float]
) -> list[Column]:
    """Pairs of the best halves, best sum first."""
    pinned = [a for a in halves[HALVES:] if instance.classes[a.cls].exercise.id in instance.resolved.pinned]
    found = pair_columns(instance, group, halves[:HALVES] + pinned)

    def objective(column: Column) -> tuple[float, tuple[Assignment, ...]]:
        return sum(value[group.like, a] for a in column.assignments), column.assignments

    return sorted(found, key=lambda c: (-objective(c)[0], [(a.cls, a.prescription) for a in c.assignments]))


def by_turns(singles: list[Column], pairs: list[Column]) -> list[Column]:
    """Two lists merged one by one."""
    merged: list[Column] = []
    for i in range(max(len(singles), len(pairs))):
        merged += singles[i : i + 1] + pairs[i : i + 1]
    return merged
