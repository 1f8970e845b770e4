"""What a phrase closes where it names no lift in particular: `no squats` closes every squat, a full name one lift."""

from __future__ import annotations

import io

import pytest

from setwright.catalogue.load import load_catalogue
from setwright.solver.brief.file import read_brief
from setwright.solver.brief.parsed_brief import ParsedBrief

CATALOGUE = load_catalogue()


def parse(phrase: str) -> ParsedBrief:
    return read_brief(phrase, CATALOGUE, io.BytesIO(b""))


FAMILIES = {
    "no squats": (
        {"barbell-back-squat", "barbell-front-squat", "hack-squat", "goblet-squat"},
        {"leg-press", "sissy-squat"},
    ),
    "no deadlifts": ({"barbell-deadlift", "sumo-deadlift", "barbell-romanian-deadlift"}, {"barbell-good-morning"}),
    "no bench press": ({"barbell-bench-press", "dumbbell-bench-press"}, {"push-up", "machine-fly"}),
    "avoid overhead presses": ({"barbell-overhead-press", "standing-dumbbell-overhead-press"}, {"pike-push-up"}),
    "no calf raises": ({"standing-calf-raise", "dumbbell-calf-raise"}, {"tibialis-raise", "barbell-hip-thrust"}),
    "no curls": ({"dumbbell-curl", "machine-curl", "cable-curl"}, {"seated-leg-curl", "lying-leg-curl"}),
    "no hip thrusts": ({"barbell-hip-thrust", "machine-hip-thrust"}, {"floor-glute-bridge"}),
    "no rows": ({"barbell-row-to-chest", "one-arm-dumbbell-row"}, {"barbell-upright-row", "pull-up"}),
    "avoid lunges": ({"dumbbell-walking-lunge", "dumbbell-reverse-lunge"}, {"dumbbell-split-squat"}),
    "no push-ups": ({"push-up", "close-push-up", "hands-raised-push-up"}, {"parallel-bar-dip"}),
    "no vertical pulls": ({"pull-up", "wide-grip-pulldown"}, {"close-grip-seated-cable-row"}),
}
"""What is said of no lift in particular, some lifts that it closes, and some that it leaves open."""


@pytest.mark.parametrize("said", FAMILIES)
def test_a_family_is_closed_and_nothing_beside_it(said: str) -> None:
    closed, left = FAMILIES[said]
    avoided = set(parse(f"3 x 40, {said}").brief.avoid)
    assert closed <= avoided and not avoided & left


@pytest.mark.parametrize("said", ["no barbell back squat", "avoid barbell-back-squat"])
def test_a_full_name_closes_the_one_lift(said: str) -> None:
    assert parse(f"3 x 40, {said}").brief.avoid == ("barbell-back-squat",)


def test_a_family_may_be_disliked() -> None:
    assert {"parallel-bar-dip", "machine-dip"} <= set(parse("3 x 40, dislike dips").brief.dislike)


def test_what_a_family_closed_is_said() -> None:
    said = [one.text for one in parse("3 x 40, no squats, no rack").assumed]
    assert any(text.startswith("avoided: barbell back squat, ") and text.endswith(" more") for text in said)
    assert any(text.startswith("not there: ") and "rack" in text for text in said)
