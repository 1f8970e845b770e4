"""A changed brief solved anew from a week at hand, and the answer kept as near to that week as its score allows."""

from __future__ import annotations

from collections.abc import Callable
from contextlib import suppress
from dataclasses import dataclass

from setwright.catalogue.entries import Catalogue
from setwright.solver.auditing import Audit, audit
from setwright.solver.brief.schema import Brief
from setwright.solver.engines.infeasibility import conflict_of
from setwright.solver.evaluation.finding import UNITS, ClashMember
from setwright.solver.evaluation.resolved_brief import ResolvedBrief
from setwright.solver.evaluation.week import Week
from setwright.solver.linear.columns import Instance, instance_of
from setwright.solver.linear.linear_model import LinearModel
from setwright.solver.rulebook import resolve
from setwright.solver.search.initial_solution import widened
from setwright.solver.search.limits import Limits
from setwright.solver.search.neighbourhood_search import NeighbourhoodSearch, Stopped
from setwright.solver.search.searching import search
from setwright.solver.search.secondary.fewest_minutes import fewest_minutes_week
from setwright.solver.search.secondary.minimal_change import nearest_week, old_columns
from setwright.solver.search.warm_start import columns_of


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
    """No week: the smallest clash, or no conflicts where the search only ended before it found a week."""

    resolved: ResolvedBrief
    conflicts: tuple[ClashMember, ...]
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
    resolved = resolve(brief, catalogue)
    instance = instance_of(resolved)
    outcome = search(instance, limits, None, stopped)
    wanted = (column for week in (previous, *seeds) for column in old_columns(instance, week))
    lns = widened(outcome.lns, wanted, limits)
    seeded = [lns.take(columns) for seed in (previous, *seeds) if (columns := _columns_of_week(lns.model, seed))]
    if any(seeded):
        _search_on(lns, limits)
    if lns.best is None:
        return unsolved(instance, outcome.ended_by, limits)
    bound = max(outcome.bound, float(lns.best.score_units))
    return Reoptimised(_nearest(lns, resolved, limits, previous, seeds), bound, outcome.ended_by)


def unsolved(instance: Instance, ended_by: str, limits: Limits) -> Unsolved:
    """What stands in the way of any week; no conflicts where the search was stopped or ran out of time."""
    conflicts = () if ended_by in ("stopped", "time limit") else conflict_of(instance, limits.seconds)
    return Unsolved(instance.resolved, conflicts, ended_by)


def _search_on(lns: NeighbourhoodSearch, limits: Limits) -> None:
    """Search on for half the usual rounds, from the week at hand."""
    with suppress(Stopped):
        lns.improve(limits.rounds_for(len(lns.instance.resolved.days)) // 2)


def _nearest(
    lns: NeighbourhoodSearch, resolved: ResolvedBrief, limits: Limits, previous: Week, seeds: tuple[Week, ...]
) -> Audit:
    """The search's best week, as near to `previous` as its score allows; in efficiency the shortest one."""
    if resolved.goal == "efficiency":
        return fewest_minutes_week(lns, limits).audit
    near = nearest_week(lns, previous, 0.0, limits).audit
    found = [near, *(a for seed in seeds if not (a := audit(resolved, seed)).broken)]
    return max(found, key=lambda a: a.score_units)


def _columns_of_week(model: LinearModel, week: Week) -> frozenset[int] | None:
    """The model's columns that make a week, or None where one of its lines is not among them."""
    places = {column: j for j, column in enumerate(model.columns)}
    made = columns_of(model.instance, week)
    return frozenset(places[c] for c in made) if made and all(c in places for c in made) else None
