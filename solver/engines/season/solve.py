"""The best season found: blocks chosen by what their weeks can be worth, and the weeks then solved one by one."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, field
from itertools import combinations

from setwright.solver.engines.season.best_week import best_week
from setwright.solver.engines.season.blocks import Pattern, count_blocks, cover, order_blocks
from setwright.solver.engines.season.problem import (
    HELD,
    SPECIALISED,
    Candidate,
    ChosenBlock,
    SeasonProblem,
    SeasonSolution,
    WeekPlan,
)
from setwright.solver.engines.season.week_bound import week_bounds
from setwright.solver.engines.season.week_program import worth_of
from setwright.solver.engines.stopped import Stopped, StoppedRun, unstopped

ROUNDS = 3
"""How often the blocks are chosen anew, once the weeks of the last choice are solved."""
WORK = 0.4
"""Deterministic time of one choice of blocks, about a second each on a usual core."""


def solve_season(problem: SeasonProblem, stopped: Stopped = unstopped) -> SeasonSolution:
    """The best season found by a fixed amount of work, and the bound that no season of the problem can pass.

    A week with given specialised muscles is worth no more than its linear relaxation; the blocks are chosen by that,
    the chosen weeks are solved, and the blocks are chosen again by what is then known, until nothing new is chosen.
    Once it is `stopped` the best season so far is the result; raises StoppedRun where there is none.
    """
    patterns = patterns_of(problem)
    worths = {
        (place, pattern): bound
        for place, room in enumerate(problem.rooms)
        for pattern, bound in zip(patterns, week_bounds(problem, room, patterns, stopped), strict=True)
    }
    candidates, most = cover(problem, worths)
    search = _Search(problem, patterns, worths, float(most), stopped)
    search.known = search.in_order(candidates, neighbours_of(problem))
    try:
        while search.rounds < ROUNDS and search.chose_anew():
            pass
    except StoppedRun:
        if search.best is None:
            raise
    assert search.best is not None
    blocks, worth = search.best
    return SeasonSolution(blocks, worth, max(round(min(search.bound, 1e18)), worth), search.rounds, search.status)


@dataclass
class _Search:
    """The rounds of a season's search so far."""

    problem: SeasonProblem
    patterns: Sequence[Pattern]
    worths: dict[tuple[int, Pattern], int]
    bound: float
    stopped: Stopped
    rounds: int = 0
    status: str = "UNKNOWN"
    known: list[tuple[int, Pattern]] = field(default_factory=list)
    """The last choice: the place of a candidate, and its pattern."""
    solved: dict[tuple[int, Pattern], WeekPlan] = field(default_factory=dict)
    best: tuple[tuple[ChosenBlock, ...], int] | None = None

    def chose_anew(self) -> bool:
        """Choose the blocks, solve those of their weeks that are new, and keep a better season; whether any was new."""
        problem, stopped = self.problem, self.stopped
        self.rounds += 1
        counted = count_blocks(problem, self.patterns, self.worths, self.known, WORK, stopped)
        self.bound, self.status = min(self.bound, counted.bound), counted.status
        if counted.candidates:
            chosen = counted.candidates
            self.known = self.in_order(chosen, counted.patterns) or self.in_order(chosen, self.patterns)
        blocks = [(problem.candidates[i], pattern) for i, pattern in self.known]
        new = sorted({(c.room, pattern) for c, pattern in blocks} - self.solved.keys())
        for room, pattern in new:
            plan = best_week(problem, problem.rooms[room], pattern, stopped=stopped)
            self.solved[room, pattern] = plan
            self.worths[room, pattern] = min(self.worths[room, pattern], plan.bound)
        found = _season_of(problem, [(c, pattern, self.solved[c.room, pattern]) for c, pattern in blocks], stopped)
        if self.best is None or found[1] > self.best[1]:
            self.best = found
        return bool(new)

    def in_order(self, candidates: Sequence[int], patterns: Sequence[Pattern]) -> list[tuple[int, Pattern]]:
        """The candidates each with its pattern; none where no order of the patterns is allowed."""
        order = order_blocks(self.problem, candidates, patterns, self.worths, WORK, self.stopped)
        return list(zip(candidates, order, strict=False))


def patterns_of(problem: SeasonProblem) -> tuple[Pattern, ...]:
    """Every set of muscles that may be specialised together, the smallest first."""
    sizes = range(problem.specialised_most + 1)
    return tuple(pattern for size in sizes for pattern in combinations(problem.turns, size))


def neighbours_of(problem: SeasonProblem) -> tuple[Pattern, ...]:
    """The sets of muscles whose turns follow each other: few enough to begin with, and each muscle is in some."""
    turns = sorted(problem.turns, key=lambda m: problem.muscles[m].turn or 0)
    windows = (turns[i:] + turns[:i] for i in range(len(turns)))
    sizes = range(1, min(problem.specialised_most, len(turns)) + 1)
    found = {tuple(sorted(window[:size])) for window in windows for size in sizes}
    return ((), *sorted(found))


def _season_of(
    problem: SeasonProblem, chosen: list[tuple[Candidate, Pattern, WeekPlan]], stopped: Stopped
) -> tuple[tuple[ChosenBlock, ...], int]:
    """The blocks with their weeks one after the other, and what all of it is worth."""
    blocks: list[ChosenBlock] = []
    held = [0] * len(problem.muscles)
    worth = 0
    for candidate, pattern, week in chosen:
        week = _not_held_too_long(problem, candidate, pattern, week, held, stopped)
        for m, emphasis in enumerate(week.emphases):
            held[m] = held[m] + candidate.weeks if emphasis == HELD else 0
        ramp = _ramp(problem, blocks[-1].ramp[-1] if blocks else None, week.half_sets, candidate.weeks)
        blocks.append(ChosenBlock(candidate, week, ramp))
        full = worth_of(problem, week.emphases, week.half_sets)
        worth += sum(week.worth - full + worth_of(problem, week.emphases, sets) for sets in ramp)
    turned = {m for block in blocks for m, e in enumerate(block.week.emphases) if e == SPECIALISED}
    return tuple(blocks), worth - problem.missed_cost * len(set(problem.turns) - turned)


def _not_held_too_long(
    problem: SeasonProblem, candidate: Candidate, pattern: Pattern, week: WeekPlan, held: list[int], stopped: Stopped
) -> WeekPlan:
    """The week, or the best one that does not hold what has been held too long by its end."""
    too_long = {
        m
        for m, emphasis in enumerate(week.emphases)
        if emphasis == HELD and len(problem.muscles[m].emphases) > 1 and held[m] + candidate.weeks > problem.held_most
    }
    return best_week(problem, problem.rooms[candidate.room], pattern, too_long, stopped) if too_long else week


def _ramp(
    problem: SeasonProblem, before: tuple[int, ...] | None, full: tuple[int, ...], weeks: int
) -> tuple[tuple[int, ...], ...]:
    """Each week's half sets: at first no more than so many above the block before, then rising to the full week."""
    if before is None:
        return (full,) * weeks
    found = [tuple(min(b, a + problem.rise_between) for a, b in zip(before, full, strict=True))]
    while len(found) < weeks - 1:
        found.append(tuple(min(b, a + problem.rise_within) for a, b in zip(found[-1], full, strict=True)))
    # The last week is the lighter one: it is counted as the week that it is cut from.
    return (*found[: weeks - 1], found[min(len(found), weeks - 1) - 1])
