"""CP-SAT over a season's blocks: which candidates with which specialised muscles, then in which order.

The first model counts blocks that differ in nothing but their place, so that their orders are not tried one by one; it
leaves out that a muscle may be specialised only so many blocks running, but for a count that this implies. So its
bound holds for every season. The second model keeps the first's candidates and puts the muscles on them in order.
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from typing import Any

from ortools.sat.python import cp_model

from setwright.solver.engines.cpsat import solver_of
from setwright.solver.engines.season.best_week import WALL_SECONDS
from setwright.solver.engines.season.problem import SeasonProblem
from setwright.solver.engines.season.stopped_run import run
from setwright.solver.engines.stopped import Stopped, unstopped

Pattern = tuple[int, ...]
"""The places of the muscles that a block specialises, rising."""
Worths = Mapping[tuple[int, Pattern], int]
"""(room, pattern) -> units that a week is worth at most."""


@dataclass(frozen=True)
class CountedBlocks:
    """Candidates in order of time, the patterns they have in any order, and units that no season is worth more than."""

    candidates: tuple[int, ...]
    patterns: tuple[Pattern, ...]
    bound: float
    status: str


def count_blocks(
    problem: SeasonProblem,
    patterns: Sequence[Pattern],
    worths: Worths,
    known: Sequence[tuple[int, Pattern]],
    work: float,
    stopped: Stopped = unstopped,
) -> CountedBlocks:
    """The best candidates and counts of patterns found within so much deterministic time, begun from known blocks.

    Raises StoppedRun.
    """
    cp = cp_model.CpModel()
    used = [cp.new_bool_var("") for _ in problem.candidates]
    last = max(c.end for c in problem.candidates)
    for week in range(last):
        cp.add_at_most_one(v for v, c in zip(used, problem.candidates, strict=True) if c.first <= week < c.end)
    kinds: dict[tuple[int, int], list[Any]] = {}
    for i, v in enumerate(used):
        kinds.setdefault(_kind_of(problem, i), []).append(v)
    most = last // min(c.weeks for c in problem.candidates)
    counts = {
        (kind, pattern): cp.new_int_var(0, min(most, len(same)), "")
        for kind, same in kinds.items()
        for pattern in patterns
    }
    for kind, same in kinds.items():
        cp.add(sum(counts[kind, pattern] for pattern in patterns) == sum(same))
    blocks = sum(used)
    thirds = cp.new_int_var(0, most, "")
    cp.add_division_equality(thirds, blocks, problem.running_most + 1)
    specialised = {m: sum(v for (_, pattern), v in counts.items() if m in pattern) for m in problem.turns}
    for amount in specialised.values():
        cp.add(amount <= blocks - thirds)
    missed = post_turns(cp, problem, specialised, most)
    worth = sum(kind[0] * worths[kind[1], pattern] * v for (kind, pattern), v in counts.items())
    habit = sum(abs(10 * c.weeks - problem.habit_tenths) * v for v, c in zip(used, problem.candidates, strict=True))
    cp.maximize(worth - problem.missed_cost * missed - habit)
    for i, v in enumerate(used):
        cp.add_hint(v, any(i == other for other, _ in known))
    for (kind, pattern), v in counts.items():
        same = [i for i, other in known if other == pattern and _kind_of(problem, i) == kind]
        cp.add_hint(v, len(same))
    solver = solver_of(work, WALL_SECONDS)
    status = run(solver, cp, stopped)
    name = str(solver.status_name(status))
    if status not in (cp_model.OPTIMAL, cp_model.FEASIBLE):
        return CountedBlocks((), (), float("inf"), name)
    chosen = sorted((i for i, v in enumerate(used) if solver.value(v)), key=lambda i: problem.candidates[i].first)
    found = tuple(pattern for pattern in patterns if any(solver.value(counts[kind, pattern]) for kind in kinds))
    return CountedBlocks(tuple(chosen), found, solver.best_objective_bound, name)


def _kind_of(problem: SeasonProblem, candidate: int) -> tuple[int, int]:
    """What makes a candidate worth as much as another: its weeks and its room."""
    return problem.candidates[candidate].weeks, problem.candidates[candidate].room


def cover(problem: SeasonProblem, worths: Worths) -> tuple[tuple[int, ...], int]:
    """The candidates that are worth most if each has its best pattern, and that worth, which no season can pass.

    Weighted interval scheduling by dynamic programming, from the last week to the first.
    """
    best: dict[int, int] = {}
    for (room, _), worth in worths.items():
        best[room] = max(best.get(room, 0), worth)
    last = max(c.end for c in problem.candidates)
    found: list[tuple[int, tuple[int, ...]]] = [(0, ())] * (last + 1)
    for week in range(last - 1, -1, -1):
        options = [found[week + 1]]
        for i, c in enumerate(problem.candidates):
            if c.first == week:
                after, later = found[c.end]
                unusual = abs(10 * c.weeks - problem.habit_tenths)
                options.append((after + c.weeks * best[c.room] - unusual, (i, *later)))
        found[week] = max(options, key=lambda option: option[0])
    return found[0][1], found[0][0]


def order_blocks(
    problem: SeasonProblem,
    candidates: Sequence[int],
    patterns: Sequence[Pattern],
    worths: Worths,
    work: float,
    stopped: Stopped = unstopped,
) -> tuple[Pattern, ...]:
    """A pattern for each of these candidates, none of them running too long; empty where none was found.

    Raises StoppedRun.
    """
    cp = cp_model.CpModel()
    blocks = [problem.candidates[i] for i in candidates]
    chosen = [[cp.new_bool_var("") for _ in patterns] for _ in blocks]
    for here in chosen:
        cp.add_exactly_one(here)
    specialised: dict[int, Any] = {}
    for m in problem.turns:
        having = [sum(v for v, p in zip(here, patterns, strict=True) if m in p) for here in chosen]
        for first in range(len(blocks) - problem.running_most):
            cp.add(sum(having[first : first + problem.running_most + 1]) <= problem.running_most)
        specialised[m] = sum(having)
    missed = post_turns(cp, problem, specialised, len(blocks))
    worth = sum(
        block.weeks * worths[block.room, pattern] * v
        for block, here in zip(blocks, chosen, strict=True)
        for v, pattern in zip(here, patterns, strict=True)
    )
    cp.maximize(worth - problem.missed_cost * missed)
    solver = solver_of(work, WALL_SECONDS)
    if run(solver, cp, stopped) not in (cp_model.OPTIMAL, cp_model.FEASIBLE):
        return ()
    return tuple(next(pattern for v, pattern in zip(here, patterns, strict=True) if solver.value(v)) for here in chosen)


def post_turns(cp: cp_model.CpModel, problem: SeasonProblem, blocks: Mapping[int, Any], most: int) -> Any:
    """How many muscles never have their turn, of the number of blocks in which each is specialised.

    A muscle has no fewer blocks than one whose turn is later; those of equal turn differ by one at most.
    """
    equals: dict[int, list[Any]] = {}
    missed = []
    for m, amount in blocks.items():
        never = cp.new_bool_var("")
        cp.add(amount + never >= 1)
        missed.append(never)
        equals.setdefault(problem.muscles[m].turn or 0, []).append(amount)
    before: Any = None
    for _, amounts in sorted(equals.items()):
        least = cp.new_int_var(0, most, "")
        for amount in amounts:
            cp.add(amount >= least)
            cp.add(amount <= least + 1)
            if before is not None:
                cp.add(amount <= before)
        before = least
    return sum(missed)
