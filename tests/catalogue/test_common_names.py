"""The names that coaches use are read as the lift they mean (tests/catalogue/common_names.txt)."""

from __future__ import annotations

from pathlib import Path

import pytest

from setwright.catalogue.load import load_catalogue
from setwright.solver.sheets.common.exercise_names import ExerciseNames

LINES = Path(__file__).with_name("common_names.txt").read_text(encoding="utf-8").splitlines()
NAMES = [tuple(line.split(": ")) for line in LINES if not line.startswith("#")]
READER = ExerciseNames(load_catalogue())


def test_there_are_more_than_three_hundred() -> None:
    assert len({name for name, _ in NAMES}) == len(NAMES) > 300


@pytest.mark.parametrize(("name", "exercise"), NAMES)
def test_a_common_name_is_read_as_the_lift_it_means(name: str, exercise: str) -> None:
    assert READER.exercise_id(name) == exercise
    assert READER.exercise_id(name.upper()) == exercise
