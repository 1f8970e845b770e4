"""The course of a search for a week of short days: neighbourhoods beside day patterns, then the week made of these.

A short day holds a handful of lifts. Which of them fit its minutes as wholes is what other relaxations leave open.
"""

from __future__ import annotations

import math
from collections.abc import Iterator
from functools import partial
from itertools import islice, permutations, product

from setwright.solver.auditing import audit
from setwright.solver.engines import highs
from setwright.solver.engines.day_patterns.generation import decomposed
from setwright.solver.engines.day_patterns.master import Master
from setwright.solver.engines.day_patterns.pricing import DayPattern
from setwright.solver.linear.columns import Column
from setwright.solver.linear.instance import Instance
from setwright.solver.search.bounding import Bound, is_near, prove_week
from setwright.solver.search.courses.given import Given
from setwright.solver.search.decoding import week_of
from setwright.solver.search.neighbourhood.initial_solution import adopt_columns
from setwright.solver.search.neighbourhood.neighbourhood_search import NeighbourhoodSearch
from setwright.solver.search.solve_options import SolveOptions
from setwright.solver.search.worker import result

MINUTES = 15
"""Days of up to so many minutes are short; measured: from 20 on patterns lower the bound no further than branching."""
ORDERS = 60
"""Orders of the sessions over the days that are tried, at most."""
PARTS = 3
"""Parts of the neighbourhoods: while patterns are made, while a week is made of them, and from the best of both."""


def has_short_days(instance: Instance) -> bool:
    """Whether every day of a brief is short."""
    return all(day.minutes <= MINUTES for day in instance.resolved.days)


def search_short_days(given: Given) -> None:
    """Improve such a week and lower its bound; nothing more where there is no first one. Raises Interrupted."""
    week, ranking, lns, find_first = given.week, given.ranking, given.lns, given.find_first
    options, bound, worker = given.options, given.bound, given.worker
    check = lns.solver.signal.check
    patterns = worker.begin(partial(_prove_days, ranking.instance, bound))
    if not find_first():
        # Waited for all the same: with one worker it is done by now, and the bound is to be the same with two.
        result(patterns, check)
        return
    left = options.limits.rounds_for(lns.days)
    part = max(1, left // PARTS)
    left -= lns.improve(min(part, left))
    master = result(patterns, check)
    if master is None:
        result(worker.begin(partial(prove_week, week, options, bound)), check)
    else:
        chosen = worker.begin(partial(_week_of_patterns, master, _sessions(lns, master), options, bound))
        before = lns.best
        left -= lns.improve(min(part, left))
        _adopt_best_order(lns, master, result(chosen, check))
        if lns.best is before:
            return
    if lns.best and not is_near(lns.best, bound.value, options):
        lns.improve(left)


def _prove_days(instance: Instance, bound: Bound) -> Master | None:
    """Lower the bound by day patterns, and keep these; None where they prove nothing."""
    master, value = decomposed(instance, lambda value: bound.lower(highs.outward(value)), bound.cancelled)
    return master if math.isfinite(value) else None


def _sessions(lns: NeighbourhoodSearch, master: Master) -> list[tuple[int, DayPattern]]:
    """The sessions of the best week so far, by groups of like days."""
    incumbent = lns.incumbent()
    columns = incumbent.columns if incumbent else ()
    likes = {day: lns.instance.like_of[day] for day in range(lns.days)}
    found = ((like, master.session(like, [c for c in columns if c.group == day])) for day, like in likes.items())
    return [(like, session) for like, session in found if session is not None and session.columns]


def _week_of_patterns(
    master: Master, sessions: list[tuple[int, DayPattern]], options: SolveOptions, bound: Bound
) -> tuple[tuple[int, DayPattern], ...]:
    """The sessions of the best week that is made of the patterns and of some sessions at hand."""
    for group, session in sessions:
        master.add(group, session)
    return master.choice(max(1, options.limits.fixing_nodes), options.seconds, bound.cancelled)


def _adopt_best_order(lns: NeighbourhoodSearch, master: Master, sessions: tuple[tuple[int, DayPattern], ...]) -> None:
    """Put sessions on days in every order, or in the first ones where there are many; take the best if it is better."""
    best: tuple[int, list[Column]] | None = None
    for columns in islice(_orders(lns.instance, master, sessions), ORDERS):
        lns.solver.signal.check()
        week = week_of(lns.instance, [(column.group, column) for column in columns])
        found = audit(lns.instance.resolved, week)
        if not found.broken and (best is None or found.score_units > best[0]):
            best = found.score_units, columns
    if best is not None:
        adopt_columns(lns, best[1])


def _orders(instance: Instance, master: Master, sessions: tuple[tuple[int, DayPattern], ...]) -> Iterator[list[Column]]:
    """The columns on days for each order of the sessions over the days of their group."""
    groups = []
    for like, days in enumerate(instance.like_days):
        held: list[DayPattern | None] = [session for group, session in sessions if group == like]
        held += [None] * (len(days) - len(held))
        groups.append([list(zip(days, order, strict=True)) for order in dict.fromkeys(permutations(held))])
    for chosen in product(*groups):
        placed = [(day, session) for group in chosen for day, session in group if session is not None]
        yield [
            Column(day, column.assignments)
            for day, session in placed
            for column in master.columns_of(instance.like_of[day], session)
        ]
