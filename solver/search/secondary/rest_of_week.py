"""The rest of a week planned again beside the sessions that are done: the best, then one of few changed lines."""

from __future__ import annotations

import math
import sys
from dataclasses import dataclass

from setwright.solver.auditing import Audit, audit
from setwright.solver.engines.build import day_model
from setwright.solver.engines.held_columns import columns_as_done, hold
from setwright.solver.evaluation.line_changes import changed_lines, line_changes
from setwright.solver.evaluation.resolved_brief import ResolvedBrief
from setwright.solver.linear.columns import Column
from setwright.solver.linear.instance import Instance, instance_of
from setwright.solver.search.neighbourhood.neighbourhood_solver import (
    TANGENT_MARGIN,
    Chosen,
    LeastSum,
    NeighbourhoodSolver,
)
from setwright.solver.search.neighbourhood.neighbourhoods import Neighbourhood
from setwright.solver.search.secondary.line_counts import RULE as CHANGED_LINES
from setwright.solver.search.secondary.line_counts import changed_lines_of
from setwright.solver.search.secondary.session_kinds import LOST, charge_lost_kinds, kinds_lost, kinds_to_keep
from setwright.solver.search.secondary.standing_week import StandingWeek, candidates_beside, columns_still_open
from setwright.solver.search.solve_options import SolveOptions
from setwright.solver.search.stopping import EndedBy, Interrupted

COLUMNS = 100
"""Columns open on all free days together, the best ones and as many on each."""
BEST_WORK = 0.25
"""CP-SAT's deterministic time for the best rest of a week."""
FEWEST_WORK = 0.3
"""The same for the fewest changed lines among the weeks that are good enough."""
LAST_WORK = 0.2
"""The same for the best week of no more changed lines than that."""
WIDER = 4
"""Times the usual columns and work with which the days are tried again where no week was found."""
RULE = "no-chase"
"""What the cap on a session's sets is posted under; no rule of the rulebook."""


@dataclass(frozen=True)
class RestOfWeek:
    """The rest of a week as planned again: few changes within a share of the best score there was (score units)."""

    audit: Audit
    best_units: int


@dataclass(frozen=True)
class NoRest:
    """No rest of the week was found: the instance and the columns of what is done, to ask why."""

    instance: Instance
    held: tuple[Column, ...]
    done: Audit
    ended_by: EndedBy


def rest_of_week(
    resolved: ResolvedBrief, standing: StandingWeek, share: float, options: SolveOptions
) -> RestOfWeek | NoRest:
    """The free days of a week solved anew beside the done ones.

    First comes the best score; then, among weeks of at least that score less 1 - `share` of its stimulus, the fewest
    changed lines, and of these the best score. The same input gives the same week.
    """
    search = _RestSearch(resolved, standing, options)
    try:
        search.seek_best(1)
        if search.best is None:
            search.seek_best(WIDER)
        if search.best is not None:
            search.seek_fewest(share)
    except Interrupted as interrupted:
        search.ended_by = interrupted.ended_by
    if search.best is None:
        return NoRest(search.solver.instance, search.held, search.done, search.ended_by)
    return RestOfWeek(search.good_enough() or search.best, search.best.score_units)


