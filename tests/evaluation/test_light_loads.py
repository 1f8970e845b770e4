"""Dumbbells that are light for an intermediate are none for a novice, until they are light for both."""

from __future__ import annotations

from typing import Any

import pytest

from setwright.catalogue.load import load_catalogue
from setwright.solver.brief.parsed_brief import parse_brief
from setwright.solver.evaluation.resolved_brief import ResolvedBrief
from setwright.solver.rulebook import resolve

CATALOGUE = load_catalogue()


@pytest.mark.parametrize(
    ("heaviest", "experience", "light"),
    [(20, "novice", False), (20, "intermediate", True), (16, "novice", True), (24, "intermediate", False)],
)
def test_a_romanian_deadlift_is_light_by_who_lifts(heaviest: int, experience: str, light: bool) -> None:
    """24 kg is the catalogue's, seven tenths of it for a novice (both conventions)."""
    raw = {
        "days": [{"weekday": "mon", "minutes": 40}],
        "equipment": ["dumbbell", "bench"],
        "owned": {"dumbbell_max": float(heaviest)},
        "client": {"experience": experience},
    }
    resolved = resolve(parse_brief(raw, CATALOGUE, "test").brief, CATALOGUE)
    assert resolved.light(CATALOGUE.exercises["dumbbell-romanian-deadlift"], resolved.days[0]) is light


def test_dumbbells_that_are_light_for_others_are_none_for_someone_older() -> None:
    """Common practice, no source; 20 kg are light for a Romanian deadlift at 59, not at 60."""
    lift = CATALOGUE.exercises["dumbbell-romanian-deadlift"]
    for age, light in ((59, True), (60, False)):
        resolved = resolved_with(["dumbbell", "bench"], {"age": age})
        assert resolved.light(lift, resolved.days[0]) is light, age


@pytest.mark.parametrize(("kit", "rank"), [(["dumbbell", "bench"], 1), (["dumbbell", "bench", "smith"], 3)])
def test_one_leg_comes_first_only_where_light_dumbbells_are_all_there_is(kit: list[str], rank: int) -> None:
    """A guided bar loads a hinge on both legs, so that nobody is stood on one for want of weight."""
    resolved = resolved_with(kit, {})
    lift = CATALOGUE.exercises["dumbbell-staggered-stance-romanian-deadlift"]
    assert resolved.rank(lift, resolved.days[0]) == rank


def test_light_dumbbells_stand_in_for_a_bar_only() -> None:
    lift = CATALOGUE.exercises["dumbbell-romanian-deadlift"]
    for kit, rank in ((["dumbbell", "bench"], 2), (["dumbbell", "bench", "smith"], 3)):
        resolved = resolved_with(kit, {})
        assert resolved.rank(lift, resolved.days[0]) == rank, kit


def resolved_with(kit: list[str], client: dict[str, Any]) -> ResolvedBrief:
    """A day of 40 minutes with dumbbells up to 20 kg."""
    raw = {
        "days": [{"weekday": "mon", "minutes": 40}],
        "equipment": kit,
        "owned": {"dumbbell_max": 20.0},
        "client": client,
    }
    return resolve(parse_brief(raw, CATALOGUE, "test").brief, CATALOGUE)
