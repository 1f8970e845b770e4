"""Sentences about rests, effort, hours of the clock, lifts of a day, places that differ, and what no brief holds."""

from __future__ import annotations

from typing import Any

import pytest

from setwright.catalogue.load import load_catalogue

CATALOGUE = load_catalogue()

SETS: dict[str, dict[str, Any]] = {
    "rest at most 90 s": {"rest_at_most": 90},
    "rest at least 2 min": {"rest_at_least": 120},
    "rest 60-90 s": {"rest_at_least": 60, "rest_at_most": 90},
    "rest 75 s": {"rest_at_least": 75, "rest_at_most": 75},
    "short rests": {"rest_at_most": 60},
    "long rests": {"rest_at_least": 120},
    "at least 3 RIR": {"rir_at_least": 3},
    "rir 2": {"rir_at_least": 2},
    "nothing to failure": {"rir_at_least": 1},
    "I stop 3 reps short of failure": {"rir_at_least": 3},
    "please never go to failure": {"rir_at_least": 1},
    "rpe 7-8": {"rir_at_least": 2},
    "no more than a minute of rest between sets": {"rest_at_most": 60},
    "rests between 60 and 90 seconds": {"rest_at_least": 60, "rest_at_most": 90},
    "at most 5 exercises a day": {"rules": {"exercise-count": 5.0}},
}


@pytest.mark.parametrize("says", SETS)
def test_what_is_asked_of_every_set(asker: Any, says: str) -> None:
    for whole in (f"3 x 45 min, {says}", f"{says}, 3 x 45 min"):
        brief = asker.of(whole).brief
        for field in ("rest_at_least", "rest_at_most", "rir_at_least"):
            assert getattr(brief, field) == SETS[says].get(field), (whole, field)
        assert brief.rules == SETS[says].get("rules", {})
        assert [day.minutes for day in brief.days] == [45, 45, 45]


def test_the_seconds_of_a_repetition_are_the_clock_s(asker: Any) -> None:
    assert asker.of("3x45, 5 seconds a rep").brief.clock.seconds_per_rep == 5


@pytest.mark.parametrize(
    ("says", "minutes"),
    [
        ("mon wed from 6 to 7 am", 60),
        ("mon wed between 6 and 7 pm", 60),
        ("mon wed 18:30-19:15", 45),
        ("mon wed 11:30 am to 1 pm", 90),
        ("mon wed 11-12:15 pm", 75),
        ("mon wed 12:30 to 1:15 pm", 45),
        ("mon wed 45 min, at 6am", 45),
        ("45 min starting at 6:15, mon wed", 45),
    ],
)
def test_hours_are_minutes_or_nothing(asker: Any, says: str, minutes: int) -> None:
    brief = asker.of(says).brief
    assert [(day.weekday, day.minutes) for day in brief.days] == [("mon", minutes), ("wed", minutes)]


def test_an_hour_that_is_passed_over_is_told(asker: Any) -> None:
    assert any("at 6am: the week names no hours" in a.text for a in asker.of("at 6am, mon wed 45 min").assumed)


@pytest.mark.parametrize(
    ("says", "pins", "days"),
    [
        ("bench press on Monday, squats on Thursday, 60 min each", {"mon", "thu"}, ["mon", "thu"]),
        ("5 days 40 min, squat tuesday", {"tue"}, ["mon", "tue", "wed", "fri", "sat"]),
        ("tue fri 40 min, Tuesday starts with front squats", {"tue"}, ["tue", "fri"]),
    ],
)
def test_a_lift_of_a_weekday_is_a_pin(asker: Any, says: str, pins: set[str], days: list[str]) -> None:
    brief = asker.of(says).brief
    assert {pin.day for pin in brief.pins} == pins
    assert [day.weekday for day in brief.days] == days


def test_counted_days_have_their_own_places(asker: Any) -> None:
    brief = asker.of("2 days x 45 min gym, 1 days x 20 min bands").brief
    assert [day.equipment for day in brief.days] == ["commercial-gym", "commercial-gym", "bands"]
    assert "others have no place" in asker.faults("2x40 gym, 1x20")[0]


def test_machines_are_all_that_guide_the_load(asker: Any) -> None:
    """Common practice, no source: a cable guides nothing, and a pulldown hangs from one."""
    absent = set(asker.of("3x40, no machines").brief.without)
    assert {"leg-press", "smith", "pec-deck"} <= absent
    assert not absent & {"cable", "cable-pair", "pulldown", "seated-row", "bench", "rack", "dumbbell"}
    assert absent == {item.id for item in CATALOGUE.items.values() if item.machine}


@pytest.mark.parametrize(
    ("says", "nearest"),
    [
        ("failure on curls", "write nothing to failure, or at least 2 RIR"),
        ("tempo 3-1-1", "for example 5 seconds a rep"),
        ("less rest", "write for example rest at most 90 s"),
        ("rir 0", "write at least 1 RIR"),
        ("at least 5 exercises a session", "write for example at most 5 exercises a day"),
        ("at most 9 exercises a day", "write at most 1 to 6"),
    ],
)
def test_what_no_brief_holds_is_told_with_the_nearest_thing(asker: Any, says: str, nearest: str) -> None:
    assert any(nearest in fault for fault in asker.faults(f"3 x 45 min, {says}"))