class _RestSearch:
    """The best and the nearest rest of a week so far."""

    def __init__(self, resolved: ResolvedBrief, standing: StandingWeek, options: SolveOptions) -> None:
        self.resolved, self.standing = resolved, standing
        self.done = audit(resolved, standing.as_done)
        instance = instance_of(resolved, frozenset(entry.exercise for entry in standing.week.entries))
        self.held = columns_as_done(instance, self.done)
        candidates = candidates_beside(instance, self.held, standing)
        model = day_model(instance, candidates.columns)
        held = frozenset(range(len(self.held)))
        hold(model, held, self.done)
        self.planned: Chosen = held | candidates.places(columns_still_open(instance, standing.as_planned))
        self.chosen = self.planned
        self.nearest_chosen: Chosen = frozenset()
        unchanged = audit(resolved, standing.week)
        self.keep = kinds_to_keep(unchanged, standing.free, standing.shorter)
        charge_lost_kinds(model, self.keep)
        for day, most in standing.most_sets.items():
            model.constrain(RULE, model.total(lambda e, p: p.sets, day), high=most)
        self.solver = NeighbourhoodSolver(instance, candidates, model, options.signal())
        self.ended_by = EndedBy.WORK_LIMIT
        self.floor = sys.maxsize
        self.best = self.nearest = unchanged if self._is_sound(unchanged) else None

    def seek_best(self, times: int) -> None:
        """Seek the best score, with so many times the usual columns and work."""
        place = Neighbourhood(self.standing.free, times * COLUMNS // len(self.standing.free))
        self.solver.search(place, self.chosen, times * BEST_WORK, self._accept_best)

    def seek_fewest(self, share: float) -> None:
        """Seek the fewest changed lines among the weeks good enough, then the best week of no more lines than that.

        Good enough is `share` of the best's stimulus.
        """
        if self.best is None:
            return
        self.floor = self._floor(self.best, share)
        if self.good_enough():
            return
        model, free = self.solver.model, self.standing.free
        place = Neighbourhood(free, COLUMNS // len(free))
        lines = changed_lines_of(model, self.standing.as_planned, free)
        self.nearest, self.nearest_chosen = self.best, self.chosen
        room = self._worth(self.best) - self.floor
        least = LeastSum(lines, self.floor + min(TANGENT_MARGIN, room // 2))
        self.solver.search(place, self.nearest_chosen, FEWEST_WORK, self._accept_nearer, least)
        model.constrain(CHANGED_LINES, lines, high=self._changed(self.nearest))
        self.solver.search(place, self.nearest_chosen, LAST_WORK, self._accept_nearer)

    def good_enough(self) -> Audit | None:
        """The week of few changes, if it is worth enough."""
        return self.nearest if self.nearest is not None and self._worth(self.nearest) >= self.floor else None

    def _accept_best(self, columns: Chosen) -> bool:
        found = self._audited(columns)
        if not self._is_sound(found) or (self.best and self._worth(found) <= self._worth(self.best)):
            return False
        self.best, self.chosen = found, columns
        return True

    def _accept_nearer(self, columns: Chosen) -> bool:
        """Keep a sound week that is good enough and changes fewer lines, or as few for a better score."""
        found = self._audited(columns)
        sound = self._is_sound(found) and self._worth(found) >= self.floor
        if not sound or (self.nearest and self._nearness(found) <= self._nearness(self.nearest)):
            return False
        self.nearest, self.nearest_chosen = found, columns
        return True

    def _floor(self, best: Audit, share: float) -> int:
        """The least that a week good enough is worth.

        A rest of the week is good enough where the week is no worse than it was planned: a coach may have chosen so.
        """
        planned = self.standing.planned
        worth, whole = min(((self._worth(best), best), (planned.score_units, planned)), key=lambda pair: pair[0])
        return math.ceil(worth - (1 - share) * whole.stimulus_units)

    def _nearness(self, found: Audit) -> tuple[int, int]:
        """Greater for the nearer of two weeks: minus its changed lines, then what it is worth."""
        return -self._changed(found), self._worth(found)

    def _worth(self, found: Audit) -> int:
        """A week's score less what its sessions lost of their big lifts, in score units."""
        return found.score_units - LOST * kinds_lost(found, self.keep)

    def _audited(self, columns: Chosen) -> Audit:
        return audit(self.resolved, self.standing.whole(self.solver.week(columns)))

    def _is_sound(self, found: Audit) -> bool:
        """Whether a week breaks nothing but what the done sessions break by themselves."""
        return all(finding.days and self.standing.done.issuperset(finding.days) for finding in found.broken)

    def _changed(self, found: Audit) -> int:
        """How many lines of the free days differ from those planned."""
        return changed_lines(line_changes(self.standing.week, found.evaluated.week, self.standing.free))
