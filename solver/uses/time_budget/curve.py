"""What time buys: the best week found for each amount of it, never falling, each audited and with its proven bound."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from dataclasses import dataclass, replace
from itertools import pairwise
from typing import Literal

from setwright.catalogue.entries import Catalogue
from setwright.solver.auditing import Audit, audit
from setwright.solver.brief.parsed_brief import ParsedBrief
from setwright.solver.evaluation.resolved_brief import ResolvedBrief
from setwright.solver.planning import Solved, delivered, search_only
from setwright.solver.rulebook import resolve
from setwright.solver.search.limits import Limits
from setwright.solver.search.solve_options import SolveOptions
from setwright.solver.search.stopping import EndedBy
from setwright.solver.uses.time_budget.amounts import each_session, each_week, so_many_days
from setwright.solver.uses.time_budget.knee import bend

Kind = Literal["minutes", "weekly", "days"]
AMOUNTS = {"minutes": each_session, "weekly": each_week, "days": so_many_days}
NEAR = 0.01
"""A week within this share of its index of what no longer week can pass is not searched again (convention)."""
TIMES = 5.0
"""Times a search's own wall-clock limit: a curve is to be the same on a busy machine."""
Tell = Callable[[int, int], None]
"""Told before each search: the row's amount, and how many rows are left."""


@dataclass(frozen=True)
class Row:
    """One amount of time: its week (None: none found), and the amount that the week was found for."""

    amount: int
    given: int
    """Minutes a week that the amount gives."""
    solved: Solved | None
    week_of: int | None

    @property
    def score(self) -> float | None:
        return None if self.solved is None else self.solved.score


@dataclass(frozen=True)
class Curve:
    """Rows by rising amount, and the place of the bend among them (None: no bend)."""

    kind: Kind
    parsed: ParsedBrief
    limits: Limits
    rows: tuple[Row, ...]
    searches: int
    """How many searches the rows took."""
    ended_by: EndedBy
    wall_clock_limit: float
    """Seconds after which a search of one row was ended."""

    @property
    def bend(self) -> int | None:
        found = [i for i, row in enumerate(self.rows) if row.solved is not None]
        place = bend([(float(self.rows[i].given), self.rows[i].score or 0.0) for i in found])
        return None if place is None else found[place]

    def gain(self, place: int) -> float | None:
        """Score points for each further half hour a week since the row before; None for the first with a week."""
        row, before = self.rows[place], self.rows[place - 1] if place else None
        if before is None or row.score is None or before.score is None:
            return None
        return (row.score - before.score) * 30.0 / (row.given - before.given)


@dataclass
class Stand:
    """One amount while the curve is made: its brief, and the best week and lowest bound so far."""

    amount: int
    parsed: ParsedBrief
    resolved: ResolvedBrief
    best: Audit | None = None
    week_of: int | None = None
    bound: float = float("inf")
    ended_by: EndedBy = EndedBy.WORK_LIMIT

    def offer(self, other: Stand) -> None:
        """Take another amount's week where it is better: reckoned anew here, or as it is from a lesser amount."""
        if other.best is None:
            return
        as_it_is = (other.best,) if other.amount < self.amount else ()
        again = self.reckoned(other.best)
        for found in ((again,) if again else ()) + as_it_is:
            if self.best is None or found.score_units > self.best.score_units:
                self.best, self.week_of = found, other.week_of

    def reckoned(self, found: Audit) -> Audit | None:
        """A week audited in this amount's terms; None where it does not pass."""
        if len(found.evaluated.week.days) != len(self.resolved.days):
            return None
        again = audit(self.resolved, found.evaluated.week)
        return None if again.broken else again


