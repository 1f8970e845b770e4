"""Holds and carries: counted in slow breaths, printed in seconds, read back as they were."""

from __future__ import annotations

from collections.abc import Callable

import pytest
from weeks import audited, days, terms_of

from setwright.catalogue.check import REP_RANGES
from setwright.catalogue.load import load_catalogue
from setwright.solver.foreign.foreign_week import read_any
from setwright.solver.foreign.rows.cells import hold_seconds
from setwright.solver.planning import Solved
from setwright.solver.sheets.common.loads.ramp import ramp_ups, warm_up_said
from setwright.solver.sheets.common.words import breaths, dose, held_seconds, warm_up_words
from setwright.solver.sheets.document.solved_week import week_document
from setwright.solver.sheets.handout.handout import handout_of
from setwright.solver.sheets.html.exercise_plan import line_plan

CATALOGUE = load_catalogue()
TIMED = {"plank": "3 x 30-45 s", "side-plank": "3 x 25-30 s/side", "dumbbell-farmers-carry": "3 x 35-60 s"}


@pytest.mark.parametrize(("name", "words"), TIMED.items())
def test_a_hold_is_printed_in_seconds(name: str, words: str) -> None:
    exercise = CATALOGUE.exercises[name]
    assert dose(3, exercise.reps, exercise) == words


def test_what_is_lifted_is_printed_in_repetitions() -> None:
    exercise = CATALOGUE.exercises["barbell-back-squat"]
    assert dose(3, (6, 8), exercise) == "3 x 6-8"


def test_a_warm_up_of_seconds_is_left_to_the_first_lift() -> None:
    shortest = CATALOGUE.defaults.warm_up_shortest
    assert warm_up_words(shortest, shortest, ramp_up_follows=False) == "0:30 easy whole-body movement"
    assert warm_up_words(shortest - 1, shortest, ramp_up_follows=True) == "the first lift's own lighter sets"


def test_lighter_sets_are_named_only_where_some_follow() -> None:
    """The card of a day whose first lift has no ramp-up sends nobody to sets that it does not list."""
    for lines, ramped in (("dumbbell-curl 4, dumbbell-side-raise 4", False), ("dumbbell-bench-press 4 rest=120", True)):
        resolved = terms_of(days=days("mon", 10), equipment="home-dumbbells", goal="efficiency")
        evaluated = audited(resolved, [lines]).evaluated
        assert evaluated.warm_up(0) < CATALOGUE.defaults.warm_up_shortest and (0 in ramp_ups(evaluated, 0)) is ramped
        said = warm_up_said(evaluated, 0)
        assert ("lighter sets" in said) is ramped and (said == "a few easy repetitions of the first lift") is not ramped


def test_nothing_timed_is_taken_to_its_last_repetition_by_a_technique() -> None:
    assert all(not e.techniques for e in CATALOGUE.exercises.values() if e.timed)


@pytest.mark.parametrize("reps", sorted(REP_RANGES))
def test_seconds_tell_every_range_of_the_catalogue(reps: tuple[int, int]) -> None:
    assert breaths(held_seconds(reps)) == reps


def test_a_range_outside_the_catalogue_is_taken_to_the_nearest_breath() -> None:
    assert breaths((20, 40)) == (7, 13)
    assert breaths((1, 300)) == (1, 100)


@pytest.mark.parametrize(
    ("cell", "seconds"),
    [("30-45 s", (30, 45)), ("30 to 45 sec", (30, 45)), ("40s", (40, 40)), ("25-30 s/side", (25, 30)), ("8-12", None)],
)
def test_seconds_in_a_cell(cell: str, seconds: tuple[int, int] | None) -> None:
    assert hold_seconds(cell) == seconds


ROWS = "day,exercise,sets,reps\nmon,plank,3,30-45 s\nmon,side plank,2,10-12\nmon,dumbbell curl,3,8-12\n"


def test_a_week_from_elsewhere_may_say_seconds() -> None:
    entries = read_any(ROWS.encode(), "week.csv", CATALOGUE).week.entries
    assert [entry.reps for entry in entries] == [(10, 15), (10, 12), (8, 12)]


def test_schema_org_has_how_long_a_hold_lasts(solved_as: Callable[..., Solved]) -> None:
    week = week_document(solved_as("mon 40 min", ((("plank", 3, 60),),)))
    line = handout_of(week, CATALOGUE).sessions[0].lines[-1]
    assert (line.timed, line.reps) == (True, "30-45 s")
    said = line_plan(1, line)
    assert "repetitions" not in said
    assert (said["activityDuration"]["minValue"], said["activityDuration"]["maxValue"]) == (30, 45)
