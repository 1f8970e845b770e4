"""Weeks made by hand for the rules that lean on each other: turning one off or making it hard moves both sides."""

from __future__ import annotations

from typing import Any

import pytest
from boards import Place, Week, audited, bounded, days, held, only, place_of

from setwright.solver.engines.build import day_model, week_model
from setwright.solver.engines.highs import ROUNDING

FOUR = days("mon tue thu sat", 60)
LEGS = ("barbell-back-squat", "leg-press", "barbell-romanian-deadlift", "barbell-hip-thrust", "dumbbell-reverse-lunge")


def choose(place: Place, *said: tuple[int, str, int]) -> Week:
    """For each (day, exercise, sets) its first straight column."""
    return tuple(
        next(
            c
            for c in place.columns
            if c.group == day
            and len(c.assignments) == 1
            and c.assignments[0].prescription.sets == sets
            and c.assignments[0].prescription.technique == "straight"
            and place.instance.classes[c.assignments[0].cls].exercise.id == name
        )
        for day, name, sets in said
    )


def agree(place: Place, week: Week) -> None:
    """The model's word on a week is the audit's, on its days and without them."""
    result = audited(place.instance, week)
    broken = [f for f in result.broken if f.rule != "order"]
    here = held(day_model(place.instance, place.columns), week)
    assert here.possible == (not broken), broken
    if not broken:
        assert here.cost <= result.cost_units + ROUNDING, result.costs()
        assert here.value >= result.score_units - ROUNDING
        assert bounded(week_model(place.instance), week) >= result.score_units


def brief(*kept: str, **raw: Any) -> Place:
    raw.setdefault("days", FOUR)
    return place_of(avoid=only(*kept), **raw)


def test_exercise_days_off_lets_a_lift_stand_on_four_days() -> None:
    place = brief("cable-curl", rules={"exercise-days": "off"})
    agree(place, choose(place, *((day, "cable-curl", 2) for day in range(4))))


def test_distinct_made_hard_forbids_every_exercise() -> None:
    place = brief("cable-curl", rules={"distinct": "hard"})
    agree(place, choose(place, (0, "cable-curl", 2)))


def test_line_made_hard_forbids_every_line() -> None:
    place = brief("cable-curl", rules={"line": "hard"})
    agree(place, choose(place, (0, "cable-curl", 2)))


def test_a_like_made_hard_does_not_close_what_is_liked() -> None:
    place = brief("cable-curl", "barbell-curl", like=["cable-curl"], rules={"liked": "hard"})
    result = audited(place.instance, choose(place, (0, "cable-curl", 2)))
    assert not any(f.rule == "liked" for f in result.broken)


@pytest.mark.parametrize("state", ["hard", "off", 0.5])
def test_a_warm_up_that_must_be_given_up(state: str | float) -> None:
    """A day whose lifts leave the warm-up some seconds short."""
    for spare in range(0, 1800, 15):
        place = brief(
            *LEGS, days=days("mon", 40), clock={"spare": spare}, rules={"warm-up-given": state}, goal="growth"
        )
        week = choose(place, (0, "barbell-back-squat", 3), (0, "barbell-hip-thrust", 3))
        evaluated = audited(place.instance, week).evaluated
        if 0 < place.resolved.days[0].warm_up - evaluated.warm_up(0) < place.resolved.days[0].warm_up_give:
            agree(place, week)
            return
    raise AssertionError("no day gives up a part of its warm-up")


@pytest.mark.parametrize("state", ["off", 2.0])
def test_two_hinges_on_one_day_are_one_hinge_day(state: str | float) -> None:
    place = brief(
        "barbell-romanian-deadlift",
        "barbell-deadlift",
        "leg-press",
        days=days("mon thu", 60),
        rules={"movement-once": state},
    )
    agree(
        place,
        choose(place, (0, "barbell-romanian-deadlift", 2), (0, "barbell-deadlift", 2), (1, "leg-press", 2)),
    )


@pytest.mark.parametrize("state", ["off", 20.0])
def test_a_muscle_past_the_days_cap(state: str | float) -> None:
    """Glutes past 14 sets a day: what they are worth may not stop at the cap that the brief took away."""
    place = brief(
        *LEGS,
        days=days("mon", 120),
        rules={"muscle-day-cap": state, "high-fatigue-sets": "off", "axial-load": "off", "movement-once": 2.0},
        muscles={"glutes": "priority"},
        goal="growth",
    )
    agree(place, choose(place, *((0, name, 4) for name in LEGS)))


@pytest.mark.parametrize("cap", ["off", 20.0])
def test_two_days_past_the_cap_with_hard_days_in_force(cap: str | float) -> None:
    place = brief(
        *LEGS,
        days=days("mon tue", 120),
        rules={"muscle-day-cap": cap, "high-fatigue-sets": "off", "axial-load": "off", "movement-once": 2.0},
        muscles={"glutes": "priority"},
        goal="growth",
    )
    agree(place, choose(place, *((0, name, 4) for name in LEGS), (1, "leg-press", 2)))


def test_an_exact_band_turned_off_does_not_cap_what_sets_are_worth() -> None:
    place = brief(
        "cable-curl",
        days=days("mon thu", 60),
        muscles={"biceps": {"emphasis": "priority", "at_most": 3.0}},
        rules={"exact-band": "off"},
    )
    agree(place, choose(place, (0, "cable-curl", 4), (1, "cable-curl", 4)))


def test_slot_once_off_prints_both_lifts_of_a_slot() -> None:
    place = brief("cable-curl", "barbell-curl", days=days("mon", 60), rules={"slot-once": "off", "movement-once": 2.0})
    week = choose(place, (0, "cable-curl", 2), (0, "barbell-curl", 3))
    assert [line.sets for line in audited(place.instance, week).evaluated.lines] in ([2, 3], [3, 2])
    agree(place, week)


def test_seconds_of_warm_up_cost_the_same_on_both_sides() -> None:
    """Where costs are scaled to odd fractions they are rounded once, not for each second (set, line, lift)."""
    for spare in range(0, 1800, 15):
        place = brief(
            *LEGS,
            days=days("mon", 40),
            clock={"spare": spare},
            goal="growth",
            muscles={"chest": "none", "biceps": "none", "triceps": "none", "calves": "none"},
        )
        week = choose(place, (0, "barbell-back-squat", 3), (0, "barbell-hip-thrust", 3))
        given = place.resolved.days[0].warm_up - audited(place.instance, week).evaluated.warm_up(0)
        if given > 30:
            cost = audited(place.instance, week).costs()["warm-up-given"]
            assert cost == pytest.approx(given * place.resolved.cost("warm-up-given"), abs=0.51)
            return


@pytest.mark.parametrize("minutes", [10, 12])
def test_a_day_with_no_time_left_is_an_empty_day(minutes: int) -> None:
    """The audit passes an empty day whatever its minutes; so must the model."""
    place = brief("cable-curl", days=days("mon thu", minutes, 60), clock={"warm_up": 900})
    agree(place, choose(place, (1, "cable-curl", 2)))