def curve_of(
    parsed: ParsedBrief,
    kind: Kind,
    amounts: Sequence[int],
    catalogue: Catalogue,
    limits: Limits,
    tell: Tell | None = None,
    stopped: Callable[[], bool] = lambda: False,
) -> Curve:
    """The curve over some rising amounts; the same brief, amounts and limits give the same curve.

    Minutes: the most is searched first, because its bound holds for every shorter week (a week that fits a day fits
    a longer one), then the others from the least up, each from the best week before it.
    Days: each number of days is searched by itself, and a day may be left unused.
    """
    seconds = TIMES * SolveOptions(limits).seconds
    briefs = [(amount, AMOUNTS[kind](parsed, amount)) for amount in amounts]
    stands = [Stand(amount, brief, resolve(brief.brief, catalogue)) for amount, brief in briefs]
    line = Line(stands, SolveOptions(limits, wall_clock_limit=seconds, stopped=stopped), tell or (lambda *_: None))
    line.by_days() if kind == "days" else line.by_minutes()
    rows = tuple(row_of(stand, limits) for stand in stands)
    return Curve(kind, parsed, limits, rows, line.searches, line.ended_by, seconds)


@dataclass
class Line:
    """The amounts in rising order, and the work done on them."""

    stands: list[Stand]
    options: SolveOptions
    tell: Tell
    searches: int = 0
    ended_by: EndedBy = EndedBy.WORK_LIMIT

    def by_days(self) -> None:
        """Each by itself, then the best of at most so many days."""
        for place, stand in enumerate(self.stands):
            self.searched(stand, None, len(self.stands) - place)
        for before, stand in pairwise(self.stands):
            stand.bound = max(stand.bound, before.bound)
            stand.offer(before)

    def by_minutes(self) -> None:
        """The most first, then from the least up, from week to week; at last shorter weeks that later rows found."""
        *rising, top = self.stands
        self.searched(top, None, len(self.stands))
        before: Stand | None = None
        for place, stand in enumerate(rising):
            for other in (before, top):
                if other is not None:
                    stand.offer(other)
            stand.bound = top.bound
            if not near(stand):
                self.searched(stand, stand.best, len(rising) - place)
            before = stand
        for stand, longer in reversed(list(pairwise(self.stands))):
            stand.bound = min(stand.bound, longer.bound)
            stand.offer(longer)
        for shorter, stand in pairwise(self.stands):
            stand.offer(shorter)

    def searched(self, stand: Stand, start: Audit | None, left: int) -> None:
        """Search one amount, from a week at hand if there is one."""
        if self.options.stopped():
            self.ended_by = EndedBy.STOPPED
            return
        self.tell(stand.amount, left)
        self.searches += 1
        limits = self.options.limits if stand is self.stands[-1] else lighter(self.options.limits)
        week = None if start is None else start.evaluated.week
        outcome = search_only(stand.resolved, replace(self.options, limits=limits), week)
        stand.bound, stand.ended_by = min(stand.bound, outcome.bound), outcome.ended_by
        if outcome.ended_by.interrupted:
            self.ended_by = outcome.ended_by
        if outcome.best is not None and (start is None or outcome.best.score_units > start.score_units):
            stand.best, stand.week_of = outcome.best, stand.amount


def lighter(limits: Limits) -> Limits:
    """Limits for every row but the last: a quick search leaves the bound of a week of many days at its relaxation.

    Branching on themes takes two thirds of a quick search of four days and lowers the bound by about one point.
    """
    return replace(limits, pattern_nodes=0) if limits.name == "quick" else limits


def near(stand: Stand) -> bool:
    """Whether the week at hand is so near to the bound that a search would win next to nothing."""
    best = stand.best
    return best is not None and stand.bound - best.score_units <= NEAR * best.stimulus_units


def row_of(stand: Stand, limits: Limits) -> Row:
    """The row of one amount, its week audited once more on the way out."""
    given = sum(day.minutes for day in stand.resolved.days)
    if stand.best is None:
        return Row(stand.amount, given, None, None)
    bound = max(stand.bound, float(stand.best.score_units))
    own = stand.best.evaluated.resolved
    parsed = replace(stand.parsed, brief=own.brief)
    found = delivered(parsed, own, stand.best.evaluated.week, bound, stand.ended_by, limits)
    return Row(stand.amount, given, found, stand.week_of)
