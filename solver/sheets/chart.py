"""Charts in one ink as SVG: weekly sets against their bands, and where each session's time goes."""

from __future__ import annotations

from collections.abc import Sequence
from typing import Protocol

from setwright.solver.sheets.chart_curve import curve_chart
from setwright.solver.sheets.chart_pairs import side_by_side
from setwright.solver.sheets.drawing import SMALL, Look, box, clipped, label, number, picture, rule, ticks
from setwright.solver.sheets.words import clock, span

__all__ = ["Look", "bands_chart", "curve_chart", "side_by_side", "time_chart"]

ROW, HEAD = 19.0, 24.0
KINDS = (("warm-up", "none"), ("ramp-up", "dots"), ("lifting", "solid"), ("resting", "hatch"), ("change-over", "bars"))
"""A session's kinds of time in the order they are stacked, and how each is filled."""


class Muscle(Protocol):
    """What is drawn of a muscle."""

    @property
    def name(self) -> str: ...
    @property
    def emphasis(self) -> str: ...
    @property
    def sets(self) -> float: ...
    @property
    def band(self) -> tuple[float, float | None] | None: ...


class Timed(Protocol):
    """What is drawn of a session."""

    @property
    def title(self) -> str: ...
    @property
    def seconds(self) -> int: ...
    @property
    def seconds_by_kind(self) -> tuple[tuple[str, int], ...]: ...


def bands_chart(muscles: Sequence[Muscle], look: Look | None = None) -> str:
    """Weekly sets of each muscle as a bar over its hatched band, the numbers beside it; muscles without one outlined.

    Priority muscles stand in bold; a bar outside its band says so in words.
    """
    look = look or Look(key="bands")
    left, right = 136.0, look.width - 80.0
    at = ticks(max([1.0, *(m.sets for m in muscles), *(edge for m in muscles for edge in m.band or () if edge)]))
    scale = (right - left) / at[-1]
    foot = HEAD + ROW * len(muscles) + 4
    marks = [label(0, 12, look.word("Muscle"), size=SMALL), label(left - 8, 12, look.word("Sets"), "end", SMALL)]
    marks.append(label(right + 8, 12, look.word("Band"), size=SMALL))
    marks += [rule(look, left + t * scale, HEAD - 4, left + t * scale, foot, "grid") for t in at]
    for place, muscle in enumerate(muscles):
        marks += bands_row(look, muscle, HEAD + ROW * place, left, right, scale)
    marks += axis(look, at, left, scale, foot, look.word("sets a week"))
    marks += bands_key(look, foot + 42)
    said = "; ".join(muscle_said(look, muscle) for muscle in muscles)
    return picture(look, foot + 50, look.word("Weekly sets of each muscle against its band"), said, marks)


def bands_row(look: Look, muscle: Muscle, top: float, left: float, right: float, scale: float) -> list[str]:
    """One muscle: name, number, band, bar, band in figures."""
    base, marks = top + 13, []
    bold = muscle.emphasis == "priority"
    if muscle.band is not None:
        low, high = muscle.band
        ends = left + low * scale, right if high is None else left + high * scale
        marks.append(box(look, ends[0], top + 1, ends[1] - ends[0], ROW - 4, "hatch", "band"))
        marks += [rule(look, ends[0], top + 1, ends[0], top + ROW - 3, "edge")]
        marks += [rule(look, ends[1], top + 1, ends[1], top + ROW - 3, "edge")] if high is not None else []
    fill = "solid" if muscle.band is not None else "none"
    marks.append(box(look, left, top + 5, muscle.sets * scale, ROW - 12, fill, "bar"))
    marks.append(label(0, base, clipped(muscle.name, left - 36), bold=bold))
    marks.append(label(left - 8, base, number(muscle.sets), "end", bold=bold))
    marks.append(label(right + 8, base, band_said(look, muscle), size=SMALL))
    return marks


def bands_key(look: Look, base: float) -> list[str]:
    """What the marks mean."""
    return [
        box(look, 0, base - 8, 16, 7, "solid", "key"),
        label(21, base, look.word("sets"), size=SMALL),
        box(look, 56, base - 10, 16, 11, "hatch", "key"),
        label(77, base, look.word("band"), size=SMALL),
        box(look, 116, base - 8, 16, 7, "none", "key"),
        label(137, base, look.word("counted along"), size=SMALL),
        label(222, base, look.word("Bold: priority"), size=SMALL, bold=True),
    ]


