"""Charts in one ink as SVG: weekly sets against their bands, and where each session's time goes."""

from __future__ import annotations

from collections.abc import Sequence
from itertools import accumulate
from typing import Protocol

from setwright.solver.sheets.chart_curve import curve_chart
from setwright.solver.sheets.chart_pairs import side_by_side
from setwright.solver.sheets.drawing import SMALL, Look, box, clipped, label, number, picture, rule, ticks
from setwright.solver.sheets.words import clock, span

__all__ = ["Look", "bands_chart", "curve_chart", "side_by_side", "time_chart"]

ROW, HEAD = 19.0, 24.0
KINDS = (("warm-up", "none"), ("ramp-up", "dots"), ("lifting", "solid"), ("resting", "hatch"), ("change-over", "bars"))
"""A session's kinds of time in the order they are stacked, and how each is filled."""

MOST_ROOMY = 5
"""Up to so many sessions each part of a bar has its own figures; beyond, the key has those of the week."""


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
    left, right = 148.0, look.width - 80.0
    at = ticks(max([1.0, *(m.sets for m in muscles), *(edge for m in muscles for edge in m.band or () if edge)]))
    scale = (right - left) / at[-1]
    foot = HEAD + ROW * len(muscles) + 4
    marks = [label(1, 12, look.word("Muscle"), size=SMALL), label(left - 8, 12, look.word("Sets"), "end", SMALL)]
    marks.append(label(right + 8, 12, look.word("Band"), size=SMALL))
    marks += [rule(look, left + t * scale, HEAD - 4, left + t * scale, foot, "grid") for t in at]
    for place, muscle in enumerate(muscles):
        marks += bands_row(look, muscle, HEAD + ROW * place, left, right, scale)
    marks += axis(look, at, left, scale, foot, look.word("sets a week"))
    marks += bands_key(look, muscles, foot + 42)
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
    marks.append(label(1, base, clipped(muscle.name, left - 38, bold=bold), bold=bold))
    marks.append(label(left - 8, base, number(muscle.sets), "end", bold=bold))
    marks.append(label(right + 8, base, band_said(look, muscle), size=SMALL))
    return marks


def bands_key(look: Look, muscles: Sequence[Muscle], base: float) -> list[str]:
    """What the marks mean; only marks that are drawn."""
    marks = [
        box(look, 1, base - 8, 16, 7, "solid", "key"),
        label(22, base, look.word("sets"), size=SMALL),
        box(look, 57, base - 10, 16, 11, "hatch", "key"),
        label(78, base, look.word("band"), size=SMALL),
    ]
    x = 117.0
    if any(muscle.band is None for muscle in muscles):
        marks.append(box(look, x, base - 8, 16, 7, "none", "key"))
        marks.append(label(x + 21, base, look.word("counted along"), size=SMALL))
        x = 223.0
    if any(muscle.emphasis == "priority" for muscle in muscles):
        marks.append(label(x, base, look.word("Bold: priority"), size=SMALL, bold=True))
    return marks


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
    dense = len(sessions) > MOST_ROOMY
    left, right = (86.0, look.width - 66.0) if dense else (1.0, look.width - 1.0)
    at = ticks(max([60, *(session.seconds for session in sessions)]) / 60)
    scale = (right - left) / at[-1] / 60
    high = 20.0 if dense else 42.0
    foot = 4 + high * len(sessions)
    marks = [rule(look, left + t * scale * 60, 4 if dense else 19, left + t * scale * 60, foot, "grid") for t in at]
    for place, session in enumerate(sessions):
        row = dense_row if dense else time_row
        marks += row(look, session, 4 + high * place, left, scale)
    marks += axis(look, at, left, scale * 60, foot, look.word("minutes"))
    key = time_key(look, sessions, foot + 42, totals=dense)
    said = "; ".join(session_said(look, session) for session in sessions)
    deep = foot + 50 + 16 * ((len(key) // 2 - 1) // (2 if dense else 3))
    return picture(look, deep, look.word("Where the minutes of each session go"), said, marks + key)


def stacked(session: Timed) -> list[tuple[str, str, int]]:
    """A session's kinds with their filling and seconds, in the order drawn; kinds of no seconds are left out."""
    found = {kind.replace("_", "-").lower(): seconds for kind, seconds in session.seconds_by_kind}
    known = dict(KINDS)
    ordered = [*(kind for kind in known if kind in found), *(kind for kind in found if kind not in known)]
    return [(kind, known.get(kind, "back"), found[kind]) for kind in ordered if found[kind] > 0]


def time_row(look: Look, session: Timed, top: float, left: float, scale: float) -> list[str]:
    """One session: its title and length, its bar, and under each part wide enough its minutes and seconds."""
    marks = [label(left, top + 11, clipped(session.title, look.width - 76, bold=True), bold=True)]
    marks.append(label(look.width - 1, top + 11, f"{clock(session.seconds)} {look.word('min')}", "end"))
    for _, fill, seconds, x in placed(session, left, scale):
        marks.append(box(look, x, top + 15, seconds * scale, 10, fill, "part"))
        if seconds * scale >= 26:
            marks.append(label(x + seconds * scale / 2, top + 36, clock(seconds), "middle", SMALL))
    return marks


def dense_row(look: Look, session: Timed, top: float, left: float, scale: float) -> list[str]:
    """One session of many: title, bar and length on one line."""
    marks = [label(1, top + 13, clipped(session.title, left - 7, bold=True), bold=True)]
    marks.append(label(look.width - 1, top + 13, f"{clock(session.seconds)} {look.word('min')}", "end", SMALL))
    return marks + [
        box(look, x, top + 4, n * scale, 10, fill, "part") for _, fill, n, x in placed(session, left, scale)
    ]


def placed(session: Timed, left: float, scale: float) -> list[tuple[str, str, int, float]]:
    """A session's kinds with their filling, seconds and where each begins."""
    parts = stacked(session)
    begins = accumulate((seconds for _, _, seconds in parts), initial=0)
    return [(*part, left + begin * scale) for part, begin in zip(parts, begins, strict=False)]


def time_key(look: Look, sessions: Sequence[Timed], top: float, totals: bool) -> list[str]:
    """What the fillings mean, three to a line; with the minutes of all sessions, two to a line."""
    marks: list[str] = []
    found: dict[str, tuple[str, int]] = {}
    for kind, fill, seconds in (part for session in sessions for part in stacked(session)):
        found[kind] = (fill, found.get(kind, (fill, 0))[1] + seconds)
    row = 2 if totals else 3
    for place, (kind, (fill, seconds)) in enumerate(found.items()):
        x, y = (place % row) * look.width / row, top + 16 * (place // row)
        marks.append(box(look, x + 1, y - 9, 18, 10, fill, "key"))
        said = f"{look.word(kind)}: {clock(seconds)} {look.word('min')}" if totals else look.word(kind)
        marks.append(label(x + 24, y, clipped(said, look.width / row - 26, SMALL), size=SMALL))
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
