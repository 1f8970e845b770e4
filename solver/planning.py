"""The one public act: a brief, a catalogue and limits in; a solved and audited week, a clash, or no time left out."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass, replace

from setwright.catalogue.entries import Catalogue
from setwright.catalogue.faults import Fault, SetwrightError
from setwright.solver.auditing import Audit, audit
from setwright.solver.brief.parsed_brief import ParsedBrief
from setwright.solver.engines.infeasibility import conflict_of
from setwright.solver.evaluation.finding import UNITS, ClashMember
from setwright.solver.evaluation.resolved_brief import ResolvedBrief
from setwright.solver.evaluation.week import Week
from setwright.solver.linear.columns import instance_of
from setwright.solver.rulebook import resolve
from setwright.solver.search.limits import DEFAULT, SEARCHES, Limits
from setwright.solver.search.searching import Outcome, Progress, search
from setwright.solver.search.secondary.diverse_weeks import DiverseWeek, diverse_weeks
from setwright.solver.search.secondary.fewest_minutes import ShortestWeek, fewest_minutes_week
from setwright.solver.search.secondary.minimal_change import NearestWeek, nearest_week

Watch = Callable[[Progress], None]
APART_SHARE = 0.02
"""The share of the stimulus that another week may cost (convention)."""
NEAR_SHARE = 0.02
"""The share of the stimulus that staying near an earlier week may cost (convention)."""


class AuditFailed(SetwrightError):
    """A solved week breaks a hard rule: our bug, never the user's."""


@dataclass(frozen=True)
class Solved:
    """A week that the audit passes, with the bound that no week can pass."""

    parsed: ParsedBrief
    resolved: ResolvedBrief
    audit: Audit
    bound_units: int
    ended_by: str
    """proved | work limit | time limit | stopped"""
    limits: Limits
    shortest: ShortestWeek | None = None
    """In efficiency: the best score before the minutes were cut, and what was proven of the minutes."""
    pairs_would_add: float | None = None
    """Index points that a quick search with pairs found above this week's stimulus, where pairs are off."""

    @property
    def stimulus(self) -> float:
        return self.audit.stimulus

    @property
    def score(self) -> float:
        return self.audit.score

    @property
    def bound(self) -> float:
        return self.bound_units / UNITS

    @property
    def proven_units(self) -> int:
        """The score that the bound speaks of."""
        return self.audit.score_units if self.shortest is None else self.shortest.best_units

    @property
    def gap(self) -> float:
        """Index points between the bound and the score; in efficiency the score before the minutes were cut."""
        return (self.bound_units - self.proven_units) / UNITS

    @property
    def gap_share(self) -> float:
        """The gap as a share of the stimulus."""
        return self.gap / self.stimulus if self.stimulus > 0 else 0.0


@dataclass(frozen=True)
class Clash:
    """A brief that no week can meet: the smallest set of wishes and rules that clash."""

    parsed: ParsedBrief
    resolved: ResolvedBrief
    conflicts: tuple[ClashMember, ...]


@dataclass(frozen=True)
class OutOfTime:
    """No week was found before the limits ended the search."""

    parsed: ParsedBrief
    resolved: ResolvedBrief
    ended_by: str
    limits: Limits


End = Solved | Clash | OutOfTime


def plan(
    parsed: ParsedBrief,
    catalogue: Catalogue,
    limits: Limits = SEARCHES[DEFAULT],
    watch: Watch | None = None,
    stopped: Callable[[], bool] = lambda: False,
    side_by_side: bool = True,
    with_pairs_note: bool = True,
) -> End:
    """The end of planning one brief; the same brief, catalogue and limits give the same week."""
    return completed(parsed, catalogue, limits, watch, stopped, side_by_side, with_pairs_note)[0]


def completed(
    parsed: ParsedBrief,
    catalogue: Catalogue,
    limits: Limits,
    watch: Watch | None = None,
    stopped: Callable[[], bool] = lambda: False,
    side_by_side: bool = True,
    with_pairs_note: bool = True,
) -> tuple[End, Outcome]:
    """The end of planning, with the search's outcome to go on from."""
    solved, outcome = searched(parsed, catalogue, limits, watch, stopped, side_by_side)
    if not isinstance(solved, Solved) or outcome.ended_by == "stopped":
        return solved, outcome
    if solved.resolved.goal == "efficiency":
        solved = shortest(solved, outcome, limits)
    if with_pairs_note and not solved.resolved.pairs and solved.resolved.goal == "balanced":
        solved = replace(solved, pairs_would_add=pairs_gain(solved, catalogue, stopped))
    return solved, outcome


