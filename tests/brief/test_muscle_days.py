"""Muscles that a brief names for a day, or rests on it: read, faulted, told, said back in the header."""

from __future__ import annotations

from typing import Any

import pytest

from setwright.catalogue.load import load_catalogue
from setwright.solver.rulebook import resolve
from setwright.solver.sheets.screen.headline import headline

CATALOGUE = load_catalogue()


def of_days(parsed: Any, field: str) -> dict[str, tuple[str, ...]]:
    return {day.weekday: getattr(day, field) for day in parsed.brief.days if getattr(day, field)}


@pytest.mark.parametrize(
    ("says", "trained", "rested"),
    [
        ("mon wed fri 40 min, train chest on mon and fri", {"mon": ("chest",), "fri": ("chest",)}, {}),
        ("3 x 40, train chest and biceps on wed", {"wed": ("chest", "biceps")}, {}),
        ("mon fri 40 min, rest arms on fri", {}, {"fri": ("arms",)}),
        ("mon wed fri 40 min, train legs only on fri", {"fri": ("legs",)}, {"mon": ("legs",), "wed": ("legs",)}),
    ],
)
def test_what_a_day_trains_and_rests_is_read(asker: Any, says: str, trained: Any, rested: Any) -> None:
    parsed = asker.of(says)
    assert of_days(parsed, "trained") == trained
    assert of_days(parsed, "rested") == rested


@pytest.mark.parametrize(
    ("says", "fault"),
    [
        ("mon wed 40 min, train chest on fri", "names fri, which is not a training day; choose one of mon, wed"),
        ("2x40, any order, train chest on mon", "names a weekday, but the days have none"),
        (
            "mon wed 40 min, train chest on mon, rest chest on mon",
            "but each muscle of it is rested there",
        ),
        ("mon wed 40 min, no chest, train chest on mon", "'chest' is to be trained, but each muscle of it is at none"),
        ("mon wed 40 min, rest legs on mon, train quads on mon", "'quads' is to be trained"),
        ("mon wed 40 min, no legs, train quads on mon", "'quads' is to be trained"),
        ("mon wed fri 40 min, pin squat on both days", "'both days' is said of 3 days"),
    ],
)
def test_what_does_not_agree_is_a_fault(asker: Any, says: str, fault: str) -> None:
    assert any(fault in one for one in asker.faults(says)), asker.faults(says)


def test_more_days_than_a_week_has_are_told_and_no_crash(asker: Any) -> None:
    assert asker.faults("5x40, 4x30, train chest on mon")


def test_what_it_leaves_open_is_told(asker: Any) -> None:
    told = [assumption.text for assumption in asker.of("mon fri 40 min, chest on monday, no arms on friday").assumed]
    assert "chest: direct sets on Mon; other days may have it too" in told
    assert "arms: no direct sets on Fri" in told


def test_the_header_names_the_days_of_a_muscle(asker: Any) -> None:
    brief = asker.of("mon wed fri 40 min, chest on monday and friday, back on wednesday").brief
    said = headline(resolve(brief, CATALOGUE))
    assert "chest on Monday and Friday; back on Wednesday" in said


def test_a_group_is_met_by_any_of_its_muscles(asker: Any) -> None:
    day = resolve(asker.of("mon fri 40 min, train legs on mon").brief, CATALOGUE).days[0]
    assert day.trained == (("legs", frozenset(("quads", "hamstrings", "glutes", "calves"))),)
