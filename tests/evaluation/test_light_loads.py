"""Dumbbells that are light for an intermediate are none for a novice, until they are light for both."""

from __future__ import annotations

import pytest

from setwright.catalogue.load import load_catalogue
from setwright.solver.brief.parsed_brief import parse_brief
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
