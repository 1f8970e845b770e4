"""Large-neighbourhood search: the best week so far, made better by CP-SAT on some of its days at a time."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass

from setwright.solver.auditing import Audit, audit
from setwright.solver.linear.columns import Column
from setwright.solver.linear.instance import Instance
from setwright.solver.search.limits import Limits
from setwright.solver.search.neighbourhood.neighbourhood_solver import Chosen, NeighbourhoodSolver
from setwright.solver.search.neighbourhood.neighbourhoods import Neighbourhood, neighbourhoods

MOST_SKIPPED = 20
"""Neighbourhoods passed over, one after the other, because they are known to hold nothing better."""


@dataclass(frozen=True)
class Incumbent:
    """The best week so far: its columns among a solver's candidates, and its audit."""

    solver: NeighbourhoodSolver
    chosen: Chosen
    audit: Audit

    @property
    def columns(self) -> tuple[Column, ...]:
        """Its columns on days."""
        return tuple(self.solver.model.columns[j] for j in sorted(self.chosen))


class NeighbourhoodSearch:
    """The best week so far and the columns that make it."""

    def __init__(self, solver: NeighbourhoodSolver, limits: Limits, improved: Callable[[], None] | None = None) -> None:
        """`improved`, where somebody watches, is called at each better week, and at each glimpse of a first one."""
        self.solver, self.limits, self._improved = solver, limits, improved
        self.chosen: Chosen = frozenset()
        self.best: Audit | None = None
        self.glimpsed: Audit | None = None
        """The best that was come upon before there is a best week: for whoever watches, the search ignores it."""
        self._drawn = neighbourhoods(self.days, limits.columns)
        self._idle = 0
        """Neighbourhoods tried since the last better week."""
        self._exhausted: set[Neighbourhood] = set()
        """Neighbourhoods of the week at hand that hold nothing better."""

    @property
    def instance(self) -> Instance:
        """The brief's exercises and days."""
        return self.solver.instance

    @property
    def days(self) -> int:
        """The number of days in the week."""
        return len(self.instance.resolved.days)

    # ---- the best week

    def accept(self, columns: Chosen) -> bool:
        """Whether the week of these columns breaks nothing and scores more than the best; it is the best then."""
        found = audit(self.instance.resolved, self.solver.week(columns))
        if found.broken or (self.best is not None and found.score_units <= self.best.score_units):
            return False
        self.best, self.chosen, self._idle = found, columns, 0
        self._exhausted.clear()
        if self._improved:
            self._improved()
        return True

    def _glimpse(self, columns: Chosen) -> None:
        """Show the week of some columns, if it breaks nothing, while what they were found in is still being solved."""
        assert self._improved
        found = audit(self.instance.resolved, self.solver.week(columns))
        if not found.broken and (self.glimpsed is None or found.score_units > self.glimpsed.score_units):
            self.glimpsed = found
            self._improved()

    def accept_from(self, solver: NeighbourhoodSolver, columns: Chosen) -> bool:
        """The same for columns of another solver, which is used from then on."""
        before, self.solver = self.solver, solver
        accepted = self.accept(columns)
        if not accepted:
            self.solver = before
        return accepted

    def incumbent(self) -> Incumbent | None:
        """The best week as it is now; None before the first."""
        return Incumbent(self.solver, self.chosen, self.best) if self.best else None

    def restore(self, incumbent: Incumbent) -> None:
        """Forget the weeks that came after an incumbent."""
        self.solver, self.chosen, self.best, self._idle = incumbent.solver, incumbent.chosen, incumbent.audit, 0

    # ---- better weeks

    def search(self, place: Neighbourhood, work: float) -> bool:
        """Solve one neighbourhood and keep what is better; whether it was solved to its end. Raises Interrupted."""
        glimpse = self._glimpse if self._improved and self.best is None else None
        return self.solver.search(place, self.chosen, work, self.accept, glimpse=glimpse).exhausted

    def improve(self, rounds: int) -> int:
        """Try so many neighbourhoods one after the other, fewer once many found nothing; returns how many it tried.

        Raises Interrupted.
        """
        for tried in range(rounds):
            self.solver.signal.check()
            if self._idle >= self.limits.idle_rounds:
                return tried
            self._idle += 1
            place, before = self._next(), self.chosen
            self._remember(place, self.search(place, self.limits.work_for(self.days)), before)
        return rounds

    def _next(self) -> Neighbourhood:
        """The next neighbourhood that may hold something better; where many may not, one with more columns open."""
        for _ in range(MOST_SKIPPED):
            place = next(self._drawn)
            if place not in self._exhausted:
                return place
        place = next(self._drawn)
        return Neighbourhood(place.days, 2 * place.columns, place.used)

    def _remember(self, place: Neighbourhood, exhausted: bool, before: Chosen) -> None:
        """Keep in mind a neighbourhood that was solved to its end and changed nothing."""
        if exhausted and self.chosen == before:
            self._exhausted.add(place)
