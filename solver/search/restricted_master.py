"""Better weeks of a longer brief by HiGHS on few columns of all days at once, at its root node or a little further."""

from __future__ import annotations

from collections.abc import Callable

from setwright.solver.engines import highs
from setwright.solver.engines.build import day_model
from setwright.solver.linear.instance import Instance
from setwright.solver.search.candidates import Candidates
from setwright.solver.search.neighbourhood.neighbourhood_search import Incumbent
from setwright.solver.search.neighbourhood.neighbourhood_solver import Chosen
from setwright.solver.search.solve_options import SolveOptions

COLUMNS = 320
"""Columns that HiGHS sees: with more, its root alone takes over ten seconds."""


def solve_restricted_master(
    instance: Instance, candidates: Candidates, options: SolveOptions, cancelled: Callable[[], bool]
) -> Chosen | None:
    """The week that HiGHS makes of the best candidates of all days, started from no week; None where it finds none."""
    most = COLUMNS // len(instance.resolved.days)
    kept = {j for day in candidates.ranked for j in day[:most]} | candidates.must
    return _best_of(instance, candidates, kept, None, options, cancelled)


def improve_incumbent(incumbent: Incumbent, options: SolveOptions, cancelled: Callable[[], bool]) -> Chosen | None:
    """The week that HiGHS makes, from the incumbent, of the classes that are in it; None where it finds none."""
    candidates = incumbent.solver.candidates
    used = {a.cls for j in incumbent.chosen for a in candidates.columns[j].assignments}
    kept = {j for j, column in enumerate(candidates.columns) if all(a.cls in used for a in column.assignments)}
    kept |= candidates.must
    return _best_of(incumbent.solver.instance, candidates, kept, incumbent.chosen, options, cancelled)


def _best_of(
    instance: Instance,
    candidates: Candidates,
    kept: set[int],
    start: Chosen | None,
    options: SolveOptions,
    cancelled: Callable[[], bool],
) -> Chosen | None:
    """HiGHS's week over some candidates, from a week at hand or from none."""
    if not options.limits.heuristic_nodes:
        return None
    listed = sorted(kept)
    model = day_model(instance, [candidates.columns[j] for j in listed])
    begun = None if start is None else [i for i, j in enumerate(listed) if j in start]
    found = highs.bound(model, options.limits.heuristic_nodes, options.seconds, None, cancelled, start=begun)
    if found.chosen is None:
        return None
    return frozenset(listed[i] for i in found.chosen)
