"""The charts: read as XML, their bars, bands, parts and points measured against the values they show."""

from __future__ import annotations

import re
import xml.etree.ElementTree as ET
from dataclasses import dataclass
from itertools import pairwise

import pytest

from setwright.catalogue.load import load_catalogue
from setwright.solver.sheets.charts.charts import bands_chart, curve_chart, side_by_side, time_chart
from setwright.solver.sheets.charts.drawing import ChartStyle, clipped, escaped, number, ticks

SVG = "{http://www.w3.org/2000/svg}"


@dataclass(frozen=True)
class Row:
    name: str
    sets: float
    band: tuple[float, float | None] | None = (4.0, 15.0)
    emphasis: str = "normal"


@dataclass(frozen=True)
class Sitting:
    title: str
    seconds: int
    seconds_by_kind: tuple[tuple[str, int], ...]


ROWS = (
    Row("Chest", 4.0),
    Row("Side delts", 12.5, (10.0, 20.0), "priority"),
    Row("Calves", 3.0),
    Row("Quads", 21.0),
    Row("Lats", 6.0, (4.0, None)),
    Row("Forearms", 2.0, None),
)
SITTINGS = (
    Sitting(
        "Monday",
        2374,
        (("change_over", 0), ("lifting", 514), ("ramp_up", 360), ("resting", 1200), ("warm_up", 300)),
    ),
    Sitting("Friday", 1800, (("lifting", 500), ("resting", 1000), ("warm-up", 180), ("change-over", 120))),
)
CURVE = ((60.0, 48.0), (90.0, 61.0), (120.0, 70.0), (240.0, 85.0))
PAIRS = (("Chest", (4.0, 6.0)), ("Lats", (0.0, 7.5)))
CHARTS = {
    "bands": bands_chart(ROWS),
    "time": time_chart(SITTINGS),
    "curve": curve_chart(CURVE, 120.0, intervals=((43, 53), (55, 66), (63, 77), (77, 93))),
    "pairs": side_by_side(PAIRS, ("Two days", "Three days")),
}


def read(svg: str) -> ET.Element:
    return ET.fromstring(svg)


def marked(svg: str, role: str, tag: str = "rect") -> list[dict[str, float | str]]:
    """The marks of a role with their numbers."""
    found = [mark for mark in read(svg).iter(f"{SVG}{tag}") if mark.get("class") == role]
    return [{k: float(v) if re.fullmatch(r"[\d.]+", v) else v for k, v in mark.attrib.items()} for mark in found]


def texts(svg: str) -> list[str]:
    return [mark.text or "" for mark in read(svg).iter(f"{SVG}text")]


@pytest.mark.parametrize("name", CHARTS)
def test_every_chart_has_a_title_a_description_a_view_box_and_one_ink(name: str) -> None:
    root = read(CHARTS[name])
    ids = (root.get("aria-labelledby") or "").split()
    assert root.get("role") == "img" and [mark.get("id") for mark in root[:2]] == ids
    assert root[0].tag == f"{SVG}title" and root[0].text and root[1].tag == f"{SVG}desc" and root[1].text
    assert root.get("viewBox", "").startswith("0 0 360 ") and "width" not in root.attrib
    paints = set(re.findall(r'(?:fill|stroke)="([^"]*)"', CHARTS[name]))
    assert {p for p in paints if not p.startswith("url(#")} <= {"currentColor", "none"}


@pytest.mark.parametrize("name", CHARTS)
def test_no_mark_leaves_the_picture(name: str) -> None:
    _, _, width, height = (float(x) for x in read(CHARTS[name]).get("viewBox", "").split())
    for mark in read(CHARTS[name]).iter(f"{SVG}rect"):
        x, y, w, h = (float(mark.get(key, "nan")) for key in ("x", "y", "width", "height"))
        assert x >= 0 and y >= 0 and x + w <= width + 0.01 and y + h <= height + 0.01
    for mark in read(CHARTS[name]).iter(f"{SVG}text"):
        assert 0 <= float(mark.get("x", "nan")) <= width and 0 <= float(mark.get("y", "nan")) <= height


@pytest.mark.parametrize("name", CHARTS)
def test_every_hatch_that_is_used_is_defined(name: str) -> None:
    used = set(re.findall(r'"url\(#([^)]*)\)"', CHARTS[name]))
    assert used == {mark.get("id") for mark in read(CHARTS[name]).iter(f"{SVG}pattern")}


