"""Other weeks within a share of the best, each clearly different from the first and from those before it."""

from __future__ import annotations

import math
from dataclasses import dataclass

from setwright.solver.auditing import Audit, audit
from setwright.solver.linear.instance import Instance
from setwright.solver.search.encoding import columns_of
from setwright.solver.search.neighbourhood.neighbourhood_search import NeighbourhoodSearch
from setwright.solver.search.neighbourhood.neighbourhood_solver import TANGENT_MARGIN, Chosen, LeastSum
from setwright.solver.search.neighbourhood.neighbourhoods import Neighbourhood, neighbourhoods
from setwright.solver.search.secondary.difference_constraints import DifferenceConstraints
from setwright.solver.search.secondary.distance import Kinds, distance, excess_over, exercises, kinds_of, shared
from setwright.solver.search.solve_options import SolveOptions
from setwright.solver.search.stopping import Interrupted


@dataclass(frozen=True)
class DiverseWeek:
    """Another week, and what sets it apart from the first; exercises that the model cannot tell apart count as one."""

    audit: Audit
    distance: float
    gains: tuple[str, ...]
    """Its exercises that the first has not, by id in the catalogue's order."""
    lacks: tuple[str, ...]


def diverse_weeks(
    lns: NeighbourhoodSearch,
    first: Audit,
    count: int,
    share: float,
    options: SolveOptions,
    no_longer: bool = False,
) -> tuple[DiverseWeek, ...]:
    """Up to `count` weeks with score >= first - share * its stimulus, clearly different from all before, best first.

    `no_longer` keeps the week's seconds within the first's. The same input gives the same weeks; fewer where the work
    finds no more. `first` is made of the search's candidates; the search is left as it is.
    """
    floor = math.ceil(first.score_units - share * first.stimulus_units)
    most = first.evaluated.week_seconds if no_longer else None
    kept = [first]
    found: list[DiverseWeek] = []
    for _ in range(count):
        kinds = [kinds_of(lns.instance, week.evaluated.week) for week in kept]
        other = _OtherWeek(lns, first, kinds, floor, most, options).run()
        if other is None:
            break
        found.append(_against_first(lns.instance, first, other))
        kept.append(other)
    return tuple(sorted(found, key=lambda a: -a.audit.score_units))


def _against_first(instance: Instance, first: Audit, other: Audit) -> DiverseWeek:
    """What sets a week apart from the first."""
    one, two = (kinds_of(instance, audit.evaluated.week) for audit in (first, other))
    gains = _only_in(instance, other, exercises(two) - exercises(one))
    return DiverseWeek(other, distance(one, two), gains, _only_in(instance, first, exercises(one) - exercises(two)))


def _only_in(instance: Instance, found: Audit, classes: frozenset[int]) -> tuple[str, ...]:
    """A week's exercises of some classes, in the catalogue's order."""
    used = {entry.exercise for entry in found.evaluated.week.entries}
    wanted = {member.id for cls in sorted(classes) for member in instance.classes[cls].members}
    return tuple(e for e in instance.resolved.catalogue.exercises if e in used and e in wanted)


class _OtherWeek:
    """A week that leaves the first by neighbourhoods: until it is different enough from all kept weeks, then better."""

    def __init__(
        self,
        lns: NeighbourhoodSearch,
        first: Audit,
        kept: list[Kinds],
        floor: int,
        most_seconds: int | None,
        options: SolveOptions,
    ) -> None:
        columns = columns_of(lns.instance, first.evaluated.week)
        self._solver = lns.solver.widened(columns, options.signal())
        self._chosen = self._solver.candidates.places(columns)
        self._kept, self._floor, self._most, self._limits = kept, floor, most_seconds, options.limits
        self._best, self._excess = first, self._excess_of(kinds_of(lns.instance, first.evaluated.week))
        self._constraints = DifferenceConstraints(self._solver.model, kept)
        if most_seconds is not None:
            used = [day for day, lines in enumerate(first.evaluated.on) if lines]
            self._constraints.post_seconds(most_seconds, used)

    def run(self) -> Audit | None:
        """The other week, or None where the work did not get far enough away."""
        drawn = neighbourhoods(len(self._solver.instance.resolved.days), self._limits.columns)
        try:
            for _ in range(2 * self._limits.rounds):
                if not self._excess:
                    break
                room = self._best.score_units - self._floor
                least = LeastSum(self._constraints.total(), self._floor + min(TANGENT_MARGIN, room // 2))
                self._search(next(drawn), least)
            if self._excess:
                return None
            self._constraints.hold()
            for _ in range(self._limits.rounds // 2):
                self._search(next(drawn), None)
        except Interrupted:
            pass
        return None if self._excess else self._best

    def _search(self, place: Neighbourhood, least: LeastSum | None) -> None:
        self._solver.search(place, self._chosen, self._limits.work, self.accept, least)

    def accept(self, columns: Chosen) -> bool:
        """Whether the week of these columns is sound, good enough, and more different or, as different, better."""
        found = audit(self._solver.instance.resolved, self._solver.week(columns))
        if found.broken or found.score_units < self._floor:
            return False
        if self._most is not None and found.evaluated.week_seconds > self._most:
            return False
        kinds = kinds_of(self._solver.instance, found.evaluated.week)
        for week, kept in enumerate(self._kept):
            self._constraints.post_matching(week, shared(kinds, kept)[1])
        excess = self._excess_of(kinds)
        if (excess, -found.score_units) >= (self._excess, -self._best.score_units):
            return False
        self._best, self._excess, self._chosen = found, excess, columns
        return True

    def _excess_of(self, kinds: Kinds) -> int:
        """The lines or exercises too many that a week shares with the kept ones."""
        return sum(excess_over(kinds, kept) for kept in self._kept)
