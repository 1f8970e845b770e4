"""Weeks side by side: one brief under several goals, or several briefs."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from dataclasses import dataclass

from setwright.catalogue.entries import Catalogue
from setwright.solver.evaluation.evaluated_week import EvaluatedWeek
from setwright.solver.evaluation.uncertainty import share_interval
from setwright.solver.planning import Clash, End, OutOfTime, Solved, plan
from setwright.solver.search.limits import Limits
from setwright.solver.search.solve_options import SolveOptions, Watch
from setwright.solver.uses.compare.break_even import BreakEven, break_evens
from setwright.solver.uses.compare.compared_brief import ComparedBrief
from setwright.solver.uses.compare.rank_stability import Ranking, ranking_of


@dataclass(frozen=True)
class TradeOff:
    """What one week takes and gives as shares of another, by their places among the compared briefs."""

    week: int
    reference: int
    time_share: float
    stimulus_share: float
    stimulus_interval: tuple[float, float]
    """The same share at the 5th and 95th hundredth of the draws, both weeks evaluated with the same numbers."""
    same_weights: bool
    """Whether both weigh the muscles alike, so that the week indices can be compared."""


@dataclass(frozen=True)
class Comparison:
    """The compared briefs with their ends, how the weeks stand to each other, and how stable their order is."""

    briefs: tuple[ComparedBrief, ...]
    ends: tuple[End, ...]
    trade_offs: tuple[TradeOff, ...]
    ranking: Ranking | None
    """The order of the solved weeks, by their place among them; None with fewer than two or other weights."""
    break_evens: tuple[BreakEven, ...]

    @property
    def solved(self) -> tuple[tuple[int, Solved], ...]:
        """(place, end) of the briefs that have a week."""
        return tuple((i, end) for i, end in enumerate(self.ends) if isinstance(end, Solved))


def compare(
    briefs: Sequence[ComparedBrief],
    catalogue: Catalogue,
    limits: Limits,
    watch: Watch | None = None,
    stopped: Callable[[], bool] = lambda: False,
    found: Callable[[Comparison], None] = lambda so_far: None,
) -> Comparison:
    """The briefs planned one after the other and set side by side; `found` is told what stands after each."""
    options = SolveOptions(limits, watch=watch, stopped=stopped, pairs_note=False)
    ends: tuple[End, ...] = ()
    for brief in briefs:
        ends = (*ends, plan(brief.parsed, catalogue, options))
        found(Comparison(tuple(briefs[: len(ends)]), ends, (), None, ()))
    solved = [(i, end) for i, end in enumerate(ends) if isinstance(end, Solved)]
    weeks = [end.audit.evaluated for _, end in solved]
    comparable = len(weeks) > 1 and all(weights(week) == weights(weeks[0]) for week in weeks)
    ranking = ranking_of(weeks) if comparable else None
    longer = () if stopped() else break_evens(briefs, ends, catalogue, stopped)
    return Comparison(tuple(briefs), ends, trade_offs(solved), ranking, longer)


def trade_offs(solved: Sequence[tuple[int, Solved]]) -> tuple[TradeOff, ...]:
    """Each week against the one that takes the most time (the first of equals)."""
    if len(solved) < 2:
        return ()
    place, reference = max(solved, key=lambda found: (found[1].audit.evaluated.week_seconds, -found[0]))
    return tuple(
        TradeOff(
            i,
            place,
            end.audit.evaluated.week_seconds / reference.audit.evaluated.week_seconds,
            end.stimulus / reference.stimulus if reference.stimulus else 0.0,
            share_interval(end.audit.evaluated, reference.audit.evaluated),
            weights(end.audit.evaluated) == weights(reference.audit.evaluated),
        )
        for i, end in solved
        if i != place
    )


def weights(evaluated: EvaluatedWeek) -> dict[str, float]:
    """Muscle id -> its share of the week index; the shares add up to 1."""
    whole = evaluated.resolved.weight_sum
    return {m.id: round(m.weight / whole, 9) for m in evaluated.resolved.muscles.values()}


def only_in(solved: Sequence[tuple[int, Solved]]) -> tuple[tuple[int, tuple[str, ...]], ...]:
    """For each week the exercises that none of the others has, by id in the order of the week."""
    used = {i: dict.fromkeys(entry.exercise for entry in end.audit.evaluated.week.entries) for i, end in solved}
    return tuple(
        (i, tuple(e for e in mine if all(e not in others for j, others in used.items() if j != i)))
        for i, mine in used.items()
    )


def worst(ends: Sequence[End]) -> type[Clash] | type[OutOfTime] | None:
    """The kind of end to report: a clash first, then no week in time; None where every brief has a week."""
    for kind in (Clash, OutOfTime):
        if any(isinstance(end, kind) for end in ends):
            return kind
    return None
