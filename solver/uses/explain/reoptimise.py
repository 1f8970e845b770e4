"""A changed brief solved anew from a week at hand, and the answer kept as near to that week as its score allows."""

from __future__ import annotations

from collections.abc import Callable
from contextlib import suppress
from dataclasses import dataclass

from setwright.catalogue.entries import Catalogue
from setwright.solver.brief.schema import Brief
from setwright.solver.engines.infeasibility import Conflict, conflict_of
from setwright.solver.linear.columns import Board, board_of
from setwright.solver.search.limits import Limits
from setwright.solver.search.searching import search
from setwright.solver.search.neighbourhood_search import Climb, Stopped
from setwright.solver.search.secondary.minimal_change import old_columns, settle_near
from setwright.solver.search.initial_solution import widened
from setwright.solver.search.secondary.fewest_minutes import shorten
from setwright.solver.search.warm_start import columns_of
from setwright.solver.linear.linear_model import Sheet
from setwright.solver.auditing import Audit, audit
from setwright.solver.evaluation.resolving import resolve
from setwright.solver.evaluation.finding import UNITS
from setwright.solver.evaluation.resolved_brief import Terms
from setwright.solver.evaluation.week import Week


@dataclass(frozen=True)
class Reoptimised:
    """The best week found for a brief, the score no week can pass, and how the search ended."""

    audit: Audit
    bound_units: float
    ended_by: str

    @property
    def gap(self) -> float:
        """Index points by which a better week is not ruled out."""
        return max(0.0, self.bound_units - self.audit.score_units) / UNITS


@dataclass(frozen=True)
class Unsolved:
    """No week: the smallest clash, or nothing where the search only ran out."""

    terms: Terms
    conflicts: tuple[Conflict, ...]
    ended_by: str


def reoptimised(
    brief: Brief,
    catalogue: Catalogue,
    limits: Limits,
    previous: Week,
    seeds: tuple[Week, ...] = (),
    stopped: Callable[[], bool] = lambda: False,
) -> Reoptimised | Unsolved:
    """The best week of a brief, at least as good as any of `seeds` that it allows, and near to `previous`.

    `previous` has one session for each of the brief's days. The same input gives the same week.
    """
    terms = resolve(brief, catalogue)
    board = board_of(terms)
    outcome = search(board, limits, None, stopped)
    wanted = (column for week in (previous, *seeds) for column in old_columns(board, week))
    climb = widened(outcome.climb, wanted, limits)
    seeded = [climb.take(columns) for seed in (previous, *seeds) if (columns := columns_at(climb.sheet, seed))]
    if any(seeded):
        climb_on(climb, limits)
    if climb.best is None:
        return unsolved(board, outcome.ended_by, limits)
    bound = max(outcome.bound, float(climb.best.score_units))
    return Reoptimised(nearest(climb, terms, limits, previous, seeds), bound, outcome.ended_by)


def unsolved(board: Board, ended_by: str, limits: Limits) -> Unsolved:
    """What stands in the way of any week; a search that was stopped or ran out names nothing."""
    conflicts = () if ended_by in ("stopped", "time limit") else conflict_of(board, limits.seconds)
    return Unsolved(board.terms, conflicts, ended_by)


def climb_on(climb: Climb, limits: Limits) -> None:
    """Half the usual rounds more, from the week at hand."""
    with suppress(Stopped):
        climb.climb(limits.rounds_for(len(climb.board.terms.days)) // 2)


def nearest(climb: Climb, terms: Terms, limits: Limits, previous: Week, seeds: tuple[Week, ...]) -> Audit:
    """The climb's best week with as few changes as its score allows; in efficiency the shortest one."""
    if terms.goal == "efficiency":
        return shorten(climb, limits).audit
    near = settle_near(climb, previous, 0.0, limits).audit
    found = [near, *(a for seed in seeds if not (a := audit(terms, seed)).broken)]
    return max(found, key=lambda a: a.score_units)


def columns_at(sheet: Sheet, week: Week) -> frozenset[int] | None:
    """The columns of a sheet that make a week, or None where one of its lines is not among them."""
    places = {column: j for j, column in enumerate(sheet.columns)}
    made = columns_of(sheet.board, week)
    return frozenset(places[c] for c in made) if made and all(c in places for c in made) else None