def plan_apart(
    parsed: ParsedBrief,
    catalogue: Catalogue,
    count: int,
    share: float = APART_SHARE,
    limits: Limits = SEARCHES[DEFAULT],
    watch: Watch | None = None,
    stopped: Callable[[], bool] = lambda: False,
    side_by_side: bool = True,
) -> tuple[End, tuple[DiverseWeek, ...]]:
    """The brief's week and up to `count` others, clearly different, that keep 1 - `share` of its stimulus; best first.

    In efficiency they take no more seconds than the first. Each is audited; none where there is no week.
    """
    end, outcome = completed(parsed, catalogue, limits, watch, stopped, side_by_side)
    if not isinstance(end, Solved) or outcome.ended_by == "stopped":
        return end, ()
    found = diverse_weeks(outcome.lns, end.audit, count, share, limits, no_longer=end.shortest is not None)
    for other in found:
        checked(other.audit, outcome.bound)
    return end, found


def plan_near(
    parsed: ParsedBrief,
    catalogue: Catalogue,
    previous: Week,
    share: float = NEAR_SHARE,
    limits: Limits = SEARCHES[DEFAULT],
    watch: Watch | None = None,
    stopped: Callable[[], bool] = lambda: False,
    side_by_side: bool = True,
) -> tuple[End, NearestWeek | None]:
    """The brief's week of least change from `previous` among those that keep 1 - `share` of the best's stimulus.

    `previous` has one session for each of the brief's days. Its minutes are not cut in efficiency: staying near comes
    first. The second value says the change in sets, the best score and the floor; None where there is no week.
    """
    # A week with an empty day is no start: the search fills days better from nothing.
    start = previous if all(previous.days) else None
    end, outcome = searched(parsed, catalogue, limits, watch, stopped, side_by_side, start)
    if not isinstance(end, Solved):
        return end, None
    found = nearest_week(outcome.lns, previous, share, limits)
    checked(found.audit, outcome.bound)
    return replace(end, audit=found.audit, bound_units=max(end.bound_units, found.audit.score_units)), found


def searched(
    parsed: ParsedBrief,
    catalogue: Catalogue,
    limits: Limits,
    watch: Watch | None = None,
    stopped: Callable[[], bool] = lambda: False,
    side_by_side: bool = True,
    start: Week | None = None,
) -> tuple[End, Outcome]:
    """The end of the search alone, from a week at hand or from none, and the search's outcome to go on from."""
    resolved = resolve(parsed.brief, catalogue)
    instance = instance_of(resolved)
    outcome = search(instance, limits, watch, stopped, side_by_side, start, refill=True)
    if outcome.best is not None:
        return deliver(parsed, resolved, outcome, limits), outcome
    conflicts = conflict_of(instance, limits.seconds) if outcome.ended_by not in ("stopped", "time limit") else ()
    if conflicts:
        return Clash(parsed, resolved, conflicts), outcome
    return OutOfTime(parsed, resolved, outcome.ended_by, limits), outcome


def deliver(parsed: ParsedBrief, resolved: ResolvedBrief, outcome: Outcome, limits: Limits) -> Solved:
    """The search's best week, audited anew from the printed week alone."""
    if outcome.best is None:
        raise AssertionError("a week is delivered only when there is one")
    found = audit(resolved, outcome.best.evaluated.week)
    checked(found, outcome.bound)
    bound_units = max(round(min(outcome.bound, 1e12)), found.score_units)
    return Solved(parsed, resolved, found, bound_units, outcome.ended_by, limits)


def checked(found: Audit, bound: float) -> None:
    """Raise when a week that is about to be delivered breaks a rule or passes its bound."""
    faults = [Fault("audit", f"the planned week breaks a rule: {finding}") for finding in found.broken]
    if found.score_units > bound + 1:
        faults.append(Fault("audit", f"the score {found.score_units} passes the bound {bound:.0f}"))
    if faults:
        raise AuditFailed([*faults, Fault("", "this is a defect of setwright, please report the brief")])


def shortest(solved: Solved, outcome: Outcome, limits: Limits) -> Solved:
    """Efficiency's second step: the fewest minutes that keep the share of the stimulus."""
    found = fewest_minutes_week(outcome.lns, limits)
    checked(found.audit, float(solved.bound_units))
    return replace(solved, audit=found.audit, shortest=found)


def pairs_gain(solved: Solved, catalogue: Catalogue, stopped: Callable[[], bool]) -> float:
    """What a quick search with pairs allowed adds to the stimulus, in index points."""
    brief = solved.parsed.brief.model_copy(update={"pairs": True})
    instance = instance_of(resolve(brief, catalogue))
    outcome = search(instance, SEARCHES["quick"], None, stopped)
    if outcome.best is None:
        return 0.0
    return max(0.0, outcome.best.stimulus - solved.stimulus)
