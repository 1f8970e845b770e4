"""The chart of a season, read as XML: a step a week, as high as its sets, filled by emphasis, on the week's place."""

from __future__ import annotations

import xml.etree.ElementTree as ET
from datetime import date

import pytest

from setwright.solver.sheets.charts.season import BAR, DrawnBlock, season_chart

SVG = "{http://www.w3.org/2000/svg}"
NAMES = ("Chest", "A muscle & a very long name <indeed>")
BLOCKS = (
    DrawnBlock(0, (("priority", (8.0, 10.0, 10.0, 5.0)), ("normal", (6.0, 6.0, 6.0, 3.0)))),
    DrawnBlock(6, (("hold", (2.0, 2.0, 2.0, 1.0)), ("normal", (12.0, 12.0, 12.0, 6.0)))),
)
CHART = season_chart(NAMES, BLOCKS, date(2026, 1, 5), 12)


def marks(role: str) -> list[dict[str, str]]:
    return [mark.attrib for mark in ET.fromstring(CHART).iter(f"{SVG}rect") if mark.get("class") == role]


def test_a_step_is_as_high_as_its_sets_and_as_wide_as_its_weeks() -> None:
    steps = marks("step")
    weeks = [(1, 8), (2, 10), (1, 5), (3, 6), (1, 3), (3, 2), (1, 1), (3, 12), (1, 6)]
    wide = float(steps[0]["width"])
    assert [float(s["width"]) for s in steps] == pytest.approx([wide * n for n, _ in weeks], abs=0.02)
    assert [float(s["height"]) for s in steps] == pytest.approx([BAR * sets / 12 for _, sets in weeks], abs=0.01)


def test_blocks_stand_on_their_weeks() -> None:
    steps = marks("step")
    wide, left = float(steps[0]["width"]), float(steps[0]["x"])
    assert float(steps[5]["x"]) == pytest.approx(left + 6 * wide, abs=0.02)


def test_emphases_are_told_apart_without_colour() -> None:
    fills = [step["fill"] for step in marks("step")]
    assert fills[0] == fills[1] == "currentColor"
    assert fills[3] == fills[7] == "url(#season-hatch)"
    assert fills[5] == "none"


def test_everything_stands_on_the_picture() -> None:
    root = ET.fromstring(CHART)
    width, height = (float(side) for side in (root.get("viewBox") or "").split()[2:])
    for mark in root.iter(f"{SVG}rect"):
        if mark.get("class"):
            x, y, w, h = (float(mark.get(side) or 0) for side in ("x", "y", "width", "height"))
            assert x >= 0 and x + w <= width and y >= 0 and y + h <= height
    for text in root.iter(f"{SVG}text"):
        assert 0 <= float(text.get("x") or 0) <= width and 0 < float(text.get("y") or 0) <= height


def test_the_months_and_the_full_sets_are_named() -> None:
    said = [text.text for text in ET.fromstring(CHART).iter(f"{SVG}text")]
    assert {"2026-01-05", "02", "03"} <= set(said)
    assert {"10", "6", "2", "12"} <= set(said)
    description = ET.fromstring(CHART)[1].text or ""
    assert "Chest: block 1 10, block 2 2" in description
