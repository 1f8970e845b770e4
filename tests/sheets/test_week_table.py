"""The week on screen."""

from __future__ import annotations

import math
import os
from collections.abc import Callable
from dataclasses import replace
from pathlib import Path

import pytest

from setwright.catalogue.entries import Catalogue
from setwright.solver.brief.parsed_brief import parse_brief
from setwright.solver.evaluation.finding import UNITS
from setwright.solver.planning import Solved
from setwright.solver.sheets.screen.week_table import week_text

SNAPSHOT = Path(__file__).parent / "two-days.txt"
CAUTION_ENDS = "Local rules and licensed practitioners come first.\n"


def test_reads_as_it_did(solved: Solved) -> None:
    """Rewrite the file with SETWRIGHT_SNAPSHOT=write when a change is meant."""
    text = week_text(solved, 100)
    if os.environ.get("SETWRIGHT_SNAPSHOT") == "write":
        SNAPSHOT.write_text(text, encoding="utf-8")
    assert text == SNAPSHOT.read_text(encoding="utf-8")


@pytest.mark.parametrize("width", [10, 60, 72, 80, 100, 400])
def test_keeps_within_its_width(width: int, solved: Solved) -> None:
    most = min(max(width, 72), 100)
    assert max(map(len, week_text(solved, width).splitlines())) <= most


def test_ends_with_the_caution(solved: Solved) -> None:
    text = week_text(solved)
    assert text.endswith(CAUTION_ENDS)
    assert "https://eparmedx.com" in text


def test_pairs_are_done_in_turn_and_rest_after_the_second(solved: Solved) -> None:
    rows = {line.split()[0]: line for line in week_text(solved).splitlines() if line[:1].isalpha() and " x " in line}
    assert " 0:00" in rows["D1"]
    assert " 1:00" in rows["D2"]


def test_one_limb_lifts_count_each_side_and_techniques_are_words(solved: Solved) -> None:
    text = week_text(solved)
    assert "/side" in text
    assert "last set: 2 drops" in text
    assert "last set: rest-pause" in text
    assert "Ramp-up before Barbell back squat: half load x 8, 70 % x 5, 85 % x 2" in text


def test_a_proved_week_never_claims_nothing_is_left(solved_as: Callable[..., Solved]) -> None:
    text = week_text(solved_as(ended_by="proved", above=0))
    assert "proven best to within 0.01 %" in text
    assert "0.00 %" not in text
    assert "0.00 %" not in week_text(solved_as(above=1))


def test_says_the_gap_or_that_nothing_is_proven(solved: Solved) -> None:
    assert "within 0.50 points" in week_text(solved)
    assert "it is not proven yet how much higher" in week_text(replace(solved, bound_units=math.inf))
    assert "the search was stopped" in week_text(replace(solved, ended_by="stopped"))


def test_clearance_comes_before_the_week(solved_as: Callable[..., Solved], catalogue: Catalogue) -> None:
    raw = {"days": [{"minutes": 30}], "client": {"cautions": [{"tag": "heart-disease"}]}}
    unwell = solved_as(days=((("machine-chest-press", 3, 90),),), parsed=parse_brief(raw, catalogue))
    text = week_text(unwell)
    assert text.startswith("BEFORE THE FIRST SESSION")
    assert "Heart" not in text
    assert "Heart or blood-vessel disease" in week_text(unwell, private=True)
    cleared = {"by": "Dr Q", "on": "2026-01-02", "limits": "no straining"}
    raw["client"]["clearance"] = cleared  # type: ignore[index]
    well = solved_as(days=((("machine-chest-press", 3, 90),),), parsed=parse_brief(raw, catalogue))
    assert "BEFORE" not in week_text(well)
    assert "Cleared by Dr Q on 2026-01-02, limits: no straining." in week_text(well, private=True)


def test_what_pairs_bring_and_cost_is_said(solved: Solved) -> None:
    without = solved.proven_units / 10_000
    much = " ".join(week_text(replace(solved, best_without_pairs=without - 2.34)).split())
    assert "bring at least 2.3 points of score" in much and "feel somewhat harder" in much
    little = " ".join(week_text(replace(solved, best_without_pairs=without + 1.0)).split())
    assert "bring little that could be proven" in little
    assert "Pairs (" not in week_text(replace(solved, best_without_pairs=None))


def test_an_empty_day_is_said(solved_as: Callable[..., Solved]) -> None:
    assert "Thursday: no exercises (40 min given)" in week_text(solved_as(days=(solved_days_first(), ())))


def solved_days_first() -> tuple[tuple[str, int, int], ...]:
    return (("machine-chest-press", 3, 90),)


def test_costs_add_up_to_what_the_score_lacks(solved: Solved) -> None:
    said = next(line for line in week_text(solved).splitlines() if line.startswith("Given up"))
    assert f"({solved.audit.cost_units / UNITS:.1f} in all)" in said