def band_said(look: Look, muscle: Muscle) -> str:
    """The band in figures, and whether the bar lies outside it."""
    if muscle.band is None:
        return ""
    low, high = muscle.band
    said = f"{look.word('from')} {low:g}" if high is None else span(low, high)
    outside = "below" if muscle.sets < low else "above" if high is not None and muscle.sets > high else ""
    return f"{said}, {look.word(outside)}" if outside else said


def muscle_said(look: Look, muscle: Muscle) -> str:
    """One muscle's values for a reader who does not see the chart."""
    band = band_said(look, muscle)
    sets = f"{muscle.name}: {number(muscle.sets)} {look.word('sets')}"
    return f"{sets}, {look.word('band')} {band}" if band else sets


def time_chart(sessions: Sequence[Timed], look: Look | None = None) -> str:
    """Each session as one bar of its minutes, stacked by kind and told apart by hatching, with minutes and seconds."""
    look = look or Look(key="time")
    at = ticks(max([60, *(session.seconds for session in sessions)]) / 60)
    scale = (look.width - 2) / at[-1] / 60
    height = 42.0
    foot = 4 + height * len(sessions)
    marks = [rule(look, 1 + t * scale * 60, 19, 1 + t * scale * 60, foot, "grid") for t in at]
    for place, session in enumerate(sessions):
        marks += time_row(look, session, 4 + height * place, scale)
    marks += axis(look, at, 1, scale * 60, foot, look.word("minutes"))
    kinds = tuple(dict.fromkeys(kind for session in sessions for kind, _, _ in stacked(session)))
    marks += time_key(look, kinds, foot + 42)
    said = "; ".join(session_said(look, session) for session in sessions)
    rows = (len(kinds) + 2) // 3
    return picture(look, foot + 34 + 16 * rows, look.word("Where the minutes of each session go"), said, marks)


def stacked(session: Timed) -> list[tuple[str, str, int]]:
    """A session's kinds with their filling and seconds, in the order drawn; kinds of no seconds are left out."""
    found = {kind.replace("_", "-").lower(): seconds for kind, seconds in session.seconds_by_kind}
    known = dict(KINDS)
    ordered = [*(kind for kind in known if kind in found), *(kind for kind in found if kind not in known)]
    return [(kind, known.get(kind, "back"), found[kind]) for kind in ordered if found[kind] > 0]


def time_row(look: Look, session: Timed, top: float, scale: float) -> list[str]:
    """One session: its title and length, its bar, and under each part wide enough its minutes and seconds."""
    marks = [label(1, top + 11, clipped(session.title, look.width - 70), bold=True)]
    marks.append(label(look.width - 1, top + 11, f"{clock(session.seconds)} {look.word('min')}", "end"))
    x = 1.0
    for _, fill, seconds in stacked(session):
        wide = seconds * scale
        marks.append(box(look, x, top + 15, wide, 10, fill, "part"))
        if wide >= 26:
            marks.append(label(x + wide / 2, top + 36, clock(seconds), "middle", SMALL))
        x += wide
    return marks


def time_key(look: Look, kinds: Sequence[str], top: float) -> list[str]:
    """What the fillings mean, three to a line."""
    marks = []
    for place, kind in enumerate(kinds):
        x, y = (place % 3) * look.width / 3, top + 16 * (place // 3)
        marks.append(box(look, x + 1, y - 9, 18, 10, dict(KINDS).get(kind, "back"), "key"))
        marks.append(label(x + 24, y, clipped(look.word(kind), look.width / 3 - 26, SMALL), size=SMALL))
    return marks


def session_said(look: Look, session: Timed) -> str:
    """One session's times for a reader who does not see the chart."""
    parts = ", ".join(f"{look.word(kind)} {clock(seconds)}" for kind, _, seconds in stacked(session))
    return f"{session.title}: {clock(session.seconds)} ({parts})"


def axis(look: Look, at: Sequence[float], left: float, scale: float, foot: float, unit: str) -> list[str]:
    """The line under a chart with its ticks, figures and unit."""
    marks = [rule(look, left, foot, left + at[-1] * scale, foot, "axis")]
    last = "end" if left + at[-1] * scale > look.width - 8 else "middle"
    marks += [label(left, foot + 12, "0", size=SMALL)]
    marks += [label(left + t * scale, foot + 12, f"{t:g}", "middle", SMALL) for t in at[1:-1]]
    marks += [label(left + at[-1] * scale, foot + 12, f"{at[-1]:g}", last, SMALL)]
    marks.append(label(left + at[-1] * scale, foot + 25, unit, "end", SMALL))
    return marks
