"""The knee of a curve of diminishing returns: the point after which more buys much less."""

from __future__ import annotations

from collections.abc import Sequence

FEWEST = 3
"""Points without which no curve has a knee."""


def knee_of(points: Sequence[tuple[float, float]]) -> int | None:
    """The place of the point farthest above the chord from the first point to the last, both axes scaled to 0..1.

    Points (x, y) with x rising. None with fewer than three points, where y does not rise, or where
    no point lies above the chord. After scaling, the chord is y = x and the distance to it is (y - x)/sqrt(2), so the
    point with the greatest y - x is taken, the first of equals. It is the "knee" of Satopää, Albrecht, Irwin and
    Raghavan 2011 (31st Int. Conf. on Distributed Computing Systems Workshops; from memory), for an offline curve and
    without their smoothing.
    """
    if len(points) < FEWEST:
        return None
    (x0, y0), (x1, y1) = points[0], points[-1]
    if x1 <= x0 or y1 <= y0:
        return None
    above = [(y - y0) / (y1 - y0) - (x - x0) / (x1 - x0) for x, y in points]
    most = max(above)
    return next(i for i, a in enumerate(above) if a >= most - 1e-12) if most > 1e-9 else None
