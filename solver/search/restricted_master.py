"""The leap of a longer week: HiGHS's root, on the best columns of all days at once, finds a better start."""

from __future__ import annotations

from collections.abc import Callable

from setwright.solver.engines import highs
from setwright.solver.engines.build import day_model
from setwright.solver.linear.columns import Instance
from setwright.solver.search.candidates import Candidates
from setwright.solver.search.limits import Limits
from setwright.solver.search.neighbourhood_search import State

COLUMNS = 320
"""Columns that HiGHS sees: with more, its root alone takes over ten seconds."""


def solve_restricted_master(
    instance: Instance, candidates: Candidates, limits: Limits, cancelled: Callable[[], bool]
) -> tuple[frozenset[int], ...]:
    """The columns of HiGHS's week over the best of all days; the climb's week is no start for it. Empty: none."""
    most = COLUMNS // len(instance.resolved.days)
    kept = {j for day in candidates.ranked for j in day[:most]} | candidates.must
    return sought(instance, candidates, kept, None, limits, cancelled)


def improve_incumbent(
    state: State, instance: Instance, limits: Limits, cancelled: Callable[[], bool]
) -> tuple[frozenset[int], ...]:
    """The columns of the week that HiGHS makes of one at hand with the classes that are in it. Empty: none."""
    columns = state.candidates.columns
    classes = {a.cls for j in state.chosen for a in columns[j].assignments}
    used = {j for j, column in enumerate(columns) if all(a.cls in classes for a in column.assignments)}
    return sought(instance, state.candidates, used | state.candidates.must, state.chosen, limits, cancelled)


def sought(
    instance: Instance,
    candidates: Candidates,
    kept: set[int],
    start: frozenset[int] | None,
    limits: Limits,
    cancelled: Callable[[], bool],
) -> tuple[frozenset[int], ...]:
    """HiGHS's week over some candidates, from a week at hand or from none."""
    if not limits.heuristic_nodes:
        return ()
    listed = sorted(kept)
    model = day_model(instance, [candidates.columns[j] for j in listed])
    begun = None if start is None else [i for i, j in enumerate(listed) if j in start]
    found = highs.bound(model, limits.heuristic_nodes, limits.seconds, None, cancelled, start=begun)
    if found.amounts is None:
        return ()
    return (frozenset(j for j, amount in zip(listed, found.amounts, strict=True) if amount > 0.5),)
