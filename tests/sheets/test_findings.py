"""Findings are said with the names of muscles and days."""

from __future__ import annotations

import pytest

from setwright.catalogue.entries import Catalogue
from setwright.solver.sheets.common.findings import spoken

SAID = {
    "side-delts has 1 set, band from 4": "side delts: 1 set, band from 4",
    "no direct set for rear-delts": "no direct set for rear delts",
    "tue gives up 28 s of its warm-up": "Tuesday gives up 28 s of its warm-up",
    "thu: Chest-supported dumbbell row has 2 sets": "Thursday: Chest-supported dumbbell row has 2 sets",
    "sat: lats has 15 sets, at most 14": "Saturday: lats has 15 sets, at most 14",
    "session 1 has no main lift": "session 1 has no main lift",
}


@pytest.mark.parametrize("text", SAID)
def test_muscles_and_days_are_named(text: str, catalogue: Catalogue) -> None:
    assert spoken(text, catalogue) == SAID[text]
