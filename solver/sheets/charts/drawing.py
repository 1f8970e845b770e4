"""The few marks a chart is drawn with: escaped text, boxes, lines, hatchings and the picture that holds them."""

from __future__ import annotations

import html
import math
import re
import unicodedata
from collections.abc import Mapping, Sequence
from dataclasses import dataclass, field
from itertools import accumulate

UNFIT = re.compile("[\x00-\x08\x0b\x0c\x0e-\x1f\x7f-\x9f\ud800-\udfff\ufffe\uffff]")
"""What XML 1.0 forbids or discourages in text (W3C, XML 1.0 fifth edition, 2.2 Characters)."""
LETTERS = (("iljI.,:;'|! ", 0.32), ("rtf()[]/-*", 0.42), ("cksvxyzJ", 0.57), ("mwMW@%", 0.98))
"""Widths of letters in parts of their size, measured in DejaVu Sans, the widest sans in common use."""
USUAL, CAPITAL, SQUARE, BOLDER = 0.64, 0.72, 1.0, 1.1
SIZE, SMALL = 12.0, 10.5
"""Letter sizes, in units of the view box."""
HATCHES = {
    "hatch": ("45", '<path d="M0 0V5" stroke="{ink}" stroke-width="1.1"/>', "5"),
    "back": ("-45", '<path d="M0 0V4" stroke="{ink}" stroke-width="1.6"/>', "4"),
    "dots": ("0", '<circle cx="2" cy="2" r="0.9" fill="{ink}"/>', "4"),
    "bars": ("0", '<path d="M1 0V3" stroke="{ink}" stroke-width="1.2"/>', "3"),
}
"""Name -> (turn in degrees, mark, side of the tile)."""


@dataclass(frozen=True)
class ChartStyle:
    """How a chart is set: one ink, generic fonts, its width, the prefix of its ids, and the client's words."""

    ink: str = "currentColor"
    family: str = "sans-serif"
    width: float = 360.0
    key: str = "chart"
    words: Mapping[str, str] = field(default_factory=dict)

    def word(self, said: str) -> str:
        """The client's word for one of ours."""
        return self.words.get(said, said)


def escaped(text: str) -> str:
    """Text that is only text in XML and HTML, its forbidden characters replaced by U+FFFD."""
    return html.escape(UNFIT.sub("\ufffd", text), quote=True)


def number(value: float) -> str:
    """A coordinate with at most two decimals, never minus zero."""
    return f"{round(value, 2) + 0.0:.2f}".rstrip("0").rstrip(".")


def _width_of(text: str, size: float = SIZE, bold: bool = False) -> float:
    """About how wide a text is set, never much less than it is."""
    return sum(map(_letter_width, text)) * size * (BOLDER if bold else 1)


def _letter_width(letter: str) -> float:
    """One letter's width in parts of its size; East Asian ones fill a square (Unicode UAX 11)."""
    for letters, width in LETTERS:
        if letter in letters:
            return width
    if unicodedata.east_asian_width(letter) in "WF":
        return SQUARE
    return CAPITAL if letter.isupper() or not letter.isalnum() else USUAL


def clipped(text: str, room: float, size: float = SIZE, bold: bool = False) -> str:
    """Text short enough for its room, an ellipsis where it was cut; the whole text stands in the description."""
    if _width_of(text, size, bold) <= room:
        return text
    dots = _width_of("\u2026", size, bold)
    ends = accumulate(_width_of(letter, size, bold) for letter in text)
    return text[: sum(end + dots <= room for end in ends)].rstrip() + "\u2026"


def _step_of(highest: float, most: int = 6) -> float:
    """The round distance between ticks, 1, 2 or 5 times a power of ten, so that at most `most` steps are taken."""
    least = max(highest, 1e-9) / most
    power = 10.0 ** math.floor(math.log10(least))
    return next(power * k for k in (1, 2, 5, 10) if power * k >= least - 1e-12)


