"""`load` from the command line: words, JSON, and what wrong input is told."""

from __future__ import annotations

import json
from collections.abc import Callable

import pytest
from click.testing import Result

Run = Callable[..., Result]


def test_the_maximum_the_load_and_its_plates_are_said(run: Run) -> None:
    result = run("load", "bench press", "80x8", "--left", "2", "--reps", "6-8")
    assert result.exit_code == 0
    for said in (
        "106.7 kg (Epley), 106.7 kg (Brzycki)",
        "Begin 6-8 x with 82.5 kg (20 + 10 + 1.25 a side)",
        "Ramp-up: ",
    ):
        assert said in result.stdout
    assert "spotter" in result.stdout and max(map(len, result.stdout.splitlines())) <= 100


def test_json_holds_every_weight_in_its_unit(run: Run) -> None:
    words = ("load", "squat", "225x5", "--unit", "lb", "--plates", "45,45,25,10,5", "--json")
    document = json.loads(run(*words).stdout)
    assert document["schema"] == "setwright.load/1" and document["unit"] == "lb"
    assert document["begin"] == {"load": 195.0, "plates_a_side": [45.0, 25.0, 5.0]}


def test_a_load_that_cannot_be_built_is_said(run: Run) -> None:
    assert "nothing that light can be built" in run("load", "bench press", "10x8").stdout


@pytest.mark.parametrize(
    ("words", "said"),
    [
        (("bench press", "eighty"), "expected a load and repetitions such as 80x8"),
        (("bench press", "0x8"), "expected a load above 0"),
        (("bench press", "80x400"), "1 to 60 repetitions"),
        (("bench press", "80x8", "--reps", "12-8"), "the fewer first"),
        (("bench press", "80x8", "--plates", "20,-5"), "expected weights above 0"),
        (("bench press", "80x8", "--plates", ",".join(21 * ["1.25"])), "at most 20"),
        (("bench pres", "80x8"), "did you mean"),
        (("push-up", "80x8"), "has no load in kg to choose"),
        (("weighted pull-up", "10x6", "--reps", "8-10"), "adds to the body's own weight"),
    ],
)
def test_wrong_input_is_a_usage_error(run: Run, words: tuple[str, ...], said: str) -> None:
    result = run("load", *words)
    assert result.exit_code == 2 and said in result.stderr
