"""What a course of a search works with, in one value."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass

from setwright.solver.linear.linear_model import LinearModel
from setwright.solver.search.bounding import Bound
from setwright.solver.search.candidates import Ranking
from setwright.solver.search.neighbourhood.neighbourhood_search import NeighbourhoodSearch
from setwright.solver.search.solve_options import SolveOptions
from setwright.solver.search.worker import Worker


@dataclass(frozen=True)
class Given:
    """A search that has begun: its models, its week so far, its bound, and who works."""

    week: LinearModel
    """The week without a day index."""
    ranking: Ranking
    lns: NeighbourhoodSearch
    options: SolveOptions
    bound: Bound
    worker: Worker
    find_first: Callable[[], bool]
    """Finds the first week; whether there is one. Raises Interrupted."""
