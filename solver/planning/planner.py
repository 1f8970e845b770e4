"""A brief, a catalogue and options in; a solved and audited week, a clash, or no week in time."""

from __future__ import annotations

from dataclasses import replace

from setwright.catalogue.entries import Catalogue
from setwright.solver.brief.parsed_brief import ParsedBrief
from setwright.solver.engines.infeasibility import conflict_of
from setwright.solver.evaluation.finding import UNITS
from setwright.solver.evaluation.week import Week
from setwright.solver.linear.instance import instance_of
from setwright.solver.planning.delivery import check, delivered
from setwright.solver.planning.empty_week import what_leaves_no_room
from setwright.solver.planning.ends import Clash, End, OutOfTime, Solved
from setwright.solver.rulebook import resolve
from setwright.solver.search.best_week import Outcome, search
from setwright.solver.search.bounding import relaxation_bound
from setwright.solver.search.neighbourhood.neighbourhood_search import NeighbourhoodSearch
from setwright.solver.search.secondary.diverse_weeks import DiverseWeek, diverse_weeks
from setwright.solver.search.secondary.fewest_minutes import fewest_minutes_week
from setwright.solver.search.secondary.least_shortfall import least_shortfall_week
from setwright.solver.search.secondary.minimal_change import NearestWeek, nearest_week
from setwright.solver.search.solve_options import SolveOptions
from setwright.solver.search.stopping import Interrupted

APART_SHARE = 0.02
"""The share of the stimulus that another week may cost (convention)."""
NEAR_SHARE = 0.02
"""The share of the stimulus that staying near an earlier week may cost (convention)."""
USUAL = SolveOptions()


def plan(parsed: ParsedBrief, catalogue: Catalogue, options: SolveOptions = USUAL) -> End:
    """The end of planning one brief; the same brief, catalogue and work limits give the same week.

    Raises AuditFailed where the week found breaks a rule, which is a defect of setwright.
    """
    return _planned(parsed, catalogue, options.started())[0]


def plan_apart(
    parsed: ParsedBrief,
    catalogue: Catalogue,
    count: int,
    share: float = APART_SHARE,
    options: SolveOptions = USUAL,
) -> tuple[End, tuple[DiverseWeek, ...]]:
    """The brief's week and up to `count` others, clearly different, that keep 1 - `share` of its stimulus; best first.

    In efficiency they take no more seconds than the first. Each is audited; none where there is no week, or the search
    was stopped or met its wall-clock limit. Raises AuditFailed as `plan` does.
    """
    options = options.started()
    end, outcome = _planned(parsed, catalogue, options)
    if not isinstance(end, Solved) or outcome.ended_by.interrupted:
        return end, ()
    found = diverse_weeks(outcome.lns, end.audit, count, share, options, no_longer=end.shortest is not None)
    for other in found:
        check(other.audit, outcome.bound)
    return end, found


def plan_near(
    parsed: ParsedBrief,
    catalogue: Catalogue,
    previous: Week,
    share: float = NEAR_SHARE,
    options: SolveOptions = USUAL,
) -> tuple[End, NearestWeek | None]:
    """The brief's week of least change from `previous` among those that keep 1 - `share` of the best's stimulus.

    `previous` has one session for each of the brief's days; raises ValueError otherwise, AuditFailed as `plan` does.
    Minutes are not cut in efficiency: staying near comes first. The second value says the change in sets, the best
    score and the floor; None where there is no week.
    """
    options = options.started()
    # A week with an empty day is no start: the search fills days better from nothing.
    start = previous if all(previous.days) else None
    end, outcome = _searched(parsed, catalogue, options, start)
    if not isinstance(end, Solved):
        return end, None
    found = nearest_week(outcome.lns, previous, share, options)
    check(found.audit, outcome.bound)
    return replace(end, audit=found.audit, bound_units=max(end.bound_units, found.audit.score_units)), found


def _planned(parsed: ParsedBrief, catalogue: Catalogue, options: SolveOptions) -> tuple[End, Outcome]:
    """The end of planning, with the search's outcome to go on from."""
    end, outcome = _searched(parsed, catalogue, options)
    if not isinstance(end, Solved) or outcome.ended_by.interrupted:
        return end, outcome
    if end.resolved.goal == "efficiency":
        end = _shortest(end, outcome.lns, options)
    if options.pairs_note and any(line.entry.partner for line in end.audit.evaluated.lines):
        end = replace(end, best_without_pairs=_best_without_pairs(end, catalogue))
    return end, outcome


def _searched(
    parsed: ParsedBrief, catalogue: Catalogue, options: SolveOptions, start: Week | None = None
) -> tuple[End, Outcome]:
    """The end of the search alone, from a week at hand or from none, and the search's outcome to go on from."""
    resolved = resolve(parsed.brief, catalogue)
    instance = instance_of(resolved)
    outcome, lacking = search(instance, options, start, fill_days=True), None
    if outcome.best is None and not outcome.ended_by.interrupted:
        conflicts = conflict_of(instance, options.seconds)
        if conflicts:
            return Clash(parsed, resolved, conflicts), outcome
        try:
            lacking = least_shortfall_week(instance, options)
        except Interrupted as interrupted:
            outcome = replace(outcome, ended_by=interrupted.ended_by)
        if lacking and not lacking.broken:
            outcome, lacking = search(instance, options, lacking.evaluated.week, fill_days=True), None
    if outcome.best is None:
        return OutOfTime(parsed, resolved, outcome.ended_by, options.limits, lacking), outcome
    week = outcome.best.evaluated.week
    if not any(week.days) and (closing := what_leaves_no_room(resolved)):
        return Clash(parsed, resolved, closing), outcome
    return delivered(parsed, resolved, week, outcome.bound, outcome.ended_by, options.limits), outcome


def _shortest(end: Solved, lns: NeighbourhoodSearch, options: SolveOptions) -> Solved:
    """Efficiency's second step: the fewest minutes that keep the share of the stimulus."""
    found = fewest_minutes_week(lns, options)
    check(found.audit, float(end.bound_units))
    return replace(end, audit=found.audit, shortest=found)


def _best_without_pairs(end: Solved, catalogue: Catalogue) -> float:
    """The score, in index points, that no week of the same brief without pairs can pass."""
    brief = end.parsed.brief.model_copy(update={"pairs": False})
    return relaxation_bound(instance_of(resolve(brief, catalogue))) / UNITS
