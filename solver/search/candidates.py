"""Which columns the search looks at: the best by reduced cost on each day, and what the brief pins."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass

from setwright.solver.engines.highs import LinearRelaxation
from setwright.solver.linear.columns import Column, DayGroup, day_groups, halves_of_pairs, pair_columns
from setwright.solver.linear.instance import Assignment, Instance
from setwright.solver.linear.linear_model import LinearModel

SINGLES = 260
"""Columns of one exercise kept on each day."""
PAIRS = 260
"""Columns of two exercises kept on each day."""


@dataclass(frozen=True)
class Candidates:
    """Columns on days, each day's in the order they are worth trying."""

    columns: tuple[Column, ...]
    ranked: tuple[tuple[int, ...], ...]
    """For each day, indices into `columns`, best first; single and paired by turns."""
    must: frozenset[int]
    """Columns that a pin may need, open in every neighbourhood."""

    def widened(self, wanted: Iterable[Column], always_open: bool) -> Candidates:
        """With some columns added, where they lack, at the end of their days; earlier indices stay as they are.

        `always_open` puts all of `wanted` among the columns that are open in every neighbourhood.
        """
        wanted = tuple(dict.fromkeys(wanted))
        known = set(self.columns)
        columns = (*self.columns, *(column for column in wanted if column not in known))
        place = {column: j for j, column in enumerate(columns)}
        added = range(len(self.columns), len(columns))
        ranked = tuple(
            (*before, *(j for j in added if columns[j].group == day)) for day, before in enumerate(self.ranked)
        )
        must = self.must | {place[column] for column in wanted} if always_open else self.must
        return Candidates(columns, ranked, must)

    def places(self, columns: Iterable[Column]) -> frozenset[int]:
        """The indices of some columns; raises KeyError where one is no candidate."""
        place = {column: j for j, column in enumerate(self.columns)}
        return frozenset(place[column] for column in columns)


def candidates_of(instance: Instance, week: LinearModel, relaxed: LinearRelaxation) -> Candidates:
    """The candidates of a brief, by the reduced costs of its week without days."""
    value = {(week.groups[c.group].like, c.assignments[0]): relaxed.reduced[j] for j, c in enumerate(week.columns)}
    days: list[list[Column]] = []
    for group in day_groups(instance):
        mine = sorted(
            (a for g, a in value if g == group.like), key=lambda a: (-value[group.like, a], a.cls, a.prescription)
        )
        singles = [Column(group.index, (a,)) for a in mine if not a.prescription.paired]
        pairs = _best_pairs(instance, group, value)
        pinned = [c for c in (*singles, *pairs) if is_pinned(instance, c)]
        days.append([*_alternating(singles[:SINGLES], pairs[:PAIRS]), *pinned])
    return _listed(instance, days)


def candidates_by_day(instance: Instance, model: LinearModel, relaxed: LinearRelaxation) -> Candidates:
    """The candidates by the reduced costs of the week on its days, whose pairs are real ones and not halves."""
    days: list[list[Column]] = []
    for mine in model.by_group:
        found = [model.columns[j] for j in sorted(mine, key=lambda j: (-relaxed.reduced[j], j))]
        singles = [c for c in found if len(c.assignments) == 1 and not c.assignments[0].prescription.paired]
        pairs = [c for c in found if len(c.assignments) == 2]
        pinned = [c for c in found if is_pinned(instance, c)]
        days.append([*_alternating(singles[:SINGLES], pairs[:PAIRS]), *pinned])
    return _listed(instance, days)


def is_pinned(instance: Instance, column: Column) -> bool:
    """Whether a column holds an exercise that the brief pins."""
    return any(instance.classes[a.cls].exercise.id in instance.resolved.pinned for a in column.assignments)


def _listed(instance: Instance, days: list[list[Column]]) -> Candidates:
    """Each day's columns, best first and each once, as candidates."""
    columns: list[Column] = []
    ranked: list[tuple[int, ...]] = []
    for here in days:
        first = len(columns)
        columns += dict.fromkeys(here)
        ranked.append(tuple(range(first, len(columns))))
    must = frozenset(j for j, column in enumerate(columns) if is_pinned(instance, column))
    return Candidates(tuple(columns), tuple(ranked), must)


def _best_pairs(instance: Instance, group: DayGroup, value: dict[tuple[int, Assignment], float]) -> list[Column]:
    """The pairs of a day, best sum of their halves first."""

    def order(column: Column) -> tuple[float, list[tuple[int, object]]]:
        total = sum(value[group.like, a] for a in column.assignments)
        return -total, [(a.cls, a.prescription) for a in column.assignments]

    return sorted(pair_columns(instance, group, halves_of_pairs(instance, group.like)), key=order)


def _alternating(singles: list[Column], pairs: list[Column]) -> list[Column]:
    """Two lists merged one by one."""
    merged: list[Column] = []
    for i in range(max(len(singles), len(pairs))):
        merged += singles[i : i + 1] + pairs[i : i + 1]
    return merged
