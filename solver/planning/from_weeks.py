"""Searches for what is asked about a brief that is solved: its best score alone, and changes near a week at hand."""

from __future__ import annotations

from dataclasses import dataclass

from setwright.solver.auditing import Audit, audit
from setwright.solver.engines.infeasibility import conflict_of
from setwright.solver.evaluation.finding import UNITS, ClashMember
from setwright.solver.evaluation.resolved_brief import ResolvedBrief
from setwright.solver.evaluation.week import Week
from setwright.solver.linear.instance import Instance, instance_of
from setwright.solver.search.best_week import Outcome, search
from setwright.solver.search.neighbourhood.neighbourhood_search import NeighbourhoodSearch
from setwright.solver.search.secondary.fewest_minutes import fewest_minutes_week
from setwright.solver.search.secondary.going_on import go_on_from
from setwright.solver.search.secondary.minimal_change import NearestWeek, nearest_week
from setwright.solver.search.solve_options import SolveOptions
from setwright.solver.search.stopping import EndedBy


@dataclass(frozen=True)
class Reoptimised:
    """The best week found for a brief, the score in score units that no week can pass, and how the search ended."""

    audit: Audit
    bound_units: float
    ended_by: EndedBy

    @property
    def gap(self) -> float:
        """Index points by which a better week is not ruled out."""
        return max(0.0, self.bound_units - self.audit.score_units) / UNITS


@dataclass(frozen=True)
class Unsolved:
    """No week: the smallest clash, or nothing where the search ended before it knew."""

    resolved: ResolvedBrief
    conflicts: tuple[ClashMember, ...]
    ended_by: EndedBy


def search_only(resolved: ResolvedBrief, options: SolveOptions, start: Week | None = None) -> Outcome:
    """The week of the best score, its bound and how the search ended: no minutes cut, no clash named.

    With `start` the search goes on from that week, if all its lines are open in the brief and it breaks nothing.
    """
    return search(instance_of(resolved), options, start)


def best_and_nearest(
    resolved: ResolvedBrief, week: Week, share: float, options: SolveOptions
) -> tuple[Reoptimised, NearestWeek] | Unsolved:
    """The best week of a brief, and the week nearest to `week` that keeps 1 - `share` of the best's stimulus.

    `week` has one session for each of the brief's days; raises ValueError otherwise.
    """
    instance = instance_of(resolved)
    outcome = search(instance, options)
    if outcome.best is None:
        return _unsolved(instance, outcome.ended_by, options)
    nearest = nearest_week(outcome.lns, week, share, options)
    return Reoptimised(outcome.best, outcome.bound, outcome.ended_by), nearest


def reoptimise(
    resolved: ResolvedBrief, previous: Week, seeds: tuple[Week, ...], options: SolveOptions
) -> Reoptimised | Unsolved:
    """The best week of a changed brief, at least as good as any of `seeds` that it allows, and near to `previous`.

    In efficiency the shortest week instead of the nearest. `previous` has one session for each of the brief's days;
    raises ValueError otherwise. The same input gives the same week.
    """
    instance = instance_of(resolved)
    outcome = search(instance, options)
    lns = go_on_from(outcome.lns, (previous, *seeds), options)
    if lns.best is None:
        return _unsolved(instance, outcome.ended_by, options)
    bound = max(outcome.bound, float(lns.best.score_units))
    return Reoptimised(_nearest_or_shortest(lns, previous, seeds, options), bound, outcome.ended_by)


def _nearest_or_shortest(
    lns: NeighbourhoodSearch, previous: Week, seeds: tuple[Week, ...], options: SolveOptions
) -> Audit:
    """The search's best week with as few changes as its score allows; in efficiency the shortest one."""
    resolved = lns.instance.resolved
    if resolved.goal == "efficiency":
        return fewest_minutes_week(lns, options).audit
    near = nearest_week(lns, previous, 0.0, options).audit
    found = [near, *(a for seed in seeds if not (a := audit(resolved, seed)).broken)]
    return max(found, key=lambda a: a.score_units)


def _unsolved(instance: Instance, ended_by: EndedBy, options: SolveOptions) -> Unsolved:
    """What stands in the way of any week; a search that was interrupted names nothing."""
    conflicts = () if ended_by.interrupted else conflict_of(instance, options.seconds)
    return Unsolved(instance.resolved, conflicts, ended_by)
