"""The rest of a week planned again: the week with what is done to the letter, or why there is none."""

from __future__ import annotations

from setwright.solver.brief.parsed_brief import ParsedBrief
from setwright.solver.engines.infeasibility import conflict_beside
from setwright.solver.evaluation.finding import ClashMember
from setwright.solver.evaluation.resolved_brief import ResolvedBrief
from setwright.solver.planning.ends import Clash, OutOfTime
from setwright.solver.search.secondary.rest_of_week import NoRest, RestOfWeek, rest_of_week
from setwright.solver.search.secondary.standing_week import StandingWeek
from setwright.solver.search.solve_options import SolveOptions


def plan_rest(
    parsed: ParsedBrief, resolved: ResolvedBrief, standing: StandingWeek, share: float, options: SolveOptions
) -> RestOfWeek | Clash | OutOfTime:
    """The free days of a standing week solved anew, with few changed lines among those of at least `share` of the best.

    A clash names what cannot be met beside the sessions that are done. Only the stopping of `options` has a part: the
    work is fixed.
    """
    options = options.started()
    found = rest_of_week(resolved, standing, share, options)
    if not isinstance(found, NoRest):
        return found
    conflicts = () if found.ended_by.interrupted else _conflicts(found, standing, options)
    if conflicts:
        return Clash(parsed, resolved, conflicts)
    return OutOfTime(parsed, resolved, found.ended_by, options.limits)


def _conflicts(found: NoRest, standing: StandingWeek, options: SolveOptions) -> tuple[ClashMember, ...]:
    return conflict_beside(found.instance, found.held, found.done, standing.free, options.seconds)
