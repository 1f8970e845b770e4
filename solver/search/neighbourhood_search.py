"""The climb: a week from nothing, then better weeks by CP-SAT on neighbourhoods of days."""

from __future__ import annotations

import time
from collections.abc import Callable, Iterable, Iterator, Sequence
from dataclasses import dataclass, field
from functools import partial

from setwright.solver.auditing import Audit, audit
from setwright.solver.engines.build import day_model
from setwright.solver.engines.cpsat import CpSatModel, CpSatResult
from setwright.solver.evaluation.week import Week
from setwright.solver.linear.columns import Instance
from setwright.solver.linear.linear_model import LinearModel
from setwright.solver.search.candidates import Candidates
from setwright.solver.search.decoding import week_of
from setwright.solver.search.limits import Limits
from setwright.solver.search.neighbourhoods import Neighbourhood, neighbourhoods
from setwright.solver.search.worker import Worker, result

Tell = Callable[[Audit], None]
FIRST_WORK = 0.5


class Stopped(Exception):
    """The user or the net ended the climb."""


@dataclass(frozen=True)
class State:
    """A week at hand, and the columns that make it."""

    model: LinearModel
    candidates: Candidates
    chosen: frozenset[int]
    best: Audit


@dataclass
class NeighbourhoodSearch:
    """The best week so far and the columns that make it."""

    instance: Instance
    candidates: Candidates
    limits: Limits
    until: float
    tell: Tell | None = None
    model: LinearModel = field(init=False)
    chosen: frozenset[int] = frozenset()
    best: Audit | None = None
    ended: str = "work limit"
    todo: Iterator[Neighbourhood] = field(init=False)
    closed: set[Neighbourhood] = field(default_factory=set)
    """Neighbourhoods solved to their end since the week last changed."""
    stopped: Callable[[], bool] = lambda: False
    refill: bool = False
    """Whether a week to start from is filled day by day first, as where it was made for fewer minutes."""

    def __post_init__(self) -> None:
        self.model = day_model(self.instance, self.candidates.columns)
        self.todo = neighbourhoods(len(self.instance.resolved.days), self.limits.columns)

    # ---- the week of some columns

    def week(self, columns: frozenset[int]) -> Week:
        groups = self.model.groups
        found = [(groups[c.group].days[0], c) for c in (self.model.columns[j] for j in sorted(columns))]
        return week_of(self.instance, found)

    def take(self, columns: frozenset[int]) -> bool:
        """Keep these columns if their week breaks nothing and scores more than the best so far."""
        found = audit(self.instance.resolved, self.week(columns))
        if found.broken or (self.best is not None and found.score_units <= self.best.score_units):
            return False
        self.best, self.chosen = found, columns
        self.closed.clear()
        if self.tell:
            self.tell(found)
        return True

    def move(self, model: LinearModel, candidates: Candidates, columns: frozenset[int]) -> None:
        """Go on from another sheet's columns, if their week is better than the best so far."""
        before = (self.model, self.candidates)
        self.model, self.candidates = model, candidates
        if not self.take(columns):
            self.model, self.candidates = before

    def state(self) -> State | None:
        """What the climb has now; None before the first week."""
        return State(self.model, self.candidates, self.chosen, self.best) if self.best else None

    def back_to(self, state: State) -> None:
        """Forget what came after a state."""
        self.model, self.candidates, self.chosen, self.best = state.model, state.candidates, state.chosen, state.best

    # ---- rounds

    def start(self) -> None:
        """Fill the week day by day, or as a whole where wishes tie days together."""
        days = len(self.instance.resolved.days)
        tied = self.tied()
        if not tied:
            for day in range(days):
                self.try_days(Neighbourhood((day,), 2 * self.limits.columns), FIRST_WORK)
        if tied or self.best is None:
            self.try_days(self.whole(1), 2 * FIRST_WORK)

    def start_wider(self) -> bool:
        """Fill the week as a whole with more work and more columns; whether there is a week."""
        for times in (4, 16):
            if self.best is None:
                self.try_days(self.whole(times), 2 * times * FIRST_WORK)
        return self.best is not None

    def whole(self, times: int) -> Neighbourhood:
        """All days at once, so many times the usual columns open on them."""
        days = len(self.instance.resolved.days)
        return Neighbourhood(tuple(range(days)), times * max(40, 240 // days))

    def tied(self) -> bool:
        """Whether days hang together from the start: by hard wishes, or by efficiency's even days."""
        return any(constrain.wish or constrain.rule == "day-share" for constrain in self.model.constraints)

    def improve(self, rounds: int) -> int:
        """Try so many neighbourhoods one after the other, and say how many."""
        for _ in range(rounds):
            self.check()
            place, before = self.next(), self.chosen
            self.note(place, self.try_days(place, self.limits.work), before)
        return rounds

    def climb_by_two(self, rounds: int, worker: Worker) -> None:
        """Try so many neighbourhoods, two at a time from the same week: one here, one in the other lane."""
        for _ in range(rounds // 2):
            self.check()
            places, before = (self.next(), self.next()), self.chosen
            here, there = (self.ready(place) for place in places)
            second = worker.begin(partial(self.tried, there, self.limits.work))
            both = (self.tried(here, self.limits.work), result(second, self.check))
            for place, (found, seen) in zip(places, both, strict=True):
                self.keep(seen)
                self.note(place, found.status == "OPTIMAL", before)
            self.join_days(places, [seen for _, seen in both], before)
            self.check()

    def join_days(
        self, places: Sequence[Neighbourhood], seen: Sequence[list[frozenset[int]]], before: frozenset[int]
    ) -> None:
        """Try the week that takes from two neighbourhoods what each made of its own days."""
        free = [set(place.days) for place in places]
        if all(seen) and not free[0] & free[1]:
            group = self.model.columns
            kept = {j for j in before if group[j].group not in free[0] | free[1]}
            mine = {j for days, found in zip(free, seen, strict=True) for j in found[-1] if group[j].group in days}
            self.take(frozenset(kept | mine))

    def next(self) -> Neighbourhood:
        """The next neighbourhood; one that was closed since the last change is passed over, or widened."""
        place = next(self.todo)
        for _ in range(20):
            if place not in self.closed:
                return place
            place = next(self.todo)
        return Neighbourhood(place.days, 2 * place.columns, place.used)

    def note(self, place: Neighbourhood, closed: bool, before: frozenset[int]) -> None:
        """Keep in mind what was solved to its end without a change."""
        if closed and self.chosen == before:
            self.closed.add(place)

    def try_days(self, place: Neighbourhood, work: float) -> bool:
        """Solve one neighbourhood and keep what is better; whether it was solved to its end."""
        self.check()
        found, seen = self.tried(self.ready(place), work)
        self.keep(seen)
        self.check()
        return found.status == "OPTIMAL"

    def ready(self, place: Neighbourhood) -> CpSatModel:
        """The program of a neighbourhood, from the week at hand."""
        program = self.program(place)
        if self.chosen:
            program.hint(self.chosen)
        program.maximise()
        return program

    def tried(self, program: CpSatModel, work: float) -> tuple[CpSatResult, list[frozenset[int]]]:
        """How a program ended, and each better week it saw."""
        seen: list[frozenset[int]] = []
        return program.solve(work, max(0.1, self.until - time.monotonic()), seen.append), seen

    def keep(self, seen: Iterable[frozenset[int]]) -> None:
        """Keep the best of some weeks that the audit passes."""
        for columns in reversed(tuple(seen)):
            if self.take(columns):
                break

    def program(self, place: Neighbourhood) -> CpSatModel:
        """The neighbourhood as a CP-SAT program: free days' best columns open, other days as they are."""
        opened = self.opened(place)
        fixed = {j: 1 for j in self.chosen if self.model.columns[j].group not in place.days}
        return CpSatModel(self.model, fixed, opened)

    def opened(self, place: Neighbourhood) -> frozenset[int]:
        """The columns open in a neighbourhood."""
        ranked = self.candidates.ranked
        opened = {j for day in place.days for j in self.chosen if self.model.columns[j].group == day}
        opened |= {j for j in self.candidates.must if self.model.columns[j].group in place.days}
        classes = {a.cls for j in self.chosen for a in self.model.columns[j].assignments}
        for day in place.days:
            if place.used:
                mine = [j for j in ranked[day] if all(a.cls in classes for a in self.model.columns[j].assignments)]
            else:
                mine = list(ranked[day])
            opened |= set(mine[: place.columns])
        return frozenset(opened)

    def check(self) -> None:
        if self.stopped():
            self.ended = "stopped"
            raise Stopped
        if time.monotonic() > self.until:
            self.ended = "time limit"
            raise Stopped
