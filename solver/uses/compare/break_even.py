"""From how many minutes a session a goal with longer rests gives as much as one with shorter rests."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from dataclasses import dataclass, field, replace
from itertools import pairwise

from setwright.catalogue.entries import Catalogue
from setwright.solver.auditing import Audit
from setwright.solver.brief.defaults import LIMITS
from setwright.solver.brief.parsed_brief import ParsedBrief
from setwright.solver.evaluation.finding import UNITS
from setwright.solver.planning import End, Solved, search_only
from setwright.solver.rulebook import resolve
from setwright.solver.search.limits import SEARCHES
from setwright.solver.search.solve_options import SolveOptions
from setwright.solver.uses.compare.compared_brief import ComparedBrief
from setwright.solver.uses.time_budget.amounts import with_minutes

Tried = tuple[tuple[int, float, float], ...]
"""(further minutes, week index with the longer rests, with the shorter) where both were solved, quick search."""
BY_REST = ("efficiency", "balanced", "growth")
"""The goals from the shortest rests to the longest (the rests table of the catalogue's defaults)."""
STEP = 15
"""Minutes a session to which the answer is sought."""
FARTHEST = 60
"""Minutes a session beyond the brief's at which it is given up (convention)."""
QUICK = replace(SEARCHES["quick"], nodes=0, pattern_nodes=0)
"""Only the weeks are asked for, so the bounds stay at the relaxation."""


@dataclass(frozen=True)
class BreakEven:
    """A goal with longer rests that gives less than another in the same minutes, and where that ends."""

    longer: int
    shorter: int
    """Places of the two among the compared briefs."""
    stimuli: tuple[float, float]
    """The week indices of the longer and the shorter rests in the brief's minutes, no minutes cut."""
    more: int | None
    """Further minutes a session from which the longer rests give as much; None: not within `within`."""
    within: int
    tried: Tried


def break_evens(
    briefs: Sequence[ComparedBrief],
    ends: Sequence[End],
    catalogue: Catalogue,
    stopped: Callable[[], bool] = lambda: False,
) -> tuple[BreakEven, ...]:
    """Every pair of goals of one brief of which the one with longer rests gives less in the same minutes."""
    found: list[BreakEven] = []
    weeks: dict[int, LongerWeeks] = {}
    for i, j in neighbours_by_rest(briefs):
        longer, shorter = ends[i], ends[j]
        if not isinstance(longer, Solved) or not isinstance(shorter, Solved):
            continue
        here = longer.stimulus, stimulus_before_cut(shorter)
        if here[0] >= here[1]:
            continue
        for place, end in ((i, longer), (j, shorter)):
            weeks.setdefault(place, LongerWeeks(briefs[place].parsed, catalogue, stopped, {0: end.audit}))
        found.append(BreakEven(i, j, here, *crossing(weeks[i], weeks[j], most_further_minutes(briefs[i].parsed))))
    return tuple(found)


def neighbours_by_rest(briefs: Sequence[ComparedBrief]) -> tuple[tuple[int, int], ...]:
    """(longer, shorter) places of neighbours by rest among the goals of one brief."""
    found: list[tuple[int, int]] = []
    for place in sorted({brief.place for brief in briefs}):
        mine = sorted((BY_REST.index(b.goal), i) for i, b in enumerate(briefs) if b.place == place)
        found += [(j, i) for (_, i), (_, j) in pairwise(mine)]
    return tuple(found)


def stimulus_before_cut(solved: Solved) -> float:
    """The week index before any minutes were cut: efficiency's floor and share say what it was."""
    cut = solved.shortest
    if cut is None or solved.resolved.keep_share >= 1.0:
        return solved.stimulus
    return (cut.best_units - cut.floor) / (1.0 - solved.resolved.keep_share) / UNITS


def most_further_minutes(parsed: ParsedBrief) -> int:
    """How many minutes each session may still grow by, in whole steps."""
    longest = max(day.minutes for day in parsed.brief.days)
    return min(FARTHEST, int(LIMITS["minutes"][1]) - longest) // STEP * STEP


@dataclass
class LongerWeeks:
    """One goal's best weeks at more minutes, each searched once, from the week of the most minutes below it."""

    parsed: ParsedBrief
    catalogue: Catalogue
    stopped: Callable[[], bool]
    weeks: dict[int, Audit]
    """Weeks to start from, by further minutes a session."""
    known: dict[int, float] = field(default_factory=dict)
    """Week indices already found, by further minutes a session."""

    def stimulus(self, more: int) -> float:
        """The week index of the best week found with so many more minutes a session; 0 where there is none."""
        if more not in self.known:
            brief = with_minutes(self.parsed, tuple(d.minutes + more for d in self.parsed.brief.days)).brief
            before = self.weeks[max(m for m in self.weeks if m <= more)]
            options = SolveOptions(QUICK, stopped=self.stopped)
            outcome = search_only(resolve(brief, self.catalogue), options, before.evaluated.week)
            if outcome.best is not None:
                self.weeks[more] = outcome.best
            self.known[more] = outcome.best.stimulus if outcome.best else 0.0
        return self.known[more]


def crossing(longer: LongerWeeks, shorter: LongerWeeks, most: int) -> tuple[int | None, int, Tried]:
    """The fewest further minutes, by bisection to whole steps, at which the longer rests give no less.

    None where that is not within `most`; then how far it was tried, and what was found on the way.
    """
    tried: dict[int, tuple[float, float]] = {}

    def no_less(more: int) -> bool:
        tried[more] = longer.stimulus(more), shorter.stimulus(more)
        return tried[more][0] >= tried[more][1]

    low, high = 0, most
    if most < STEP or longer.stopped() or not no_less(high):
        return None, most, _in_order(tried)
    while high - low > STEP and not longer.stopped():
        middle = (low + high) // (2 * STEP) * STEP
        low, high = (low, middle) if no_less(middle) else (middle, high)
    return high, most, _in_order(tried)


def _in_order(tried: dict[int, tuple[float, float]]) -> Tried:
    return tuple((more, round(a, 4), round(b, 4)) for more, (a, b) in sorted(tried.items()))
