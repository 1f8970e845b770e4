"""Tiny seasons against an enumeration of every season there is, written without the solver's own arithmetic."""

from __future__ import annotations

from collections.abc import Callable, Iterator
from dataclasses import replace
from fractions import Fraction
from functools import cache
from itertools import combinations, pairwise, product
from math import floor
from random import Random

import pytest

from setwright.solver.engines.season import stopped_run
from setwright.solver.engines.season.best_week import best_week
from setwright.solver.engines.season.problem import (
    Activity,
    Candidate,
    ChosenBlock,
    EmphasisTerms,
    Room,
    SeasonMuscle,
    SeasonProblem,
)
from setwright.solver.engines.season.solve import patterns_of, solve_season
from setwright.solver.engines.season.week_bound import week_bounds
from setwright.solver.engines.stopped import StoppedRun

HABIT = 500
"""Units by which the usual length of a block may turn a choice between seasons that are worth nearly the same."""
CURVE = ((0, 0), (2, 4000), (4, 6000), (8, 8000), (12, 9000))


def tiny(seed: int, rise: int = 80) -> SeasonProblem:
    """Two or three muscles, an exercise for each and one for two, five to eight weeks in two rooms."""
    random = Random(seed)
    muscles = tuple(
        SeasonMuscle(
            name,
            {
                "priority": EmphasisTerms(300, 4, 12),
                "normal": EmphasisTerms(100, 2, random.choice((6, 8))),
                "hold": EmphasisTerms(50, random.choice((0, 1)), 4),
            },
            CURVE,
            short_cost=random.choice((50_000, 90_000)),
            turn=random.choice((0, 0, 1)),
        )
        for name in ("one", "two", "three")[: random.choice((2, 3))]
    )
    activities = [Activity(m.name, 0, random.choice((60, 75, 90)), ((i, 100),), 0, 3) for i, m in enumerate(muscles)]
    activities.append(Activity("both", 0, 100, ((0, 100), (1, 50)), random.choice((0, 1)), 3))
    rooms = (Room(0, random.choice((150, 200)), 6), Room(0, random.choice((300, 400)), 6))
    weeks = random.choice((5, 6, 7, 8))
    lean = random.randrange(weeks)
    off = random.choice((None, weeks // 2))
    candidates = tuple(
        Candidate(first, length, 0 if first <= lean < first + length else 1)
        for length in (2, 3)
        for first in range(weeks - length + 1)
        if off is None or not first <= off < first + length
    )
    return SeasonProblem(
        rooms,
        candidates,
        tuple(activities),
        muscles,
        specialised_most=random.choice((1, 2)),
        running_most=random.choice((1, 2)),
        held_most=99,
        rise_between=rise,
        rise_within=rise,
        excess_cost=20_000,
        usual_cost=30_000,
        missed_cost=10_000_000,
        habit_tenths=25,
    )


# ---- the enumeration


def index(half_sets: int) -> int:
    """Whole hundredths between the points of the curve, by straight lines."""
    for (a, low), (b, high) in pairwise(CURVE):
        if a <= half_sets <= b:
            return floor(Fraction(low) + Fraction(high - low, b - a) * (half_sets - a))
    raise AssertionError(half_sets)


def sets_worth(problem: SeasonProblem, emphases: tuple[str, ...], half_sets: tuple[int, ...]) -> int:
    worth = 0
    for muscle, emphasis, sets in zip(problem.muscles, emphases, half_sets, strict=True):
        terms = muscle.emphases[emphasis]
        worth += terms.weight * index(min(sets, terms.high))
        worth -= muscle.short_cost * max(0, terms.low - sets) + problem.excess_cost * max(0, sets - terms.high)
    return worth


def weeks_of(
    problem: SeasonProblem, room: Room, pattern: tuple[int, ...]
) -> Iterator[tuple[int, tuple[str, ...], tuple[int, ...]]]:
    """(worth, emphases, half sets) of every week that fits the room."""
    places = range(len(problem.muscles))
    for amounts in product(*(range(a.most + 1) for a in problem.activities)):
        seconds = sum(a.seconds * n for a, n in zip(problem.activities, amounts, strict=True))
        if seconds > room.seconds or sum(amounts) > room.sets:
            continue
        hundredths = [
            sum(dict(a.parts).get(m, 0) * n for a, n in zip(problem.activities, amounts, strict=True)) for m in places
        ]
        half_sets = tuple(h // 50 for h in hundredths)
        fewer = sum(max(0, a.usual - n) for a, n in zip(problem.activities, amounts, strict=True))
        for emphases in product(*(["priority"] if m in pattern else ["normal", "hold"] for m in places)):
            yield sets_worth(problem, emphases, half_sets) - problem.usual_cost * fewer, emphases, half_sets


def seasons(problem: SeasonProblem) -> Iterator[list[tuple[Candidate, tuple[int, ...]]]]:
    """Every season: blocks that do not overlap, in order, each with the muscles it specialises."""

    def after(week: int) -> Iterator[list[Candidate]]:
        yield []
        for candidate in problem.candidates:
            if candidate.first >= week:
                for rest in after(candidate.first + candidate.weeks):
                    yield [candidate, *rest]

    patterns = [p for n in range(problem.specialised_most + 1) for p in combinations(range(len(problem.muscles)), n)]
    for blocks in after(0):
        for chosen in product(patterns, repeat=len(blocks)):
            if allowed(problem, list(chosen)):
                yield list(zip(blocks, chosen, strict=True))


def allowed(problem: SeasonProblem, chosen: list[tuple[int, ...]]) -> bool:
    counts = {}
    for m, muscle in enumerate(problem.muscles):
        marks = "".join("x" if m in pattern else "." for pattern in chosen)
        if "x" * (problem.running_most + 1) in marks:
            return False
        counts[m] = (muscle.turn, marks.count("x"))
    for (turn, count), (other, more) in combinations(counts.values(), 2):
        if turn == other and abs(count - more) > 1:
            return False
        if (turn < other and count < more) or (turn > other and count > more):
            return False
    return True


def best_by_enumeration(problem: SeasonProblem) -> int:
    @cache
    def week(room: int, pattern: tuple[int, ...]) -> int:
        return max(worth for worth, _, _ in weeks_of(problem, problem.rooms[room], pattern))

    best = -(10**12)
    for season in seasons(problem):
        given = {m for _, pattern in season for m in pattern}
        worth = sum(candidate.weeks * week(candidate.room, pattern) for candidate, pattern in season)
        best = max(best, worth - problem.missed_cost * (len(problem.muscles) - len(given)))
    return best


# ---- the checks


@pytest.mark.parametrize("seed", range(8))
def test_the_season_found_is_the_best_there_is(seed: int) -> None:
    problem = tiny(seed)
    found, best = solve_season(problem), best_by_enumeration(problem)
    assert best <= found.bound + HABIT
    assert best - HABIT - abs(best) // 500 <= found.worth <= best


@pytest.mark.parametrize("seed", range(8))
def test_a_season_keeps_its_own_limits(seed: int) -> None:
    problem = tiny(seed)
    blocks = solve_season(problem).blocks
    assert all(before.candidate.end <= after.candidate.first for before, after in pairwise(blocks))
    patterns = [
        tuple(m for m, emphasis in enumerate(block.week.emphases) if emphasis == "priority") for block in blocks
    ]
    assert all(len(pattern) <= problem.specialised_most for pattern in patterns)
    assert allowed(problem, patterns)
    for block in blocks:
        room = problem.rooms[block.candidate.room]
        amounts = list(zip(problem.activities, block.week.activity_sets, strict=True))
        assert sum(a.seconds * n for a, n in amounts) <= room.seconds
        assert sum(n for _, n in amounts) <= room.sets


@pytest.mark.parametrize("seed", range(6))
def test_rising_sets_rise_no_faster_and_are_worth_what_they_are_said_to_be(seed: int) -> None:
    problem = tiny(seed, rise=1)
    found = solve_season(problem)
    assert found.worth <= best_by_enumeration(problem) <= found.bound + HABIT
    given = {m for b in found.blocks for m, e in enumerate(b.week.emphases) if e == "priority"}
    worth = -problem.missed_cost * (len(problem.muscles) - len(given))
    before: ChosenBlock | None = None
    for block in found.blocks:
        assert len(block.ramp) == block.candidate.weeks
        for week, sets in enumerate(block.ramp):
            earlier = block.ramp[week - 1] if week else before.ramp[-1] if before else block.week.half_sets
            # The last week stands as the one it is cut from.
            assert all(n <= min(full, e + 1) for n, full, e in zip(sets, block.week.half_sets, earlier, strict=True))
            fewer = block.week.worth - sets_worth(problem, block.week.emphases, block.week.half_sets)
            worth += fewer + sets_worth(problem, block.week.emphases, sets)
        before = block
    assert worth == found.worth


@pytest.mark.parametrize("seed", range(6))
def test_more_time_never_lowers_what_a_week_is_worth(seed: int) -> None:
    problem = tiny(seed)
    times = [replace(problem.rooms[0], seconds=seconds) for seconds in range(0, 500, 50)]
    for pattern in patterns_of(problem):
        bounds = [week_bounds(problem, room, [pattern])[0] for room in times]
        # Units that HiGHS rounds away from its floating bound.
        assert all(less <= more * 1.000_01 + 2 for less, more in pairwise(bounds))
        weeks = [best_week(problem, room, pattern) for room in times]
        assert all(less.worth <= more.bound for less, more in pairwise(weeks))
        for room, week, bound in zip(times, weeks, bounds, strict=True):
            best = max(worth for worth, _, _ in weeks_of(problem, room, pattern))
            assert week.worth <= best <= week.bound
            assert best <= bound or bound == 0


def test_a_season_without_a_turn_for_all_says_so() -> None:
    problem = tiny(0)
    short = replace(problem, candidates=problem.candidates[:1], specialised_most=1)
    found = solve_season(short)
    assert len(found.blocks) == 1
    given = [e for e in found.blocks[0].week.emphases if e == "priority"]
    assert len(given) == 1 and found.worth < 0


def test_a_muscle_is_held_no_longer_than_the_limit() -> None:
    problem = tiny(3)
    poor = replace(problem, rooms=tuple(replace(room, seconds=60) for room in problem.rooms), held_most=3)
    running = dict.fromkeys(range(len(poor.muscles)), 0)
    for block in solve_season(poor).blocks:
        for m, emphasis in enumerate(block.week.emphases):
            running[m] = running[m] + block.candidate.weeks if emphasis == "hold" else 0
            assert running[m] <= 3


def test_the_same_problem_gives_the_same_season() -> None:
    assert solve_season(tiny(5)) == solve_season(tiny(5))


def test_a_search_that_is_stopped_has_no_season_before_its_first_round_and_then_the_best_so_far(
    monkeypatch: pytest.MonkeyPatch,
) -> None:
    # It is asked between the runs alone, so that the same count of looks comes to the same moment.
    monkeypatch.setattr(stopped_run, "PAUSE", 1e6)
    with pytest.raises(StoppedRun):
        solve_season(tiny(5), lambda: True)
    whole, asked = solve_season(tiny(5)), 0

    def later(times: int) -> Callable[[], bool]:
        def stopped() -> bool:
            nonlocal asked
            asked += 1
            return asked > times

        return stopped

    ends = []
    for times in range(0, 200, 10):
        asked = 0
        try:
            ends.append(solve_season(tiny(5), later(times)))
        except StoppedRun:
            assert not ends, "once there is a season, it is not lost by searching on"
    assert ends and ends[-1] == whole
    assert all(found.worth <= whole.worth and found.worth <= found.bound for found in ends)
