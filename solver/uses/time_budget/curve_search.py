"""The search for a time curve: the best week for each amount, never falling, each audited and with its proven bound."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from dataclasses import dataclass, replace
from itertools import pairwise

from setwright.catalogue.entries import Catalogue
from setwright.solver.auditing import Audit, audit
from setwright.solver.brief.parsed_brief import ParsedBrief
from setwright.solver.evaluation.resolved_brief import ResolvedBrief
from setwright.solver.planning import delivered, search_only
from setwright.solver.rulebook import resolve
from setwright.solver.search.limits import Limits
from setwright.solver.search.solve_options import SolveOptions
from setwright.solver.search.stopping import EndedBy
from setwright.solver.uses.time_budget.amounts import each_session, each_week, so_many_days
from setwright.solver.uses.time_budget.time_curve import CurvePoint, Kind, TimeCurve

AMOUNTS = {"minutes": each_session, "weekly": each_week, "days": so_many_days}
NEAR = 0.01
"""A week within this share of its index of what no longer week can pass is not searched again (convention)."""
WALL_LIMITS = 5.0
"""Times a search's own wall-clock limit: a curve is to be the same on a busy machine."""
Tell = Callable[[int, int], None]
"""Told before each search: the amount, and how many amounts are left."""
Found = Callable[[Callable[[], TimeCurve]], None]
"""Told after each search: how the curve of the weeks so far is made, which takes an audit of each."""


def curve_of(
    parsed: ParsedBrief,
    kind: Kind,
    amounts: Sequence[int],
    catalogue: Catalogue,
    limits: Limits,
    tell: Tell | None = None,
    stopped: Callable[[], bool] = lambda: False,
    found: Found = lambda so_far: None,
) -> TimeCurve:
    """The curve over some rising amounts; the same brief, amounts and limits give the same curve.

    Minutes: the most is searched first, because its bound holds for every shorter week (a week that fits a day fits
    a longer one), then the others from the least up, each from the best week before it.
    Days: each number of days is searched by itself, and a day may be left unused.
    """
    seconds = WALL_LIMITS * SolveOptions(limits).limit
    briefs = [(amount, AMOUNTS[kind](parsed, amount)) for amount in amounts]
    states = [PointState(amount, brief, resolve(brief.brief, catalogue)) for amount, brief in briefs]
    options = SolveOptions(limits, wall_clock_limit=seconds, stopped=stopped)
    search = CurveSearch(states, options, tell or (lambda *_: None))

    def curve(some: Sequence[PointState]) -> TimeCurve:
        points = tuple(_point_of(state, limits) for state in some)
        return TimeCurve(kind, parsed, limits, points, search.searches, search.ended_by, seconds)

    search.searched = lambda: found(lambda: curve([state for state in states if state.best is not None]))
    if kind == "days":
        search.by_days()
    else:
        search.by_minutes()
    return curve(states)


@dataclass
class PointState:
    """One amount while the curve is made: its brief, and the best week and lowest bound so far, in score units."""

    amount: int
    parsed: ParsedBrief
    resolved: ResolvedBrief
    best: Audit | None = None
    week_of: int | None = None
    bound: float = float("inf")
    ended_by: EndedBy = EndedBy.WORK_LIMIT

    def offer(self, other: PointState) -> None:
        """Take another amount's week where it is better: audited under this brief, or as it is from a lesser amount."""
        if other.best is None:
            return
        as_it_is = (other.best,) if other.amount < self.amount else ()
        again = self._audited_here(other.best)
        for found in ((again,) if again else ()) + as_it_is:
            if self.best is None or found.score_units > self.best.score_units:
                self.best, self.week_of = found, other.week_of

    def _audited_here(self, found: Audit) -> Audit | None:
        """A week audited under this amount's brief; None where it does not pass."""
        if len(found.evaluated.week.days) != len(self.resolved.days):
            return None
        again = audit(self.resolved, found.evaluated.week)
        return None if again.broken else again


@dataclass
class CurveSearch:
    """The amounts in rising order, and the searches made on them."""

    states: list[PointState]
    options: SolveOptions
    tell: Tell
    searches: int = 0
    ended_by: EndedBy = EndedBy.WORK_LIMIT
    searched: Callable[[], None] = lambda: None

    def by_days(self) -> None:
        """Search each by itself, then take the best of at most so many days."""
        for place, state in enumerate(self.states):
            self.search_one(state, None, len(self.states) - place)
        for before, state in pairwise(self.states):
            state.bound = max(state.bound, before.bound)
            state.offer(before)

    def by_minutes(self) -> None:
        """Search the most first, then from the least up, from week to week; then offer weeks to neighbours."""
        *rising, top = self.states
        self.search_one(top, None, len(self.states))
        before: PointState | None = None
        for place, state in enumerate(rising):
            for other in (before, top):
                if other is not None:
                    state.offer(other)
            state.bound = top.bound
            if not _near_its_bound(state):
                self.search_one(state, state.best, len(rising) - place)
            before = state
        for state, longer in reversed(list(pairwise(self.states))):
            state.bound = min(state.bound, longer.bound)
            state.offer(longer)
        for shorter, state in pairwise(self.states):
            state.offer(shorter)

    def search_one(self, state: PointState, start: Audit | None, left: int) -> None:
        """Search one amount, from a week at hand if there is one."""
        if self.options.stopped():
            self.ended_by = EndedBy.STOPPED
            return
        self.tell(state.amount, left)
        self.searches += 1
        limits = self.options.limits if state is self.states[-1] else _lighter(self.options.limits)
        week = None if start is None else start.evaluated.week
        outcome = search_only(state.resolved, replace(self.options, limits=limits), week)
        state.bound, state.ended_by = min(state.bound, outcome.bound), outcome.ended_by
        if outcome.ended_by.interrupted:
            self.ended_by = outcome.ended_by
        if outcome.best is not None and (start is None or outcome.best.score_units > start.score_units):
            state.best, state.week_of = outcome.best, state.amount
        self.searched()


def _lighter(limits: Limits) -> Limits:
    """Limits for every amount but the most: a quick search leaves the bound of a week of many days at its relaxation.

    Branching on region patterns takes two thirds of a quick search of four days and lowers the bound by one point.
    """
    return replace(limits, pattern_nodes=0) if limits.name == "quick" else limits


def _near_its_bound(state: PointState) -> bool:
    """Whether the week at hand is so near to the bound that a search would win next to nothing."""
    best = state.best
    return best is not None and state.bound - best.score_units <= NEAR * best.stimulus_units


def _point_of(state: PointState, limits: Limits) -> CurvePoint:
    """The point of one amount, its week audited once more on the way out."""
    given = sum(day.minutes for day in state.resolved.days)
    if state.best is None:
        return CurvePoint(state.amount, given, None, None)
    bound = max(state.bound, float(state.best.score_units))
    own = state.best.evaluated.resolved
    parsed = replace(state.parsed, brief=own.brief)
    found = delivered(parsed, own, state.best.evaluated.week, bound, state.ended_by, limits)
    return CurvePoint(state.amount, given, found, state.week_of)
