"""A week of which a part stands, and the columns that its free days may take beside it."""

from __future__ import annotations

import math
from collections.abc import Mapping
from dataclasses import dataclass

from setwright.solver.auditing import Audit, audit
from setwright.solver.engines import highs
from setwright.solver.engines.build import columns_with_halves, day_model
from setwright.solver.engines.held_columns import hold
from setwright.solver.evaluation.week import Entry, Week
from setwright.solver.linear.columns import Column, day_groups
from setwright.solver.linear.instance import Assignment, Instance
from setwright.solver.search.candidates import Candidates, Ranking, candidates_of
from setwright.solver.search.encoding import assignment_of, columns_of
from setwright.solver.search.secondary.minimal_change import ways_to_repeat


@dataclass(frozen=True)
class StandingWeek:
    """A week of which a part stands: `done` sessions as they are, `free` ones to be planned again, no others held."""

    week: Week
    """As it was planned, missed sessions left out."""
    done: frozenset[int]
    free: tuple[int, ...]
    most_sets: Mapping[int, int]
    """Free day -> the sets it may have at most; days that are absent have no such limit."""
    shorter: Mapping[int, bool]
    """Free day -> whether it has fewer minutes than it was planned with."""
    planned: Audit
    """The whole week as it was planned, under the brief of then."""

    @property
    def as_done(self) -> Week:
        """The done sessions alone."""
        return Week(tuple(entries if day in self.done else () for day, entries in enumerate(self.week.days)))

    @property
    def as_planned(self) -> Week:
        """The free sessions alone, as they were planned."""
        return Week(tuple(entries if day in self.free else () for day, entries in enumerate(self.week.days)))

    def whole(self, planned: Week) -> Week:
        """The week with the done sessions to the letter and the free ones of another week."""
        return Week(
            tuple(planned.days[d] if d in self.free else self.as_done.days[d] for d in range(len(planned.days)))
        )


def columns_still_open(instance: Instance, planned: Week) -> tuple[Column, ...]:
    """The columns of the lines that are open just as they were planned; a pair only if both of its lines are."""
    days: list[tuple[Entry, ...]] = []
    for day, entries in enumerate(planned.days):
        able = {entry.exercise for entry in entries if assignment_of(instance, day, entry) is not None}
        days.append(tuple(e for e in entries if e.exercise in able and (e.partner is None or e.partner in able)))
    return columns_of(instance, Week(tuple(days)))


def candidates_beside(instance: Instance, held: tuple[Column, ...], standing: StandingWeek) -> Candidates:
    """The done sessions' columns, then those of the free days: the best, the pinned, and every way to keep a line."""
    every = candidates_of(_ranking_beside(instance, held, standing), frozenset(standing.free))
    ahead = len(held)
    found = Candidates(
        (*held, *every.columns),
        tuple(tuple(ahead + j for j in day) for day in every.ranked),
        frozenset(ahead + j for j in every.must),
    )
    return found.widened(ways_to_repeat(instance, standing.as_planned), always_open=True)


def _ranking_beside(instance: Instance, held: tuple[Column, ...], standing: StandingWeek) -> Ranking:
    """The ranking of columns on the free days by the relaxation of the week in which the done sessions stand."""
    free = tuple(group for group in day_groups(instance) if group.index in standing.free)
    model = day_model(instance, (*held, *columns_with_halves(instance, free)))
    hold(model, range(len(held)), audit(instance.resolved, standing.as_done))
    relaxed = highs.relax(model)
    value: dict[tuple[int, Assignment], float] = {}
    for j in range(len(held), len(model.columns)):
        key = (instance.like_of[model.columns[j].group], model.columns[j].assignments[0])
        value[key] = max(value.get(key, -math.inf), relaxed.reduced[j])
    return Ranking(instance, value, relaxed.value)
