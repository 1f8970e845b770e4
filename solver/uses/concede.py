"""Concessions: the smallest ways to give way that make an impossible brief possible, each solved, ranked by cost."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass, replace

from setwright.solver.brief.schema import Brief
from setwright.solver.model.first import first_week
from setwright.solver.plan import Clash
from setwright.solver.reckoning.audit import Audit
from setwright.solver.uses.arithmetic import arithmetic
from setwright.solver.uses.fewer_sets import set_mends
from setwright.solver.uses.mend import Case, Mend
from setwright.solver.uses.more_time import time_mends
from setwright.solver.uses.other_lifts import choice_mends

MINUTE = 0.2
"""Index points that a minute more a week weighs in the ranking (convention)."""
KIND = {"kit": 3.0, "pin": 1.0, "movement": 1.0, "rule": 2.0, "goal": 2.0, "weekdays": 1.0}
"""Index points that a kind of concession weighs besides in the ranking (convention)."""
MOST = 6
"""Concessions kept."""


@dataclass(frozen=True)
class Concession:
    """One way to give way: its words, the brief it leaves, a week of that brief, and what it costs."""

    kind: str
    words: str
    brief: Brief
    minutes: int
    """Minutes a week more."""
    sets: float
    """Weekly sets given up."""
    audit: Audit
    cost: float = 0.0
    """Index points of stimulus below the best of the concessions' weeks."""

    @property
    def weight(self) -> float:
        """What the concession is ranked by, in index points: the cost, the minutes and the kind."""
        return self.cost + MINUTE * self.minutes + KIND.get(self.kind, 0.0)


@dataclass(frozen=True)
class Conceded:
    """The concessions of a clash, least first, and what plain arithmetic says of it."""

    arithmetic: tuple[str, ...]
    concessions: tuple[Concession, ...]


def concede(clash: Clash) -> Conceded:
    """The ranked concessions of a clash, each verified by a week that the audit passes.

    Amounts are the smallest whose brief has a week, by bisection on solves. Costs compare weeks by little work each,
    so they are good to about a point. The same clash gives the same concessions.
    """
    case = Case(clash.terms, clash.conflicts)
    found = [c for c in (solved(case, mend) for mend in distinct(mends(case))) if c is not None]
    return Conceded(arithmetic(clash.terms), ranked(found)[:MOST])


def mends(case: Case) -> Iterator[Mend]:
    """Every mend there is, family by family."""
    yield from choice_mends(case)
    yield from set_mends(case)
    yield from time_mends(case)


def distinct(found: Iterator[Mend]) -> Iterator[Mend]:
    """Mends that leave different briefs."""
    seen: list[Brief] = []
    for mend in found:
        if mend.brief not in seen:
            seen.append(mend.brief)
            yield mend


def solved(case: Case, mend: Mend) -> Concession | None:
    """The mend with a week of its brief, or None where none was found."""
    week = first_week(case.board(mend.brief))
    if week is None or week.broken:
        return None
    return Concession(mend.kind, mend.words, mend.brief, mend.minutes, mend.sets, week)


def ranked(found: list[Concession]) -> tuple[Concession, ...]:
    """The concessions with their costs, least weight first."""
    best = max((c.audit.stimulus for c in found), default=0.0)
    costed = [replace(c, cost=best - c.audit.stimulus) for c in found]
    return tuple(sorted(costed, key=lambda c: (round(c.weight, 4), c.words)))
