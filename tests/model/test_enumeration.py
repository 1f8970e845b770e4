"""Every week of a tiny brief: what the model allows is what the audit passes, and the best of them is what is found."""

from __future__ import annotations

import itertools
from dataclasses import replace
from typing import Any

import pytest
from boards import Place, Week, audited, days, held, only, place_of
from light_search import LIGHT

from setwright.solver.engines.build import day_model
from setwright.solver.engines.cpsat import CpSatModel
from setwright.solver.engines.highs import ROUNDING
from setwright.solver.linear.columns import Column
from setwright.solver.search.best_week import search
from setwright.solver.search.solve_options import SolveOptions

KEPT = ("dumbbell-curl", "dumbbell-side-raise", "chest-supported-dumbbell-row", "dumbbell-bench-press")
TINY: dict[str, dict[str, Any]] = {
    "plain": {},
    "priority": {"muscles": {"biceps": "priority"}},
    "exact": {"muscles": {"biceps": {"at_least": 3.0, "at_most": 6.0}}},
    "pairs": {"pairs": True},
    "techniques": {"techniques": True, "rules": {"technique-cap": 1.0}},
    "novice": {"client": {"experience": "novice"}},
    "minimum": {"dose": "minimum"},
    "efficiency": {"goal": "efficiency", "pairs": False},
    "short rests": {"rest_at_most": 45, "rir_at_least": 3},
    "long rests": {"rest_at_least": 100},
    "a muscle of the day": {"days": [{"weekday": "mon", "minutes": 14, "trained": ["biceps"]}]},
    "pinned": {"pins": [{"exercise": "dumbbell-curl", "sets": 2}], "must": ["row"]},
}


def tiny(name: str) -> Place:
    """One day of 14 minutes, four exercises, two or three sets at the shortest rest."""
    place = place_of(**{"days": days("mon", 14), **TINY[name]}, equipment="home-dumbbells", avoid=only(*KEPT))
    firsts: dict[tuple[object, ...], Column] = {}
    for column in place.columns:
        prescription = column.assignments[0].prescription
        if prescription.sets < 4:
            firsts.setdefault((*(a.cls for a in column.assignments), prescription.sets, prescription.technique), column)
    return Place(place.instance, tuple(firsts.values()))


def every_week(place: Place) -> list[Week]:
    """Every set of up to four columns in which no exercise stands twice."""
    found = []
    for count in range(5):
        for week in itertools.combinations(place.columns, count):
            classes = [a.cls for c in week for a in c.assignments]
            if len(set(classes)) == len(classes):
                found.append(week)
    return found[:: max(1, len(found) // 160)]


@pytest.mark.parametrize("name", TINY)
def test_what_the_model_allows_is_what_the_audit_passes(name: str) -> None:
    place = tiny(name)
    model = day_model(place.instance, place.columns)
    passed, scores = [], []
    weeks = every_week(place)
    for week in weeks:
        result = audited(place.instance, week)
        here = held(model, week)
        assert here.possible == (not result.broken), (result.evaluated.week, result.broken)
        if here.possible:
            passed.append(week)
            scores.append(result.score_units)
            assert here.cost == pytest.approx(result.cost_units, abs=ROUNDING)
            assert here.value >= result.score_units - ROUNDING
    assert 0 < len(passed) < len(weeks)
    program = CpSatModel(model)
    program.maximise()
    best = program.solve(20.0, 60.0)
    assert best.status == "OPTIMAL" and best.columns is not None
    assert best.bound >= max(scores) - ROUNDING
    found = audited(place.instance, [place.columns[j] for j in sorted(best.columns)])
    assert not found.broken
    assert found.score_units >= max(scores) - 100


@pytest.mark.parametrize("name", ["plain", "priority", "pairs", "exact"])
def test_the_search_finds_the_best_of_the_whole_list(name: str) -> None:
    place = place_of(days=days("mon", 14), equipment="home-dumbbells", avoid=only(*KEPT[:3]), **TINY[name])
    scores = [
        result.score_units
        for count in range(4)
        for week in itertools.combinations(place.columns, count)
        if len({a.cls for c in week for a in c.assignments}) == sum(len(c.assignments) for c in week)
        and not (result := audited(place.instance, week)).broken
    ]
    found = search(place.instance, SolveOptions(replace(LIGHT, rounds=3, work=0.2, nodes=20)))
    assert found.best is not None
    assert found.best.score_units >= max(scores) - 100
    assert max(scores) <= found.bound
