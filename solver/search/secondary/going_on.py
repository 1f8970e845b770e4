"""A search that goes on from other weeks too, where they are better than the one it found."""

from __future__ import annotations

from collections.abc import Sequence
from contextlib import suppress
from dataclasses import replace

from setwright.solver.evaluation.week import Week
from setwright.solver.search.encoding import columns_of
from setwright.solver.search.neighbourhood.neighbourhood_search import NeighbourhoodSearch
from setwright.solver.search.secondary.minimal_change import ways_to_repeat
from setwright.solver.search.solve_options import SolveOptions
from setwright.solver.search.stopping import Interrupted


def go_on_from(lns: NeighbourhoodSearch, weeks: Sequence[Week], options: SolveOptions) -> NeighbourhoodSearch:
    """A search of its own, at least as good as the one given and as each of `weeks` that the brief allows.

    Their exercises are open in every neighbourhood, done in any way on the days that they had. Half the usual rounds
    are tried where one of the weeks was better. The search given is left as it is.
    """
    wanted = (column for week in weeks for column in ways_to_repeat(lns.instance, week))
    other = NeighbourhoodSearch(lns.solver.widened(wanted, options.signal()), options.limits)
    if found := lns.incumbent():
        other.restore(replace(found, solver=other.solver))
    better = [_accept_week(other, week) for week in weeks]
    if any(better):
        with suppress(Interrupted):
            other.improve(options.limits.rounds_for(other.days) // 2)
    return other


def _accept_week(lns: NeighbourhoodSearch, week: Week) -> bool:
    """Whether a week is better than a search's best, and its columns are among the candidates; it is the best then."""
    columns = columns_of(lns.instance, week)
    if not columns or not set(columns) <= set(lns.solver.candidates.columns):
        return False
    return lns.accept(lns.solver.candidates.places(columns))
