"""Where each session's time goes, as SVG in one ink."""

from __future__ import annotations

from collections.abc import Sequence
from itertools import accumulate
from typing import Protocol

from setwright.solver.sheets.charts.drawing import SMALL, ChartStyle, axis, box, clipped, label, picture, rule, ticks
from setwright.solver.sheets.common.words import clock

KINDS = (("warm-up", "none"), ("ramp-up", "dots"), ("lifting", "solid"), ("resting", "hatch"), ("change-over", "bars"))
"""A session's kinds of time in the order they are stacked, and how each is filled."""

MOST_ROOMY = 5
"""Up to so many sessions each part of a bar has its own figures; beyond, the key has those of the week."""


class Timed(Protocol):
    """What is drawn of a session."""

    @property
    def title(self) -> str:
        """The session's name, in the client's language."""
        ...

    @property
    def seconds(self) -> int:
        """Seconds of the whole session."""
        ...

    @property
    def seconds_by_kind(self) -> tuple[tuple[str, int], ...]:
        """Each kind of time with its seconds, in the order drawn."""
        ...


def time_chart(sessions: Sequence[Timed], style: ChartStyle | None = None, to: int = 60) -> str:
    """Each session as one bar of its minutes, stacked by kind and told apart by hatching, with minutes and seconds.

    The axis goes to `to` seconds at least, so that several charts can have one scale.
    """
    style = style or ChartStyle(key="time")
    dense = len(sessions) > MOST_ROOMY
    left, right = (86.0, style.width - 66.0) if dense else (1.0, style.width - 1.0)
    at = ticks(max([to, *(session.seconds for session in sessions)]) / 60)
    scale = (right - left) / at[-1] / 60
    high = 20.0 if dense else 42.0
    foot = 4 + high * len(sessions)
    marks = [rule(style, left + t * scale * 60, 4 if dense else 19, left + t * scale * 60, foot, "grid") for t in at]
    for place, session in enumerate(sessions):
        row = _dense_row if dense else _time_row
        marks += row(style, session, 4 + high * place, left, scale)
    marks += axis(style, at, left, scale * 60, foot, style.word("minutes"))
    key = _time_key(style, sessions, foot + 42, totals=dense)
    said = "; ".join(_session_said(style, session) for session in sessions)
    deep = foot + 50 + 16 * ((len(key) // 2 - 1) // (2 if dense else 3))
    return picture(style, deep, style.word("Where the minutes of each session go"), said, marks + key)


def _stacked(session: Timed) -> list[tuple[str, str, int]]:
    """A session's kinds with their filling and seconds, in the order drawn; kinds of no seconds are left out."""
    found = {kind.replace("_", "-").lower(): seconds for kind, seconds in session.seconds_by_kind}
    known = dict(KINDS)
    ordered = [*(kind for kind in known if kind in found), *(kind for kind in found if kind not in known)]
    return [(kind, known.get(kind, "back"), found[kind]) for kind in ordered if found[kind] > 0]


def _time_row(style: ChartStyle, session: Timed, top: float, left: float, scale: float) -> list[str]:
    """One session: its title and length, its bar, and under each part wide enough its minutes and seconds."""
    marks = [label(left, top + 11, clipped(session.title, style.width - 76, bold=True), bold=True)]
    marks.append(label(style.width - 1, top + 11, f"{clock(session.seconds)} {style.word('min')}", "end"))
    for _, fill, seconds, x in _placed(session, left, scale):
        marks.append(box(style, x, top + 15, seconds * scale, 10, fill, "part"))
        if seconds * scale >= 26:
            marks.append(label(x + seconds * scale / 2, top + 36, clock(seconds), "middle", SMALL))
    return marks


def _dense_row(style: ChartStyle, session: Timed, top: float, left: float, scale: float) -> list[str]:
    """One session of many: title, bar and length on one line."""
    marks = [label(1, top + 13, clipped(session.title, left - 7, bold=True), bold=True)]
    marks.append(label(style.width - 1, top + 13, f"{clock(session.seconds)} {style.word('min')}", "end", SMALL))
    return marks + [
        box(style, x, top + 4, n * scale, 10, fill, "part") for _, fill, n, x in _placed(session, left, scale)
    ]


def _placed(session: Timed, left: float, scale: float) -> list[tuple[str, str, int, float]]:
    """A session's kinds with their filling, seconds and where each begins."""
    parts = _stacked(session)
    begins = accumulate((seconds for _, _, seconds in parts), initial=0)
    return [(*part, left + begin * scale) for part, begin in zip(parts, begins, strict=False)]


def _time_key(style: ChartStyle, sessions: Sequence[Timed], top: float, totals: bool) -> list[str]:
    """What the fillings mean, three to a line; with the minutes of all sessions, two to a line."""
    marks: list[str] = []
    found: dict[str, tuple[str, int]] = {}
    for kind, fill, seconds in (part for session in sessions for part in _stacked(session)):
        found[kind] = (fill, found.get(kind, (fill, 0))[1] + seconds)
    row = 2 if totals else 3
    for place, (kind, (fill, seconds)) in enumerate(found.items()):
        x, y = (place % row) * style.width / row, top + 16 * (place // row)
        marks.append(box(style, x + 1, y - 9, 18, 10, fill, "key"))
        said = f"{style.word(kind)}: {clock(seconds)} {style.word('min')}" if totals else style.word(kind)
        marks.append(label(x + 24, y, clipped(said, style.width / row - 26, SMALL), size=SMALL))
    return marks


def _session_said(style: ChartStyle, session: Timed) -> str:
    """One session's times for a reader who does not see the chart."""
    parts = ", ".join(f"{style.word(kind)} {clock(seconds)}" for kind, _, seconds in _stacked(session))
    return f"{session.title}: {clock(session.seconds)} ({parts})"