def test_bars_are_as_long_as_the_sets_and_bands_stand_at_their_edges() -> None:
    bars, bands = marked(CHARTS["bands"], "bar"), marked(CHARTS["bands"], "band")
    axis = marked(CHARTS["bands"], "axis", "line")[0]
    left, scale = float(axis["x1"]), float(bars[0]["width"]) / ROWS[0].sets
    assert float(axis["x2"]) - left == pytest.approx(25 * scale, abs=0.05)
    for row, bar in zip(ROWS, bars, strict=True):
        assert bar["x"] == left and float(bar["width"]) == pytest.approx(row.sets * scale, abs=0.05)
        assert bar["fill"] == ("none" if row.band is None else "currentColor")
    for row, band in zip([row for row in ROWS if row.band], bands, strict=True):
        assert row.band is not None
        high = 25.0 if row.band[1] is None else row.band[1]
        assert float(band["x"]) == pytest.approx(left + row.band[0] * scale, abs=0.05)
        assert float(band["x"]) + float(band["width"]) == pytest.approx(left + high * scale, abs=0.05)


def test_a_bar_outside_its_band_says_so_in_words() -> None:
    said = texts(CHARTS["bands"])
    assert {"4-15, below", "4-15, above", "10-20", "from 4", "12.5"} <= set(said)
    bold = [mark.text for mark in read(CHARTS["bands"]).iter(f"{SVG}text") if mark.get("font-weight") == "700"]
    assert bold == ["Side delts", "12.5", "Bold: priority"]


def test_parts_are_as_long_as_their_seconds_and_touch() -> None:
    parts = marked(CHARTS["time"], "part")
    scale = (360 - 2) / 40 / 60
    lengths = [300, 360, 514, 1200, 180, 500, 1000, 120]
    assert [float(part["width"]) for part in parts] == pytest.approx([n * scale for n in lengths], abs=0.02)
    for first, second in pairwise(parts[:4]):
        assert float(first["x"]) + float(first["width"]) == pytest.approx(float(second["x"]), abs=0.02)
    assert {"39:34 min", "30:00 min", "20:00", "8:34"} <= set(texts(CHARTS["time"]))


def test_many_sessions_stand_on_one_line_each_and_the_key_has_the_weeks_figures() -> None:
    week = time_chart(
        tuple(
            Sitting(f"Session {n}", *rest)
            for n in range(3)
            for rest in ((x.seconds, x.seconds_by_kind) for x in SITTINGS)
        )
    )
    parts, scale = marked(week, "part"), (360 - 86 - 66) / 40 / 60
    assert [float(part["width"]) for part in parts[:4]] == pytest.approx(
        [n * scale for n in (300, 360, 514, 1200)], abs=0.02
    )
    assert len({part["y"] for part in parts}) == 6
    assert {"lifting: 50:42 min", "warm-up: 24:00 min", "39:34 min"} <= set(texts(week))


def test_each_kind_of_time_is_filled_in_its_own_way_and_named_in_the_key() -> None:
    fills = [part["fill"] for part in marked(CHARTS["time"], "part")]
    assert (
        fills[:4] == ["none", "url(#time-dots)", "currentColor", "url(#time-hatch)"] and fills[7] == "url(#time-bars)"
    )
    assert [key["fill"] for key in marked(CHARTS["time"], "key")] == [*fills[:4], fills[7]]
    assert {"warm-up", "ramp-up", "lifting", "resting", "change-over"} <= set(texts(CHARTS["time"]))


def test_points_lie_where_their_values_say_and_the_bend_is_marked() -> None:
    points, whiskers = marked(CHARTS["curve"], "point", "circle"), marked(CHARTS["curve"], "whisker", "line")
    (x0, y0), (x1, y1) = ((float(points[i]["cx"]), float(points[i]["cy"])) for i in (0, 3))
    across, up = (x1 - x0) / 180, (y0 - y1) / 37
    for point, (x, y) in zip(points, CURVE, strict=True):
        assert float(point["cx"]) == pytest.approx(x0 + (x - 60) * across, abs=0.02)
        assert float(point["cy"]) == pytest.approx(y0 - (y - 48) * up, abs=0.02)
    assert float(whiskers[0]["y1"]) == pytest.approx(y0 + 5 * up, abs=0.05)
    (bend,) = marked(CHARTS["curve"], "bend", "line")
    assert bend["x1"] == bend["x2"] == points[2]["cx"] and "stroke-dasharray" in bend
    assert {"bend at 120", "minutes a week", "week index", "70"} <= set(texts(CHARTS["curve"]))


