"""From about how many minutes a goal with longer rests pays, where it gives less in the minutes given."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from dataclasses import dataclass, field, replace
from itertools import pairwise
from typing import TYPE_CHECKING

from setwright.catalogue.entries import Catalogue
from setwright.solver.auditing import Audit
from setwright.solver.brief.defaults import LIMITS
from setwright.solver.brief.parsed_brief import ParsedBrief
from setwright.solver.evaluation.finding import UNITS
from setwright.solver.planning import End, Solved, search_only
from setwright.solver.rulebook import resolve
from setwright.solver.search.limits import SEARCHES
from setwright.solver.search.solve_options import SolveOptions
from setwright.solver.uses.time_budget.amounts import with_minutes

if TYPE_CHECKING:
    from setwright.solver.uses.compare.comparison import Case

Tried = tuple[tuple[int, float, float], ...]
"""(further minutes, index of the longer, of the shorter) where both were solved, quick search."""
BY_REST = ("efficiency", "balanced", "growth")
"""The goals from the shortest rests to the longest (the rests table of the catalogue's defaults)."""
STEP = 15
"""Minutes a session to which the answer is sought."""
FARTHEST = 60
"""Minutes a session beyond the brief's at which it is given up (convention)."""


@dataclass(frozen=True)
class Pays:
    """A goal with longer rests that gives less than another in the same minutes, and where that ends."""

    longer: int
    shorter: int
    """Places of the two cases."""
    stimuli: tuple[float, float]
    """The week indices of the longer and the shorter goal in the brief's minutes, no minutes cut."""
    more: int | None
    """Further minutes a session from which the longer rests give as much; None: not within `within`."""
    within: int
    tried: Tried


def pays_from(
    cases: Sequence[Case], ends: Sequence[End], catalogue: Catalogue, stopped: Callable[[], bool] = lambda: False
) -> tuple[Pays, ...]:
    """Every pair of goals of one brief of which the one with longer rests gives less in the same minutes."""
    found: list[Pays] = []
    trials: dict[int, Trials] = {}
    for i, j in pairs(cases):
        longer, shorter = ends[i], ends[j]
        if not isinstance(longer, Solved) or not isinstance(shorter, Solved):
            continue
        here = longer.stimulus, uncut(shorter)
        if here[0] >= here[1]:
            continue
        for place, end in ((i, longer), (j, shorter)):
            trials.setdefault(place, Trials(cases[place].parsed, catalogue, stopped, {0: end.audit}))
        found.append(Pays(i, j, here, *crossing(trials[i], trials[j], room(cases[i].parsed))))
    return tuple(found)


def pairs(cases: Sequence[Case]) -> tuple[tuple[int, int], ...]:
    """(longer, shorter) places of neighbours by rest among the goals of one brief."""
    found: list[tuple[int, int]] = []
    for place in sorted({case.place for case in cases}):
        mine = sorted((BY_REST.index(c.goal), i) for i, c in enumerate(cases) if c.place == place)
        found += [(j, i) for (_, i), (_, j) in pairwise(mine)]
    return tuple(found)


def uncut(solved: Solved) -> float:
    """The week index before any minutes were cut: efficiency's floor and share say what it was."""
    cut = solved.shortest
    if cut is None or solved.resolved.keep_share >= 1.0:
        return solved.stimulus
    return (cut.best_units - cut.floor) / (1.0 - solved.resolved.keep_share) / UNITS


def room(parsed: ParsedBrief) -> int:
    """How many minutes each session may still grow by, in whole steps."""
    longest = max(day.minutes for day in parsed.brief.days)
    return min(FARTHEST, int(LIMITS["minutes"][1]) - longest) // STEP * STEP


@dataclass
class Trials:
    """One goal's best weeks at more minutes, each searched once, from the week of the most minutes below it."""

    parsed: ParsedBrief
    catalogue: Catalogue
    stopped: Callable[[], bool]
    weeks: dict[int, Audit]
    """Weeks to start from, by further minutes a session."""
    known: dict[int, float] = field(default_factory=dict)

    def stimulus(self, more: int) -> float:
        """The week index of the best week with so many more minutes a session."""
        if more not in self.known:
            brief = with_minutes(self.parsed, tuple(d.minutes + more for d in self.parsed.brief.days)).brief
            before = self.weeks[max(m for m in self.weeks if m <= more)]
            options = SolveOptions(QUICK, stopped=self.stopped)
            outcome = search_only(resolve(brief, self.catalogue), options, before.evaluated.week)
            if outcome.best is not None:
                self.weeks[more] = outcome.best
            self.known[more] = outcome.best.stimulus if outcome.best else 0.0
        return self.known[more]


QUICK = replace(SEARCHES["quick"], nodes=1, pattern_nodes=0)
"""Only the weeks are asked for, so next to nothing is spent on bounds."""


def crossing(
    longer: Trials, shorter: Trials, most: int
) -> tuple[int | None, int, tuple[tuple[int, float, float], ...]]:
    """The fewest further minutes, by halving to whole steps, at which the longer rests give no less."""
    tried: dict[int, tuple[float, float]] = {}

    def pays(more: int) -> bool:
        tried[more] = longer.stimulus(more), shorter.stimulus(more)
        return tried[more][0] >= tried[more][1]

    low, high = 0, most
    if most < STEP or longer.stopped() or not pays(high):
        return None, most, listed(tried)
    while high - low > STEP and not longer.stopped():
        middle = (low + high) // (2 * STEP) * STEP
        low, high = (low, middle) if pays(middle) else (middle, high)
    return high, most, listed(tried)


def listed(tried: dict[int, tuple[float, float]]) -> Tried:
    return tuple((more, round(a, 4), round(b, 4)) for more, (a, b) in sorted(tried.items()))
