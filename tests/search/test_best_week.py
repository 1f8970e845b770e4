"""The search on random small briefs: under its bound, the same in one thread or two, better than any listed week."""

from __future__ import annotations

import itertools
import threading
from dataclasses import replace
from functools import lru_cache
from random import Random
from typing import Any

import pytest
from boards import BRIEFS, audited, cached, days, only, place_of, sound_week, terms_of
from light_search import LIGHT

from setwright.solver.auditing import audit
from setwright.solver.engines import highs
from setwright.solver.engines.build import day_model
from setwright.solver.engines.cpsat import CpSatModel
from setwright.solver.linear.instance import Instance, instance_of
from setwright.solver.search.best_week import Outcome, search
from setwright.solver.search.solve_options import Progress, SolveOptions

CHEAP = SolveOptions(replace(LIGHT, rounds=2, work=0.1, nodes=3))


def drawn(seed: int) -> dict[str, Any]:
    """A random small brief."""
    random = Random(seed)
    weekdays = sorted(random.sample(["mon", "tue", "wed", "fri"], random.randint(1, 3)))
    raw: dict[str, Any] = {
        "days": days(" ".join(weekdays), *(random.choice((15, 20, 30)) for _ in weekdays)),
        "equipment": random.choice(("bands", "home-dumbbells", "bodyweight-and-bands", "hotel-gym")),
        "goal": random.choice(("growth", "balanced", "efficiency")),
        "client": {"experience": random.choice(("novice", "intermediate"))},
    }
    if random.random() < 0.5:
        raw["muscles"] = {random.choice(("glutes", "side-delts", "biceps")): "priority"}
    if random.random() < 0.3:
        raw["muscles"] = {"chest": {"at_least": 2.0}, "quads": {"at_most": 8.0}}
    return raw


@lru_cache(maxsize=8)
def instance(seed: int) -> Instance:
    return instance_of(terms_of(**drawn(seed)))


@lru_cache(maxsize=8)
def outcome(seed: int) -> Outcome:
    return search(instance(seed), CHEAP)


@pytest.mark.parametrize("seed", range(6))
def test_the_score_stays_under_the_bound_and_the_audit_passes(seed: int) -> None:
    found = outcome(seed)
    assert found.best is not None
    assert found.best.score_units <= found.bound
    again = audit(instance(seed).resolved, found.best.evaluated.week)
    assert not again.broken and again.score_units == found.best.score_units


@pytest.mark.parametrize("seed", range(6))
def test_one_thread_or_two_the_result_is_the_same(seed: int) -> None:
    beside, alone = outcome(seed), search(instance(seed), replace(CHEAP, workers=1))
    assert beside.best is not None and alone.best is not None
    assert beside.best.evaluated.week == alone.best.evaluated.week
    assert (beside.bound, beside.ended_by) == (alone.bound, alone.ended_by)


@pytest.mark.parametrize("seed", range(6))
def test_no_random_sound_week_passes_the_bound(seed: int) -> None:
    found, random = outcome(seed), Random(seed)
    place = place_of(**drawn(seed))
    for _ in range(5):
        result = audited(place.instance, sound_week(place, random, 30))
        if not result.broken:
            assert result.score_units <= found.bound


def test_what_a_watcher_hears_only_gets_better() -> None:
    heard: list[Progress] = []
    search(instance(1), replace(CHEAP, workers=1, watch=heard.append))
    assert heard
    for before, after in itertools.pairwise(heard):
        assert after.score >= before.score and after.bound <= before.bound


def test_a_fault_in_the_bounding_thread_is_not_lost() -> None:
    def watch(progress: Progress) -> None:
        if threading.current_thread() is not threading.main_thread():
            raise ValueError("from the thread that bounds")

    with pytest.raises(ValueError, match="from the thread"):
        search(instance_of(terms_of(days=days("mon tue thu fri", 20), equipment="bands")), replace(CHEAP, watch=watch))


@pytest.mark.parametrize("name", ["home", "pairs", "two places", "growth"])
def test_a_stopped_search_keeps_what_it_has(name: str) -> None:
    board_ = cached(name).instance
    calls = iter(range(1000))
    found = search(board_, replace(CHEAP, stopped=lambda: next(calls) > len(board_.resolved.days)))
    assert found.ended_by == "stopped"
    if found.best:
        assert not found.best.broken


def test_on_few_columns_the_search_meets_the_best_of_the_whole_model() -> None:
    """Six exercises, one day: CP-SAT on every column to its end is what the search should find."""
    kept = only("dumbbell-curl", "goblet-squat", "dumbbell-bench-press", "one-arm-dumbbell-row", "dumbbell-crunch")
    raw = {"days": days("mon", 25), "equipment": "home-dumbbells", "avoid": kept}
    place = place_of(**raw)
    model = day_model(place.instance, place.columns)
    program = CpSatModel(model)
    program.maximise()
    best = program.solve(10.0, 30.0)
    assert best.status == "OPTIMAL" and best.columns is not None
    found = search(place.instance, replace(CHEAP, limits=replace(CHEAP.limits, rounds=6)))
    assert found.best is not None
    score = audited(place.instance, [model.columns[j] for j in sorted(best.columns)]).score_units
    assert found.best.score_units == pytest.approx(score, abs=100)
    assert found.best.score_units <= best.bound + highs.ROUNDING


@pytest.mark.parametrize("name", sorted(BRIEFS)[:4])
def test_classes_never_mix_what_the_audit_tells_apart(name: str) -> None:
    """A week named by other members of its classes costs the same, apart from order."""
    place, random = cached(name), Random(name)
    week = sound_week(place, random, 20)
    result = audited(place.instance, week)
    swapped = audit(place.resolved, other_members(place.instance, result.evaluated.week))
    assert [f for f in swapped.broken if f.rule != "order"] == [f for f in result.broken if f.rule != "order"]
    assert swapped.score_units == result.score_units


def other_members(board_: Instance, week: Any) -> Any:
    """Each exercise replaced by the last member of its class, where that keeps the week's exercises apart."""
    other = {e.id: cls.members[-1].id for cls in board_.classes for e in cls.members}
    used = sorted({entry.exercise for entry in week.entries})
    taken = [other[name] for name in used]
    swap = {name: other[name] for name in used if other[name] not in used and taken.count(other[name]) == 1}

    def swapped(entry: Any) -> Any:
        names = {
            "exercise": swap.get(entry.exercise, entry.exercise),
            "partner": swap.get(entry.partner, entry.partner),
        }
        return replace(entry, **names, **redone(board_, entry, swap))

    return replace(week, days=tuple(tuple(swapped(e) for e in day) for day in week.days))


def redone(board_: Instance, entry: Any, swap: dict[str, str]) -> dict[str, Any]:
    name = swap.get(entry.exercise)
    return {"reps": board_.resolved.catalogue.exercises[name].reps} if name else {}
