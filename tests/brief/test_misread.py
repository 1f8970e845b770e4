"""Phrases that were once read as something else than a person means: each is now read so, or asked about."""

from __future__ import annotations

import io
from typing import Any

import pytest

from setwright.catalogue.faults import UsageFault
from setwright.catalogue.load import load_catalogue
from setwright.solver.brief.file import read_brief
from setwright.solver.brief.schema import Brief

CATALOGUE = load_catalogue()


def read(phrase: str) -> Brief:
    return read_brief(phrase, CATALOGUE, io.BytesIO(b"")).brief


def themes(phrase: str) -> list[tuple[str | None, int, str | None]]:
    return [(day.weekday, day.minutes, day.focus) for day in read(phrase).days]


@pytest.mark.parametrize(
    ("phrase", "days"),
    [
        ("mon wed fri upper 40 min", [("mon", 40, "upper"), ("wed", 40, "upper"), ("fri", 40, "upper")]),
        (
            "mon thu push 45 min, tue fri pull 45 min",
            [("mon", 45, "push"), ("tue", 45, "pull"), ("thu", 45, "push"), ("fri", 45, "pull")],
        ),
        ("mon upper, thu lower 60 min", [("mon", 60, "upper"), ("thu", 60, "lower")]),
        ("40 min mon wed", [("mon", 40, None), ("wed", 40, None)]),
        ("weekends 60 min", [("sat", 60, None), ("sun", 60, None)]),
        ("on the weekend 60 min", [("sat", 60, None), ("sun", 60, None)]),
        ("weekends upper 60 min", [("sat", 60, "upper"), ("sun", 60, "upper")]),
        ("mon-wed upper 40 min", [("mon", 40, "upper"), ("tue", 40, "upper"), ("wed", 40, "upper")]),
        ("2x/week 45 min", [("mon", 45, None), ("thu", 45, None)]),
        ("2 days/week 45 min", [("mon", 45, None), ("thu", 45, None)]),
    ],
)
def test_the_days(phrase: str, days: list[tuple[str, int, str | None]]) -> None:
    assert themes(phrase) == days


@pytest.mark.parametrize(
    ("phrase", "field", "value"),
    [
        ("no barbell but dumbbells", "without", ("barbell",)),
        ("no barbell or rack", "without", ("barbell", "rack")),
        ("no barbell, rack or bench", "without", ("barbell", "rack", "bench")),
        ("no barbell, no rack", "without", ("barbell", "rack")),
        ("supersets", "pairs", True),
        ("no supersets", "pairs", False),
        ("pressed for time", "goal", "efficiency"),
    ],
)
def test_what_is_there_and_wanted(phrase: str, field: str, value: Any) -> None:
    assert getattr(read(f"3 x 40, {phrase}"), field) == value


@pytest.mark.parametrize(
    ("said", "emphasis"), [("skip abs", "none"), ("bigger arms", "priority"), ("focus on glutes", "priority")]
)
def test_muscles(said: str, emphasis: str) -> None:
    assert read(f"3 x 40, {said}").muscles[said.split()[-1]].emphasis == emphasis


def test_but_opens_a_lift_of_a_closed_family_again() -> None:
    all_of_them, but = (set(read(f"3 x 40, no squats{more}").avoid) for more in ("", " but goblet squat"))
    assert all_of_them - but == {"goblet-squat"}
    assert not read("3 x 40, no squats but leg press").without


def test_a_first_time_is_a_novices() -> None:
    assert read("3 x 40, first time in a gym").client.experience == "novice"


@pytest.mark.parametrize(
    ("phrase", "fault"),
    [
        ("3 x 40, no barbell, dumbbells and bench", "may mean that the last of these are there"),
        ("3 x 40, no plank, dumbbells", "may mean that the last of these are there"),
        ("3 x 40, no rack, pull-up bar and dumbbells", "may mean that the last of these are there"),
        ("mon or tue 40 min", "'mon or tue' leaves open which day it is"),
        ("3 x 40, 1.5 rest days between", "got 1.5 rest days between sessions, expected a whole number"),
        ("3 x 40, no chest but biceps", "'biceps' stands alone"),
    ],
)
def test_what_may_mean_two_things_is_asked(phrase: str, fault: str) -> None:
    with pytest.raises(UsageFault) as caught:
        read(phrase)
    assert any(fault in str(one) for one in caught.value.faults)
