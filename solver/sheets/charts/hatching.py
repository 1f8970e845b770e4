"""A chart's hatched boxes drawn line by line for paper: readers of PDF set the tiles of a pattern unevenly."""

from __future__ import annotations

import math
import re
from typing import Final

HATCHED: Final = re.compile(r'<rect(?P<said>[^>]*) fill="url\(#[^)"]*-hatch\)"(?P<rest>[^>]*)/>')
"""A box as the chart writer leaves it, filled with the hatch that rises to the right."""
STEP: Final = 5 * math.sqrt(2)
"""From line to line along an edge, in units of the view box: five across the lines, as in the chart's own tile."""


def drawn_out(svg: str) -> str:
    """The same chart with the lines of each hatched box in place of its pattern."""
    return HATCHED.sub(lambda found: _lines_of(found["said"], found["rest"]), svg)


def _lines_of(said: str, rest: str) -> str:
    """The box without its fill, and its lines as one path."""
    x, y, width, height = (_side(said, name) for name in ("x", "y", "width", "height"))
    path = "".join(_stroke(x, y, x + width, y + height, at) for at in _places(x + y, x + y + width + height))
    return f'<rect{said} fill="none"{rest}/><path d="{path}" stroke="#000000" stroke-width="0.7" fill="none"/>'


def _side(said: str, name: str) -> float:
    """An attribute's number."""
    found = re.search(rf' {name}="([-0-9.]+)"', said)
    assert found is not None, f"a hatched box without {name}"
    return float(found[1])


def _places(low: float, high: float) -> list[float]:
    """Where lines x + y = place pass between two corners; the same grid for every box, so that neighbours agree."""
    return [STEP * number for number in range(math.ceil(low / STEP), math.floor(high / STEP) + 1)]


def _stroke(left: float, top: float, right: float, foot: float, at: float) -> str:
    """The part of the line x + y = at that lies in the box."""
    x1, x2 = max(left, at - foot), min(right, at - top)
    return f"M{x1:.2f} {at - x1:.2f}L{x2:.2f} {at - x2:.2f}"