def test_weeks_side_by_side_share_a_scale_and_differ_in_filling() -> None:
    bars = marked(CHARTS["pairs"], "bar")
    scale = float(bars[1]["width"]) / 6
    assert [float(bar["width"]) for bar in bars] == pytest.approx([4 * scale, 6 * scale, 0, 7.5 * scale], abs=0.02)
    assert [bar["fill"] for bar in bars] == ["currentColor", "none"] * 2
    with pytest.raises(ValueError, match="one value for each name"):
        side_by_side(PAIRS, ("alone",))
    with pytest.raises(ValueError, match="at most 4"):
        side_by_side((("x", (1, 2, 3, 4, 5)),), tuple("abcde"))


def test_names_are_text_whatever_they_hold() -> None:
    hostile = '<script>alert(1)</script>"&\x00\x1b\u202e\ud800' + "m" * 300
    said = hostile.replace("\x00", "\ufffd").replace("\x1b", "\ufffd").replace("\ud800", "\ufffd")
    svg = bands_chart((Row(hostile, 4.0),))
    root = read(svg)
    assert "<script" not in svg and not list(root.iter(f"{SVG}script"))
    assert said in (root[1].text or "") and max(map(len, texts(svg))) < 40
    for drawn in (
        time_chart((Sitting(hostile, 60, ((hostile, 60),)),)),
        side_by_side(((hostile, (1.0,)),), (hostile,)),
        curve_chart(((1.0, 2.0),), None, ChartStyle(words={"week index": hostile})),
    ):
        read(drawn)


def test_a_fixed_ink_a_prefix_and_the_clients_words_reach_every_mark() -> None:
    style = ChartStyle(ink="#111", family="Some Sans", key="other", words={"band": "Zielbereich", "below": "darunter"})
    svg = bands_chart(ROWS, style)
    assert "currentColor" not in svg and 'fill="#111"' in svg and 'id="other-hatch"' in svg
    assert 'font-family="Some Sans"' in svg and {"4-15, darunter", "Zielbereich"} <= set(texts(svg))


def test_charts_of_nothing_and_of_noughts_are_still_charts() -> None:
    for svg in (bands_chart(()), bands_chart((Row("Calves", 0.0, (0.0, None)),)), time_chart(()), curve_chart(())):
        read(svg)


def test_ticks_numbers_and_clipping() -> None:
    assert ticks(20) == (0, 5, 10, 15, 20) and ticks(21) == (0, 5, 10, 15, 20, 25) and ticks(0.2) == (0, 1)
    assert ticks(3) == (0, 1, 2, 3) and ticks(250, 5) == (0, 50, 100, 150, 200, 250)
    assert [number(v) for v in (4.0, 4.5, -0.001, 1 / 3, 100)] == ["4", "4.5", "0", "0.33", "100"]
    assert clipped("Spinal erectors", 100) == "Spinal erectors" and clipped("m" * 300, 100).endswith("\u2026")
    assert clipped("\u4e00" * 9, 60) == "\u4e00" * 4 + "\u2026" and clipped("anything", 0) == "\u2026"
    assert escaped('<a href="x">\'&') == "&lt;a href=&quot;x&quot;&gt;&#x27;&amp;"


def test_the_same_values_give_the_same_bytes() -> None:
    assert bands_chart(ROWS) == CHARTS["bands"] and time_chart(SITTINGS) == CHARTS["time"]


def test_no_muscle_of_the_catalogue_is_cut_short() -> None:
    for muscle in load_catalogue().muscles.values():
        assert muscle.name in texts(bands_chart((Row(muscle.name, 4.0, emphasis="priority"),)))


def test_the_key_explains_only_what_is_drawn() -> None:
    said = texts(bands_chart((Row("Chest", 4.0),)))
    assert "band" in said and "counted along" not in said and "Bold: priority" not in said
    assert {"counted along", "Bold: priority"} <= set(texts(CHARTS["bands"]))
