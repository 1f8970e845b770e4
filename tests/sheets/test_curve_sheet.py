"""What time buys, on fixed rows: the table, the chart in letters, the sentences, the drawing."""

from __future__ import annotations

import re
import xml.etree.ElementTree as ET
from collections.abc import Callable
from dataclasses import replace

import pytest

from setwright.solver.planning import Solved
from setwright.solver.search.limits import SEARCHES
from setwright.solver.search.stopping import EndedBy
from setwright.solver.sheets.common.bars import bars
from setwright.solver.sheets.screen.trade_offs.curve import curve_document, curve_text, drawn_curve
from setwright.solver.uses.time_budget.time_curve import CurvePoint, TimeCurve

Build = Callable[..., Solved]
ONE = (("barbell-back-squat", 3, 120),)
TWO = (*ONE, ("wide-grip-pulldown", 3, 90))
THREE = (*TWO, ("dumbbell-bench-press", 3, 90))


@pytest.fixture(scope="module")
def curve(solved_as: Build) -> TimeCurve:
    weeks = [solved_as("mon 40 min", (rows,)) for rows in (ONE, TWO, THREE)]
    points = [CurvePoint(20, 20, None, None)]
    points += [CurvePoint(m, m, week, m) for m, week in zip((30, 40, 50), weeks, strict=True)]
    points.append(CurvePoint(60, 60, weeks[2], 50))
    return TimeCurve("minutes", weeks[0].parsed, SEARCHES["quick"], tuple(points), 4, EndedBy.WORK_LIMIT, 600.0)


@pytest.mark.parametrize("width", [80, 100])
def test_the_text_fits_and_says_what_it_must(curve: TimeCurve, width: int) -> None:
    text = curve_text(curve, width)
    assert [line for line in text.splitlines() if len(line) > width] == []
    assert "no week found" in text and "No week was found at 20 min a session" in " ".join(text.split())
    assert "the week of 50" in text
    assert "5 rows from 4 quick searches" in text
    assert "not medical advice" in " ".join(text.split())


def test_the_bend_is_marked_in_the_table_the_chart_and_the_words(curve: TimeCurve) -> None:
    assert curve.knee is not None
    bent = curve.points[curve.knee].amount
    text = " ".join(curve_text(curve).split())
    assert f"The curve bends at {bent} min a session" in text
    assert text.count("<- bend") == 1
    assert curve_document(curve)["bend"] == bent


def test_beyond_the_last_better_week_nothing_is_promised(curve: TimeCurve) -> None:
    """The last two rows share a week, whose bound lies half a point above it."""
    text = " ".join(curve_text(curve).split())
    assert "Beyond 50 min a session next to nothing is gained: no better week was found" in text
    assert "none can score more than 0.5 points above it" in text


def test_a_title_may_hold_anything(curve: TimeCurve) -> None:
    """The heading is made of its parts, so a title with the mark between parts in it stays whole."""
    points = []
    for point in curve.points:
        if point.solved is not None:
            brief = point.solved.resolved.brief.model_copy(update={"title": "Spring; goal strength"})
            resolved = replace(point.solved.resolved, brief=brief)
            point = replace(point, solved=replace(point.solved, resolved=resolved))
        points.append(point)
    head = " ".join(curve_text(replace(curve, points=tuple(points))).split("\n\n")[0].split())
    assert head == "What 20 to 60 min a session buy: Spring; goal strength; goal balanced; intermediate; commercial gym"


def test_a_stopped_curve_says_so(curve: TimeCurve) -> None:
    assert "the curve was stopped" in " ".join(curve_text(replace(curve, ended_by="stopped")).split())
    assert "reached its wall-clock limit" in " ".join(curve_text(replace(curve, ended_by="time limit")).split())


def test_each_row_of_the_document_has_its_week_or_none(curve: TimeCurve) -> None:
    rows = curve_document(curve)["rows"]
    assert [row["week"] is None for row in rows] == [True, False, False, False, False]
    assert rows[0]["gain_per_half_hour"] is None and rows[1]["gain_per_half_hour"] is None
    assert rows[4]["gain_per_half_hour"] == 0.0 and rows[4]["week_of"] == 50
    assert all(row["bound"] >= row["score"] for row in rows[1:])


def test_a_row_says_what_its_week_lacks(curve: TimeCurve) -> None:
    text = " ".join(curve_text(curve).split())
    assert "below band: chest, front delts and" in text
    assert all(f"{point.index - (point.score or 0.0):.1f}" in text for point in curve.solved_points)


def test_a_longer_week_of_a_lower_index_is_explained(curve: TimeCurve) -> None:
    points = list(curve.points)
    points[3] = replace(points[3], solved=points[1].solved)
    assert "At 50 min a session the index is lower" in " ".join(
        curve_text(replace(curve, points=tuple(points))).split()
    )
    assert "the index is lower" not in curve_text(curve)


def test_bars_are_as_long_as_their_values_and_intervals() -> None:
    lines = bars([("10", 20.0, (15.0, 30.0), False), ("20", 40.0, (30.0, 60.0), True)], "Index", 80)[1:]
    first, second = (re.search(r"(#+)(=+)(-+)", line) for line in lines)
    assert first and second
    for part in (1, 2, 3):
        assert len(second[part]) == pytest.approx(2 * len(first[part]), abs=1)
    assert len(first[1]) == pytest.approx(3 * len(first[2]), abs=2)
    assert lines[1].endswith("40.0  <- bend")


def test_the_drawing_starts_at_nought_with_a_whisker_for_each_interval(curve: TimeCurve) -> None:
    svg = ET.fromstring(drawn_curve(curve))
    height = float(svg.attrib["viewBox"].split()[3])
    spots = [float(mark.attrib["cy"]) for mark in svg.iter() if mark.tag.endswith("circle")]
    assert len(spots) == len(curve.solved_points) and all(0 <= y <= height - 30 for y in spots)
    assert spots == sorted(spots, reverse=True)
    whiskers = [mark for mark in svg.iter() if mark.get("class") == "whisker"]
    assert len(whiskers) == len(spots)
    labels = {"".join(mark.itertext()) for mark in svg.iter() if mark.tag.endswith("text")}
    assert "0" in labels and not any(re.match(r"-\d", text) for text in labels)
