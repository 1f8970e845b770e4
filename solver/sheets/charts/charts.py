"""Every chart the sheets draw, each a whole `<svg>` in one ink that is read without colour."""

from __future__ import annotations

from setwright.solver.sheets.charts.bands import bands_chart, muscle_said
from setwright.solver.sheets.charts.curve import curve_chart
from setwright.solver.sheets.charts.drawing import ChartStyle
from setwright.solver.sheets.charts.maximum import maximum_chart
from setwright.solver.sheets.charts.pairs import side_by_side
from setwright.solver.sheets.charts.time_use import time_chart

__all__ = ["ChartStyle", "bands_chart", "curve_chart", "maximum_chart", "muscle_said", "side_by_side", "time_chart"]
