"""Day patterns: the pricing problem against enumeration, and the bound against the optimum of small briefs."""

from __future__ import annotations

from itertools import combinations
from random import Random
from typing import Literal

import numpy as np
import pytest
from light_search import LITTLE

from setwright.catalogue.load import load_catalogue
from setwright.solver import SEARCHES, Solved, SolveOptions, plan, read_brief
from setwright.solver.engines import highs
from setwright.solver.engines.build import all_day_columns, day_model, week_model
from setwright.solver.engines.day_patterns.day_columns import STEP, DayColumns
from setwright.solver.engines.day_patterns.generation import decomposed
from setwright.solver.engines.day_patterns.pricing import best_patterns
from setwright.solver.evaluation.finding import UNITS
from setwright.solver.linear.columns import Column
from setwright.solver.linear.instance import Instance, instance_of
from setwright.solver.rulebook import resolve
from setwright.solver.search.best_week import search

CATALOGUE = load_catalogue()
BRIEFS = ("1 day x 10 min, body weight", "1 day x 10 min, efficiency, body weight, grow abs")


def instance(phrase: str) -> Instance:
    return instance_of(resolve(read_brief(phrase, CATALOGUE).brief, CATALOGUE))


def drawn(random: Random, count: int) -> DayColumns:
    """Columns of random time, some of them lifts of one or two regions with a ramp-up."""
    trained = [random.choice((0, 0, 1, 2, 4, 3)) for _ in range(count)]
    ramps = [[random.choice((60, 120)) if bits >> k & 1 else 0 for k in range(3)] for bits in trained]
    return DayColumns(
        columns=tuple(Column(0, ()) for _ in range(count)),
        units=np.array([random.randrange(40, 200) for _ in range(count)]),
        ramps=np.array(ramps),
        trained=np.array(trained),
        room=STEP * random.randrange(200, 500),
    )


def best_by_enumeration(day: DayColumns, values: np.ndarray, region_values: tuple[float, ...]) -> float:
    """The most that any session is worth, each set of columns looked at."""
    best = 0.0
    everything = range(len(day.columns))
    for chosen in (c for size in everything for c in combinations(everything, size + 1)):
        held = list(chosen)
        ramp = int(day.ramps[held].max(axis=0).sum())
        # The ramp-up takes its half seconds from the room before that is counted in whole units.
        if day.units[held].sum() <= (day.room - ramp) // STEP:
            bits = int(np.bitwise_or.reduce(day.trained[held]))
            regions = sum(v for k, v in enumerate(region_values) if bits >> k & 1)
            best = max(best, float(values[held].sum()) + regions)
    return best


@pytest.mark.parametrize("seed", range(40))
def test_the_best_session_is_that_of_enumeration(seed: int) -> None:
    random = Random(seed)
    day = drawn(random, 11)
    values = np.array([random.uniform(-3, 10) for _ in day.columns])
    region_values = tuple(random.uniform(-4, 6) for _ in range(3))
    found = best_patterns(day, values, region_values)
    assert max(found[0].value, 0.0) == pytest.approx(best_by_enumeration(day, values, region_values))
    for pattern in found:
        held = list(pattern.columns)
        bits = int(np.bitwise_or.reduce(day.trained[held], initial=0))
        worth = float(values[held].sum()) + sum(v for k, v in enumerate(region_values) if bits >> k & 1)
        assert pattern.trained == bits and pattern.value == pytest.approx(worth)


@pytest.mark.parametrize("phrase", BRIEFS)
def test_no_week_passes_the_bound_and_it_is_below_that_of_the_week_without_days(phrase: str) -> None:
    found = instance(phrase)
    _, bound = decomposed(found)
    whole = highs.bound(day_model(found, all_day_columns(found)), 200, 60.0, heuristics="one")
    assert whole.chosen and whole.value <= highs.outward(bound)
    assert bound <= highs.relax(week_model(found)).value + 1


def test_the_rounds_are_counted_and_each_bound_told_is_lower() -> None:
    told: list[float] = []
    master, bound = decomposed(instance("3 days x 10 min, efficiency, bands"), told.append)
    assert told == sorted(told, reverse=True) and told[-1] == bound
    assert master.patterns


def test_a_search_that_nobody_waits_for_ends_without_a_bound() -> None:
    master, bound = decomposed(instance("1 day x 10 min, bands"), cancelled=lambda: True)
    assert bound == float("inf") and not master.patterns


def planned(phrase: str, workers: Literal[1, 2]) -> Solved:
    brief = read_brief(phrase, CATALOGUE)
    end = plan(brief, CATALOGUE, SolveOptions(LITTLE, workers=workers, pairs_note=False))
    assert isinstance(end, Solved)
    return end


def test_a_week_of_short_days_is_near_its_bound() -> None:
    """Before there were patterns this week stood 21.7 % of its index below its bound (normal search)."""
    end = search(instance("3 days x 10 min, efficiency"), SolveOptions(SEARCHES["quick"]))
    assert end.best is not None
    assert (end.bound - end.best.score_units) / end.best.stimulus_units < 0.06


def test_one_worker_and_two_give_the_same_week_of_short_days() -> None:
    one, two = (planned("2 days x 10 min, bands", workers) for workers in (1, 2))
    assert one.audit.evaluated.week == two.audit.evaluated.week and one.bound == two.bound


def test_days_that_differ_in_place_have_their_own_patterns() -> None:
    found = instance("mon 10 min bands, thu 15 min commercial gym")
    master, bound = decomposed(found)
    assert {group for group, _ in master.patterns} == {0, 1} and bound < 100 * UNITS
