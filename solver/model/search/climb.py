"""The climb: a week from nothing, then better weeks by CP-SAT on neighbourhoods of days."""

from __future__ import annotations

import time
from collections.abc import Callable, Iterator
from dataclasses import dataclass, field

from setwright.solver.model.build import day_sheet
from setwright.solver.model.columns import Board
from setwright.solver.model.engines.cpsat import Program
from setwright.solver.model.limits import Limits
from setwright.solver.model.naming import week_of
from setwright.solver.model.search.candidates import Candidates
from setwright.solver.model.search.neighbourhoods import Neighbourhood, neighbourhoods
from setwright.solver.model.sheet import Sheet
from setwright.solver.reckoning.audit import Audit, audit
from setwright.solver.reckoning.week import Week

Tell = Callable[[Audit], None]
FIRST_WORK = 0.5


class Stopped(Exception):
    """The user or the net ended the climb."""


@dataclass
class Climb:
    """The best week so far and the columns that make it."""

    board: Board
    candidates: Candidates
    limits: Limits
    until: float
    tell: Tell | None = None
    sheet: Sheet = field(init=False)
    chosen: frozenset[int] = frozenset()
    best: Audit | None = None
    ended: str = "work limit"
    todo: Iterator[Neighbourhood] = field(init=False)
    closed: set[Neighbourhood] = field(default_factory=set)
    """Neighbourhoods solved to their end since the week last changed."""
    stopped: Callable[[], bool] = lambda: False

    def __post_init__(self) -> None:
        self.sheet = day_sheet(self.board, self.candidates.columns)
        self.todo = neighbourhoods(len(self.board.terms.days), self.limits.columns)

    # ---- the week of some columns

    def week(self, columns: frozenset[int]) -> Week:
        cells = self.sheet.cells
        found = [(cells[c.cell].days[0], c) for c in (self.sheet.columns[j] for j in sorted(columns))]
        return week_of(self.board, found)

    def take(self, columns: frozenset[int]) -> bool:
        """Keep these columns if their week breaks nothing and scores more than the best so far."""
        found = audit(self.board.terms, self.week(columns))
        if found.broken or (self.best is not None and found.score_units <= self.best.score_units):
            return False
        self.best, self.chosen = found, columns
        if self.tell:
            self.tell(found)
        return True

    def move(self, sheet: Sheet, candidates: Candidates, columns: frozenset[int]) -> None:
        """Go on from another sheet's columns, if their week is better than the best so far."""
        before = (self.sheet, self.candidates)
        self.sheet, self.candidates = sheet, candidates
        if not self.take(columns):
            self.sheet, self.candidates = before

    # ---- rounds

    def start(self) -> bool:
        """Fill the week day by day, then as a whole where wishes tie days together; whether a week was found."""
        days = len(self.board.terms.days)
        if not self.tied():
            for day in range(days):
                self.try_days(Neighbourhood((day,), 2 * self.limits.columns), FIRST_WORK)
        if self.best is None:
            whole = Neighbourhood(tuple(range(days)), max(40, 240 // days))
            for work in (2 * FIRST_WORK, 8 * FIRST_WORK, 16 * FIRST_WORK):
                self.try_days(whole, work)
                if self.best is not None:
                    break
                whole = Neighbourhood(whole.days, 4 * whole.columns)
        return self.best is not None

    def tied(self) -> bool:
        """Whether days hang together from the start: by hard wishes, or by efficiency's even days."""
        return any(row.label or row.rule == "day-share" for row in self.sheet.rows)

    def climb(self, rounds: int) -> None:
        """Try so many neighbourhoods; one that was closed since the last change is not tried again."""
        for _ in range(rounds):
            self.check()
            place = next(self.todo)
            for _ in range(20):
                if place not in self.closed:
                    break
                place = next(self.todo)
            else:
                place = Neighbourhood(place.days, 2 * place.columns, place.used)
            before = self.chosen
            if self.try_days(place, self.limits.work) and self.chosen == before:
                self.closed.add(place)
            if self.chosen != before:
                self.closed.clear()

    def try_days(self, place: Neighbourhood, work: float) -> bool:
        """Solve one neighbourhood and keep what is better; whether it was solved to its end."""
        self.check()
        program = self.program(place)
        if self.chosen:
            program.hint(self.chosen)
        program.maximise()
        seen: list[frozenset[int]] = []
        found = program.solve(work, max(0.1, self.until - time.monotonic()), seen.append)
        for columns in reversed(seen):
            if self.take(columns):
                break
        self.check()
        return found.status == "OPTIMAL"

    def program(self, place: Neighbourhood) -> Program:
        """The neighbourhood as a CP-SAT program: free days' best columns open, other days as they are."""
        opened = self.opened(place)
        fixed = {j: 1 for j in self.chosen if self.sheet.columns[j].cell not in place.days}
        return Program(self.sheet, fixed, opened)

    def opened(self, place: Neighbourhood) -> frozenset[int]:
        """The columns open in a neighbourhood."""
        ranked = self.candidates.ranked
        opened = {j for day in place.days for j in self.chosen if self.sheet.columns[j].cell == day}
        opened |= {j for j in self.candidates.must if self.sheet.columns[j].cell in place.days}
        classes = {a.cls for j in self.chosen for a in self.sheet.columns[j].atoms}
        for day in place.days:
            if place.used:
                mine = [j for j in ranked[day] if all(a.cls in classes for a in self.sheet.columns[j].atoms)]
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
