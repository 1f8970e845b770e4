"""A week of which a part stands, and the columns that its free days may take beside it."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass

from setwright.solver.auditing import Audit, audit
from setwright.solver.engines import highs
from setwright.solver.engines.build import build, columns_with_halves
from setwright.solver.engines.held_columns import hold
from setwright.solver.evaluation.week import Entry, Week
from setwright.solver.linear.columns import Column, DayGroup
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
    """The ranking of columns on the free days by the relaxation of the week in which the done sessions stand.

    Free days that are alike are one group, as in the week without days.
    """
    groups, place = _groups_beside(instance, standing)
    free = tuple(group for group in groups if group.days[0] in standing.free)
    done = tuple(Column(place[column.group], column.assignments) for column in held)
    model = build(instance, groups, (*done, *columns_with_halves(instance, free)))
    hold(model, range(len(held)), audit(instance.resolved, standing.as_done))
    relaxed = highs.relax(model)
    value: dict[tuple[int, Assignment], float] = {}
    for j in range(len(held), len(model.columns)):
        value[groups[model.columns[j].group].like, model.columns[j].assignments[0]] = relaxed.reduced[j]
    return Ranking(instance, value, relaxed.value)


def _groups_beside(instance: Instance, standing: StandingWeek) -> tuple[tuple[DayGroup, ...], dict[int, int]]:
    """One group for the free days of each kind and one for each other day; and day -> the index of its group."""
    kinds: dict[tuple[int, int | None], list[int]] = {}
    for day, like in sorted(instance.like_of.items()):
        kinds.setdefault((like, None if day in standing.free else day), []).append(day)
    groups = tuple(DayGroup(i, like, tuple(days)) for i, ((like, _), days) in enumerate(kinds.items()))
    return groups, {day: group.index for group in groups for day in group.days}