def ticks(highest: float, most: int = 6, least_step: float = 1.0) -> tuple[float, ...]:
    """The ticks of an axis from nought to just past the highest value."""
    step = max(_step_of(highest, most), least_step)
    return tuple(step * k for k in range(max(1, math.ceil(highest / step - 1e-9)) + 1))


def label(x: float, y: float, text: str, anchor: str = "start", size: float = SIZE, bold: bool = False) -> str:
    """A line of text with its base line at y."""
    weight = ' font-weight="700"' if bold else ""
    where = "" if anchor == "start" else f' text-anchor="{anchor}"'
    return f'<text x="{number(x)}" y="{number(y)}" font-size="{number(size)}"{where}{weight}>{escaped(text)}</text>'


def box(style: ChartStyle, x: float, y: float, width: float, height: float, fill: str, role: str) -> str:
    """A rectangle: solid ink, `none` (outline only) or one of the hatches; `role` names it for style and tests."""
    paint = {"solid": style.ink, "none": "none"}.get(fill) or f"url(#{style.key}-{fill})"
    edge = f' stroke="{style.ink}" stroke-width="1"' if fill != "solid" and role != "band" else ""
    return (
        f'<rect class="{role}" x="{number(x)}" y="{number(y)}" width="{number(width)}" height="{number(height)}"'
        f' fill="{paint}"{edge}/>'
    )


def rule(
    style: ChartStyle, x1: float, y1: float, x2: float, y2: float, role: str = "rule", dashed: bool = False
) -> str:
    """A thin line; grid lines are fainter than axes, dashed ones mark a value."""
    faint = ' stroke-opacity="0.22"' if role == "grid" else ""
    dashes = ' stroke-dasharray="4 3"' if dashed else ""
    ends = f'x1="{number(x1)}" y1="{number(y1)}" x2="{number(x2)}" y2="{number(y2)}"'
    return f'<line class="{role}" {ends} stroke="{style.ink}" stroke-width="1"{faint}{dashes}/>'


def axis(style: ChartStyle, at: Sequence[float], left: float, scale: float, foot: float, unit: str) -> list[str]:
    """The line under a chart with its ticks, figures and unit."""
    marks = [rule(style, left, foot, left + at[-1] * scale, foot, "axis")]
    last = "end" if left + at[-1] * scale > style.width - 8 else "middle"
    marks += [label(left, foot + 12, "0", size=SMALL)]
    marks += [label(left + t * scale, foot + 12, f"{t:g}", "middle", SMALL) for t in at[1:-1]]
    marks += [label(left + at[-1] * scale, foot + 12, f"{at[-1]:g}", last, SMALL)]
    marks.append(label(left + at[-1] * scale, foot + 25, unit, "end", SMALL))
    return marks


def picture(style: ChartStyle, height: float, title: str, description: str, marks: Sequence[str]) -> str:
    """A whole `<svg>` with its title, its values in words, and the hatches that its marks use."""
    used = "".join(_hatch(style, name) for name in HATCHES if any(f"url(#{style.key}-{name})" in m for m in marks))
    defs = f"<defs>{used}</defs>" if used else ""
    key = style.key
    return (
        f'<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 {number(style.width)} {number(height)}" role="img"'
        ' direction="ltr" preserveAspectRatio="xMinYMin meet"'
        f' aria-labelledby="{key}-title {key}-desc" fill="{style.ink}" font-family="{escaped(style.family)}">'
        f'<title id="{key}-title">{escaped(title)}</title><desc id="{key}-desc">{escaped(description)}</desc>'
        f"{defs}{''.join(marks)}</svg>"
    )


def _hatch(style: ChartStyle, name: str) -> str:
    """The definition of a hatch."""
    turn, mark, side = HATCHES[name]
    turned = "" if turn == "0" else f' patternTransform="rotate({turn})"'
    return (
        f'<pattern id="{style.key}-{name}" width="{side}" height="{side}" patternUnits="userSpaceOnUse"{turned}>'
        f"{mark.format(ink=style.ink)}</pattern>"
    )
