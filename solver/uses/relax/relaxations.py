"""Concessions: the smallest ways to give way that make an impossible brief possible, each solved, ranked by cost."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass, replace

from setwright.solver.auditing import Audit
from setwright.solver.brief.schema import Brief
from setwright.solver.planning import Clash, first_week
from setwright.solver.uses.relax.arithmetic import arithmetic
from setwright.solver.uses.relax.fewer_sets import asked, lowered, set_mends
from setwright.solver.uses.relax.more_time import longer, more_times, time_mends
from setwright.solver.uses.relax.other_lifts import choice_mends
from setwright.solver.uses.relax.relaxation import Case, Mend

MINUTE = 0.2
"""Index points that a minute more a week weighs in the ranking (convention)."""
KIND = {"kit": 3.0, "station": 6.0, "pin": 1.0, "movement": 1.0, "rule": 2.0, "goal": 2.0, "weekdays": 1.0}
"""Index points that a kind of concession weighs besides in the ranking (convention)."""
FEW = 3
"""With fewer concessions than these, more time and fewer sets are tried together."""
MOST_PINS = 2
"""Pins dropped in turn, each together with more time."""
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
    case = Case(clash.resolved, clash.conflicts)
    found = list(distinct(mends(case)))
    if len(found) < FEW:
        found += together(case)
    weeks = [solved(case, mend) for mend in found]
    return Conceded(arithmetic(clash.resolved), ranked([c for c in weeks if c is not None])[:MOST])


def mends(case: Case) -> Iterator[Mend]:
    """Every mend there is, family by family."""
    yield from choice_mends(case)
    yield from set_mends(case)
    yield from time_mends(case)


def together(case: Case) -> Iterator[Mend]:
    """Two ways to give way at once, where one alone gives few."""
    if case.about("exact-band"):
        yield from time_and_sets(case)
    if case.about("pinned") and case.about("day-minutes"):
        yield from pin_and_time(case)


def pin_and_time(case: Case) -> Iterator[Mend]:
    """One pin dropped and then the fewest minutes more."""
    for place, pin in enumerate(case.brief.pins[:MOST_PINS]):
        brief = case.changed(pins=(*case.brief.pins[:place], *case.brief.pins[place + 1 :]))
        if brief is None:
            continue
        name = case.catalogue.exercises[pin.exercise].name.lower()
        for mend in longer(case.after(brief)):
            yield Mend("pin", f"drop the pin on {name}, and {mend.words}", mend.brief, mend.minutes)


def time_and_sets(case: Case) -> Iterator[Mend]:
    """More time and then the least equal reduction of every lower end."""
    for base in more_times(case):
        if case.possible(base.brief):
            continue
        rest = case.after(base.brief)
        for mend in lowered(rest, tuple(asked(rest, "at_least"))):
            words = f"{base.words}, and {mend.words}"
            yield Mend("sets", words, mend.brief, base.minutes, mend.sets)


def distinct(found: Iterator[Mend]) -> Iterator[Mend]:
    """Mends that leave different briefs."""
    seen: list[Brief] = []
    for mend in found:
        if mend.brief not in seen:
            seen.append(mend.brief)
            yield mend


def solved(case: Case, mend: Mend) -> Concession | None:
    """The mend with a week of its brief, or None where none was found."""
    week = first_week(case.instance(mend.brief), case.looked(mend.brief).week)
    if week is None or week.broken:
        return None
    return Concession(mend.kind, mend.words, mend.brief, mend.minutes, mend.sets, week)


def ranked(found: list[Concession]) -> tuple[Concession, ...]:
    """The concessions with their costs, least weight first."""
    best = max((c.audit.stimulus for c in found), default=0.0)
    costed = [replace(c, cost=best - c.audit.stimulus) for c in found]
    return tuple(sorted(costed, key=lambda c: (round(c.weight, 4), c.words)))
