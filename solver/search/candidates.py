"""Which columns the search looks at: the best by reduced cost on each day, and what the brief pins."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from collections.abc import Set as AbstractSet
from dataclasses import dataclass
from functools import cached_property, partial

from setwright.solver.engines.highs import LinearRelaxation
from setwright.solver.linear.columns import Column, DayGroup, day_groups, pairs_of
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


@dataclass(frozen=True)
class Ranking:
    """The columns of a brief in the order they are worth trying, by the reduced costs of its week without days."""

    instance: Instance
    value: Mapping[tuple[int, Assignment], float]
    """(group of like days, assignment) -> its reduced cost in score units."""
    relaxed: float
    """The value of the relaxation in score units."""

    def singles(self, group: DayGroup) -> list[Column]:
        """The columns of one assignment on a day, best first."""
        mine = [a for g, a in self.value if g == group.like and not a.prescription.paired]
        mine.sort(key=lambda a: (-self.value[group.like, a], a.cls, a.prescription))
        return [Column(group.index, (a,)) for a in mine]

    def pairs(self, group: DayGroup) -> list[Column]:
        """The pairs of a day, best sum of their halves first."""
        if group.like not in self._pairs:
            found = [Column(group.index, pair) for pair in pairs_of(self.instance, group.like)]
            found.sort(key=lambda c: [(a.cls, a.prescription) for a in c.assignments])
            self._pairs[group.like] = sorted(found, key=partial(self._loss, group))
        return [Column(group.index, pair.assignments) for pair in self._pairs[group.like]]

    @cached_property
    def _pairs(self) -> dict[int, list[Column]]:
        """Group of like days -> its pairs, best first, as far as they were asked for."""
        return {}

    def _loss(self, group: DayGroup, column: Column) -> float:
        return -self.worth(group, column)

    def worth(self, group: DayGroup, column: Column) -> float:
        """The sum of the reduced costs of a column's assignments."""
        return sum(self.value[group.like, a] for a in column.assignments)

    def best_of_classes(self, classes: AbstractSet[int], most: int) -> list[Column]:
        """The best columns, so many on each day, of which all exercises are of some classes."""
        found: list[Column] = []
        for group in day_groups(self.instance):
            mine = [
                c for c in (*self.singles(group), *self.pairs(group)) if all(a.cls in classes for a in c.assignments)
            ]
            mine.sort(key=lambda c: -self.worth(group, c))
            found += mine[:most]
        return found


def ranking_of(instance: Instance, week: LinearModel, relaxed: LinearRelaxation) -> Ranking:
    """The ranking by a relaxation of the week without days."""
    value = {(week.groups[c.group].like, c.assignments[0]): relaxed.reduced[j] for j, c in enumerate(week.columns)}
    return Ranking(instance, value, relaxed.value)


def candidates_of(ranking: Ranking, only: frozenset[int] | None = None) -> Candidates:
    """The candidates of a brief: the best columns of each day, or of some days only, and those of what is pinned."""
    instance = ranking.instance
    days: list[list[Column]] = []
    for group in day_groups(instance):
        if only is not None and group.index not in only:
            days.append([])
            continue
        singles, pairs = ranking.singles(group), ranking.pairs(group)
        pinned = [c for c in (*singles, *pairs) if is_pinned(instance, c)]
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


def _alternating(singles: list[Column], pairs: list[Column]) -> list[Column]:
    """Two lists merged one by one."""
    merged: list[Column] = []
    for i in range(max(len(singles), len(pairs))):
        merged += singles[i : i + 1] + pairs[i : i + 1]
    return merged
