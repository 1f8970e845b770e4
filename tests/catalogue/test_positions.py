"""Which exercises are in which position, checked against the words of their settings. The lists are common practice."""

from __future__ import annotations

import re

import pytest

from setwright.catalogue.cautions import JOINTS
from setwright.catalogue.entries import Catalogue
from setwright.catalogue.load import load_catalogue
from setwright.catalogue.positions import is_in, positions_of


@pytest.fixture(scope="module")
def catalogue() -> Catalogue:
    return load_catalogue()


def held(catalogue: Catalogue, position: str) -> set[str]:
    return {e.id for e in catalogue.exercises.values() if is_in(e, catalogue.positions[position])}


SAYS = {
    "face-down": r"face down|prone|on the belly|on the stomach",
    "on-the-back": r"^on the back,|flat bench|lie on the floor|lie along|lying on the back|\bsupine",
    "head-down": r"decline|head between the arms|head down|chest on the thighs|wheel|handstand|burpee",
    "hips-raised": r"bridge\b|hips up",
    "belly-pressure": r"over the hips|chest on the pad|at the breastbone|face down|chest against",
    "loaded-twist": r"\btwist|woodchop|rotary|russian",
}
"""What a setting or a name says of a position, in words chosen apart from the catalogue's own."""
NOT = {("belly-pressure", "reverse-crunch"), ("belly-pressure", "dead-bug")}
"""Exercises whose setting has such words of something else: knees over the hips press on nothing."""


@pytest.mark.parametrize("position", SAYS)
def test_what_a_setting_says_is_in_the_position(catalogue: Catalogue, position: str) -> None:
    there = held(catalogue, position)
    for exercise in catalogue.exercises.values():
        said = any(re.search(SAYS[position], text.lower()) for text in (exercise.setting, exercise.name))
        if said and (position, exercise.id) not in NOT:
            assert exercise.id in there, f"{exercise.id}: add it to position.{position} in cautions.toml"


@pytest.mark.parametrize(
    ("position", "inside", "outside"),
    [
        ("face-down", "lying-leg-curl superman chest-supported-dumbbell-row", "seated-leg-curl push-up plank"),
        ("belly-pressure", "barbell-hip-thrust lying-leg-curl", "close-grip-seated-cable-row seated-leg-curl"),
        ("head-down", "pike-push-up feet-raised-pike-push-up", "push-up barbell-romanian-deadlift"),
        ("head-down", "decline-barbell-bench-press decline-dumbbell-press decline-sit-up", "leg-press crunch"),
        ("head-down", "seated-dumbbell-rear-raise ab-wheel-rollout back-extension", "dead-bug hanging-knee-raise"),
        ("hips-raised", "floor-glute-bridge slider-leg-curl heel-walkout-leg-curl", "barbell-hip-thrust crunch"),
        ("long-hold", "plank side-plank dumbbell-farmers-carry", "dead-bug cable-crunch"),
        ("loaded-bend", "cable-crunch dumbbell-side-bend", "plank dead-bug barbell-romanian-deadlift back-extension"),
        ("loaded-twist", "cable-woodchop rotary-torso", "cable-anti-rotation-press band-anti-rotation-press"),
        ("under-the-load", "barbell-bench-press barbell-back-squat", "dumbbell-bench-press leg-press"),
        ("loaded-shoulders", "smith-calf-raise standing-calf-raise", "leg-press-calf-raise hack-squat"),
        ("on-the-back", "dumbbell-bench-press crunch", "incline-dumbbell-press push-up"),
    ],
)  # fmt: skip
def test_known_exercises(catalogue: Catalogue, position: str, inside: str, outside: str) -> None:
    there = held(catalogue, position)
    assert set(inside.split()) <= there
    assert not set(outside.split()) & there


@pytest.mark.parametrize("tag", ["heart-disease", "high-blood-pressure", "chest-symptoms", "eye-disease", "reflux"])
def test_what_a_low_head_harms_closes_it_and_tells_of_raised_hips(catalogue: Catalogue, tag: str) -> None:
    """Common practice, no source: pressure in the head, the eye and the gullet rises with the head below the heart."""
    limits = catalogue.cautions[tag].limits
    assert "head-down" in limits.closes_positions
    assert "hips-raised" in limits.closes_positions | limits.warns_positions


def test_every_hold_and_every_lift_that_can_trap_is_in_its_position(catalogue: Catalogue) -> None:
    for exercise in catalogue.exercises.values():
        assert not exercise.timed or "long-hold" in positions_of(exercise, catalogue)
        assert not exercise.can_pin or "under-the-load" in positions_of(exercise, catalogue)


def test_positions_and_joints_are_those_of_exercises(catalogue: Catalogue) -> None:
    for position in catalogue.positions:
        assert held(catalogue, position), position
    for joint in JOINTS:
        assert any(joint in e.joints for e in catalogue.exercises.values()), joint


@pytest.mark.parametrize("kit", ["commercial-gym", "machine-gym", "home-dumbbells"])
def test_a_caution_leaves_something_of_every_region(catalogue: Catalogue, kit: str) -> None:
    """Whatever one caution closes, a press, a pull and a leg lift are left."""
    items = catalogue.kits[kit].items
    for caution in catalogue.cautions.values():
        limits = caution.limits
        left = [
            e
            for e in catalogue.exercises.values()
            if items.issuperset(e.needs)
            and e.rank < 5
            and not e.ability
            and limits.closes_joints.isdisjoint(e.joints)
            and limits.closes_positions.isdisjoint(positions_of(e, catalogue))
        ]
        for region in ("push", "pull", "lower"):
            assert any(e.multi_joint and e.region == region for e in left), (caution.id, kit, region)
