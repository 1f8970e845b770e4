"""The week that misses the lower ends of the brief's bands by the fewest sets, where none was found that keeps them."""

from __future__ import annotations

import math
from collections.abc import Collection
from itertools import combinations, cycle, islice
from random import Random

from setwright.solver.auditing import Audit, audit
from setwright.solver.engines.cpsat import SHORTFALL, CpSatModel
from setwright.solver.engines.infeasibility import feasibility_model
from setwright.solver.evaluation.finding import ClashMember
from setwright.solver.linear.columns import Column
from setwright.solver.linear.instance import Instance
from setwright.solver.linear.linear_model import LinearModel
from setwright.solver.search.decoding import week_of
from setwright.solver.search.feasibility import without_free_pairs
from setwright.solver.search.solve_options import SolveOptions
from setwright.solver.search.stopping import StopSignal

RULE = "exact-band"
"""The rule whose wishes may be missed."""
WHOLE_WORK = 2.0
"""CP-SAT's deterministic time on the whole week."""
DAYS_WORK = 0.5
"""The same on some of its days."""
FREE_DAYS = 2
"""Days that are searched again at a time."""
ROUNDS = 12
"""Times that some days are searched again without pairs."""
ROUNDS_IN_PAIRS = 3
"""The same with pairs, of which there are many more columns."""
WEIGHTS = 4
"""Columns have random weights from 0 to one less, so that of weeks that lack as much another is found each time."""
SEED = 7


def least_shortfall_week(instance: Instance, options: SolveOptions) -> Audit | None:
    """The audit of a week that breaks nothing but lower ends of bands, by few sets in all; None where none was found.

    It is the first phase of the two-phase simplex method, for weeks: what each lower end lacks is a variable and their
    sum is minimised, over the whole week without pairs, then on two days at a time, then with pairs. A week that lacks
    nothing keeps every wish of the brief. Raises Interrupted.
    """
    bare = without_free_pairs(instance)
    if not any(_may_be_missed(constraint.member) for constraint in bare.constraints):
        return None
    shortfall = _Shortfall(options.signal())
    shortfall.lessen(bare, range(len(bare.by_group)), WHOLE_WORK)
    shortfall.lessen_by_days(bare, ROUNDS)
    if shortfall.lacking and instance.resolved.pairs:
        shortfall.lessen_by_days(feasibility_model(instance), ROUNDS_IN_PAIRS)
    if not shortfall.week:
        return None
    found = audit(instance.resolved, week_of(instance, [(column.group, column) for column in shortfall.week]))
    return found if all(finding.rule == RULE for finding in found.broken) else None


class _Shortfall:
    """The week that lacks least so far, and what it lacks."""

    def __init__(self, signal: StopSignal) -> None:
        self.signal = signal
        self.week: tuple[Column, ...] = ()
        self.lacking = math.inf
        """The sum of what lower ends lack, in the unit of the model's weekly sets."""
        self.random = Random(SEED)

    def lessen_by_days(self, model: LinearModel, rounds: int) -> None:
        """Search a few days at a time again, so many times. Raises Interrupted."""
        days = range(len(model.by_group))
        for free in islice(cycle(combinations(days, min(FREE_DAYS, len(days)))), rounds):
            if self.week and self.lacking:
                self.lessen(model, free, DAYS_WORK)

    def lessen(self, model: LinearModel, free: Collection[int], work: float) -> None:
        """Search some days again, the others as they are, for a week that lacks less, or as much by other columns.

        Raises Interrupted.
        """
        self.signal.check()
        used = frozenset(self.week)
        places = frozenset(j for j, column in enumerate(model.columns) if column in used)
        fixed = {j: int(j in places) for day, its in enumerate(model.by_group) if day not in free for j in its}
        cp_sat = CpSatModel(model, fixed, skip=_may_be_missed, feasibility_only=True)
        weights = {j: self.random.randrange(WEIGHTS) for j in range(len(model.columns))}
        cp_sat.minimise_shortfall((c for c in model.constraints if _may_be_missed(c.member)), weights)
        cp_sat.hint(places)
        found = cp_sat.solve(work, self.signal.seconds_left())
        if found.columns is not None and found.value // SHORTFALL <= self.lacking:
            self.week, self.lacking = tuple(model.columns[j] for j in sorted(found.columns)), found.value // SHORTFALL


def _may_be_missed(member: ClashMember) -> bool:
    """Whether a member of a clash is a lower end of a band."""
    return member.rule == RULE and member.wish is not None
