"""Weeks side by side: one brief under several goals, or several briefs."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from dataclasses import dataclass, replace

from setwright.catalogue.entries import Catalogue
from setwright.solver.brief.parsed_brief import ParsedBrief
from setwright.solver.brief.schema import Goal
from setwright.solver.evaluation.evaluated_week import EvaluatedWeek
from setwright.solver.planning import Clash, End, OutOfTime, Solved, plan
from setwright.solver.search.limits import Limits
from setwright.solver.search.solve_options import SolveOptions, Watch
from setwright.solver.uses.compare.break_even import Pays, pays_from
from setwright.solver.uses.compare.rank_stability import Order, order_of


@dataclass(frozen=True)
class Case:
    """One column: a brief under a goal; `place` says which of the briefs given it is."""

    label: str
    place: int
    parsed: ParsedBrief

    @property
    def goal(self) -> Goal:
        return self.parsed.brief.goal or "balanced"


@dataclass(frozen=True)
class Beside:
    """One week beside another: its share of the time and of the stimulus."""

    case: int
    beside: int
    time: float
    stimulus: float
    same_weights: bool
    """Whether both weigh the muscles alike, so that the week indices can be compared."""


@dataclass(frozen=True)
class Compared:
    """The cases with their ends, how they stand to each other, and how sure the order is."""

    cases: tuple[Case, ...]
    ends: tuple[End, ...]
    beside: tuple[Beside, ...]
    order: Order | None
    """The order of the solved weeks, by their place among them; None with fewer than two or other weights."""
    pays: tuple[Pays, ...]

    @property
    def solved(self) -> tuple[tuple[int, Solved], ...]:
        """The places and ends of the cases that have a week."""
        return tuple((i, end) for i, end in enumerate(self.ends) if isinstance(end, Solved))


def cases_of(briefs: Sequence[ParsedBrief], goals: Sequence[Goal]) -> tuple[Case, ...]:
    """Every brief under every goal, or under its own where no goal is named; labels are letters and goals."""
    found: list[Case] = []
    for place, parsed in enumerate(briefs):
        letter = chr(ord("A") + place) if len(briefs) > 1 else ""
        for goal in goals or (parsed.brief.goal or "balanced",):
            brief = parsed.brief.model_copy(update={"goal": goal})
            found.append(Case(f"{letter} {goal}".strip(), place, replace(parsed, brief=brief)))
    return tuple(found)


def compare(
    cases: Sequence[Case],
    catalogue: Catalogue,
    limits: Limits,
    watch: Watch | None = None,
    stopped: Callable[[], bool] = lambda: False,
) -> Compared:
    """The cases planned one after the other and set side by side."""
    options = SolveOptions(limits, watch=watch, stopped=stopped, pairs_note=False)
    ends = tuple(plan(case.parsed, catalogue, options) for case in cases)
    solved = [(i, end) for i, end in enumerate(ends) if isinstance(end, Solved)]
    evaluated_weeks = [end.audit.evaluated for _, end in solved]
    comparable = len(evaluated_weeks) > 1 and all(
        weights(evaluated) == weights(evaluated_weeks[0]) for evaluated in evaluated_weeks
    )
    order = order_of(evaluated_weeks) if comparable else None
    longer = () if stopped() else pays_from(cases, ends, catalogue, stopped)
    return Compared(tuple(cases), ends, beside(solved), order, longer)


def beside(solved: Sequence[tuple[int, Solved]]) -> tuple[Beside, ...]:
    """Each week beside the one that takes the most time (the first of equals)."""
    if len(solved) < 2:
        return ()
    most, reference = max(solved, key=lambda found: (found[1].audit.evaluated.week_seconds, -found[0]))
    return tuple(
        Beside(
            i,
            most,
            end.audit.evaluated.week_seconds / reference.audit.evaluated.week_seconds,
            end.stimulus / reference.stimulus if reference.stimulus else 0.0,
            weights(end.audit.evaluated) == weights(reference.audit.evaluated),
        )
        for i, end in solved
        if i != most
    )


def weights(evaluated: EvaluatedWeek) -> dict[str, float]:
    """Each muscle's part of the week index."""
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
    """The kind of end to report: a clash first, then no week in time."""
    for kind in (Clash, OutOfTime):
        if any(isinstance(end, kind) for end in ends):
            return kind
    return None
