"""A hatched box drawn out keeps its place, and its lines stay inside it."""

from __future__ import annotations

import re
import xml.etree.ElementTree as ET

from handed import handed
from hypothesis import given
from hypothesis import strategies as st

from setwright.solver.sheets.charts.charts import bands_chart
from setwright.solver.sheets.charts.hatching import STEP, drawn_out
from setwright.solver.sheets.pdf.card import chart, chart_style

SIDES = st.floats(0.5, 300).map(lambda value: round(value, 2))
SVG = "{http://www.w3.org/2000/svg}"


@given(SIDES, SIDES, SIDES, SIDES)
def test_lines_stay_inside_the_box_and_leave_no_gap(x: float, y: float, width: float, height: float) -> None:
    box = f'<rect class="band" x="{x}" y="{y}" width="{width}" height="{height}" fill="url(#bands-hatch)"/>'
    ends = re.findall(r"[ML](-?[0-9.]+) (-?[0-9.]+)", drawn_out(box))
    points = [(float(a), float(b)) for a, b in ends]
    assert all(x - 0.01 <= a <= x + width + 0.01 and y - 0.01 <= b <= y + height + 0.01 for a, b in points)
    assert abs(len(points) / 2 - (width + height) / STEP) <= 1


def test_the_cards_chart_is_the_shared_chart_without_patterns() -> None:
    """The same texts and boxes in the same order; only the hatches differ."""
    week = handed()
    ours, shared = (ET.fromstring(text) for text in (chart(week), bands_chart(week.muscles, chart_style(week))))
    assert [text.text for text in ours.iter(f"{SVG}text")] == [text.text for text in shared.iter(f"{SVG}text")]
    sides = ("class", "x", "y", "width", "height")
    assert [[box.get(side) for side in sides] for box in ours.iter(f"{SVG}rect")] == [
        [box.get(side) for side in sides] for box in shared.iter(f"{SVG}rect")
    ]
    assert not [box for box in ours.iter(f"{SVG}rect") if "url(" in str(box.get("fill"))]
    assert [box for box in shared.iter(f"{SVG}rect") if "url(" in str(box.get("fill"))]
