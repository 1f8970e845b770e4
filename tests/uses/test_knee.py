"""The knee: a worked example by hand, the calculus of the square root, and curves that have none."""

from __future__ import annotations

import math

from setwright.solver.uses.time_budget.knee import knee_of

BY_HAND = ((60.0, 0.0), (120.0, 60.0), (180.0, 80.0), (240.0, 90.0), (300.0, 100.0))
"""Scaled x 0, .25, .5, .75, 1 and y 0, .6, .8, .9, 1: y - x is 0, .35, .30, .15, 0, so the second point is farthest."""


def test_the_knee_of_a_worked_example() -> None:
    assert knee_of(BY_HAND) == 1


def test_the_knee_is_where_a_root_rises_no_faster_than_its_chord() -> None:
    """sqrt(x) - x is greatest where 1/(2*sqrt(x)) = 1, at x = 1/4 (calculus, no source needed)."""
    assert knee_of([(i / 100, math.sqrt(i / 100)) for i in range(101)]) == 25


def test_the_knee_is_the_point_farthest_from_the_chord() -> None:
    """The same by the distance of a point from a line, reckoned from the cross product."""
    points = [(0.0, 0.0), (1.0, 30.0), (2.0, 55.0), (4.0, 70.0), (7.0, 80.0), (10.0, 85.0)]
    (x0, y0), (x1, y1) = points[0], points[-1]
    scaled = [((x - x0) / (x1 - x0), (y - y0) / (y1 - y0)) for x, y in points]
    distances = [abs(y - x) / math.hypot(1, 1) for x, y in scaled]
    assert knee_of(points) == distances.index(max(distances))


def test_scaling_an_axis_does_not_move_the_knee() -> None:
    assert knee_of([(3 * x, 0.1 * y - 5) for x, y in BY_HAND]) == knee_of(BY_HAND)


def test_the_first_of_two_equal_points_is_taken() -> None:
    assert knee_of([(0.0, 0.0), (1.0, 3.0), (2.0, 4.0), (4.0, 4.0)]) == 1
    assert knee_of([(0.0, 0.0), (1.0, 2.0), (2.0, 3.0), (4.0, 4.0)]) == 1


def test_no_knee_in_a_line_a_hollow_a_level_or_two_points() -> None:
    assert knee_of([(0.0, 0.0), (1.0, 1.0), (2.0, 2.0)]) is None
    assert knee_of([(0.0, 0.0), (1.0, 0.2), (2.0, 2.0)]) is None
    assert knee_of([(0.0, 5.0), (1.0, 5.0), (2.0, 5.0)]) is None
    assert knee_of([(0.0, 0.0), (1.0, 9.0)]) is None
