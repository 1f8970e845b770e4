"""The score is the stimulus less every cost; its interval is drawn by a fixed seed and holds it."""

from __future__ import annotations

import math

import pytest
from weeks import CATALOGUE, audited, days, terms_of

from setwright.solver.evaluation import uncertainty
from setwright.solver.evaluation.finding import UNITS

WEEKS = {
    "two days": (
        {},
        (
            "barbell-back-squat 3, barbell-bench-press 3, wide-grip-pulldown 3, cable-curl 3 drop, rope-pushdown 2",
            "barbell-romanian-deadlift 3, barbell-overhead-press 3, barbell-row-to-chest 3, seated-leg-curl 2",
        ),
    ),
    "one muscle": ({"muscles": {"biceps": "priority"}}, ("cable-curl 4", "barbell-curl 3")),
    "cramped": ({"days": days("mon", 60)}, ("barbell-back-squat 4, leg-press 4, leg-extension 4",)),
    "pairs": (
        {"goal": "efficiency"},
        ("dumbbell-curl 3 with=dumbbell-side-raise, dumbbell-side-raise 3 with=dumbbell-curl", "leg-press 3"),
    ),
    "nothing": ({}, ("", "")),
}


@pytest.mark.parametrize("name", WEEKS)
def test_score_is_stimulus_less_costs(name) -> None:
    brief, week = WEEKS[name]
    result = audited(terms_of(**brief), week)
    assert result.score_units == result.stimulus_units - sum(f.cost for f in result.charged)
    assert result.cost_units == sum(result.costs().values())
    assert all(isinstance(f.cost, int) for f in result.charged)
    assert result.stimulus_units == pytest.approx(result.evaluated.stimulus * UNITS, abs=1)


@pytest.mark.parametrize("name", WEEKS)
def test_stimulus_by_hand(name) -> None:
    """The weighted mean of 100 * (good sets / reference) ** exponent, from lines and curves written out again."""
    brief, week = WEEKS[name]
    result = audited(terms_of(**brief), week)
    resolved, n = result.evaluated.resolved, result.evaluated.resolved.curves.numbers
    total = weights = 0.0
    for muscle in resolved.muscles.values():
        good = 0.0
        for lines in result.evaluated.on:
            sets = sum(
                part / 100 * line.prescription.effective / 1000
                for line in lines
                for m, part in line.exercise.contributions
                if m == muscle.id
            )
            knee, scale = n["session-knee"], n["session-scale"]
            good += sets if sets <= knee else knee + scale * (1 - math.exp((knee - sets) / scale))
        total += muscle.weight * 100 * (good / n["index-reference"]) ** n["week-exponent"]
        weights += muscle.weight
    assert result.stimulus == pytest.approx(total / weights, abs=2 / UNITS)


@pytest.mark.parametrize("name", WEEKS)
def test_the_interval_holds_the_index_and_is_drawn_alike_each_time(name) -> None:
    brief, week = WEEKS[name]
    evaluated = audited(terms_of(**brief), week).evaluated
    low, high = uncertainty.week_interval(evaluated)
    assert low - 0.5 <= evaluated.stimulus <= high + 0.5
    found = uncertainty.intervals(evaluated)
    for muscle, (low, high) in found.items():
        assert low - 0.5 <= evaluated.index(muscle) <= high + 0.5
    assert uncertainty.intervals(evaluated) == found and uncertainty.week_interval(
        evaluated
    ) == uncertainty.week_interval(evaluated)


def test_a_set_more_never_lowers_a_muscle_index() -> None:
    resolved = terms_of()
    for sets in range(1, 9):
        fewer, more = (audited(resolved, (f"cable-curl {n}", "")).evaluated.index("biceps") for n in (sets, sets + 1))
        assert fewer < more


def test_the_same_sets_on_more_days_are_worth_as_much_or_more() -> None:
    resolved = terms_of()
    crammed, spread = (
        audited(resolved, week).evaluated.stimuli["quads"]
        for week in (("leg-press 8", ""), ("leg-press 4", "leg-press 4"))
    )
    assert crammed < spread


def test_every_weight_lies_in_the_catalogue() -> None:
    resolved = terms_of(muscles={"biceps": "priority", "quads": "none", "lats": "hold"})
    weights = CATALOGUE.defaults.weights
    assert {m: resolved.muscles[m].weight for m in ("biceps", "quads", "lats")} == {
        "biceps": weights["priority"],
        "quads": weights["none"],
        "lats": weights["hold"],
    }
