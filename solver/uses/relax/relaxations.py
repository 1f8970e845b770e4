"""The smallest ways to relax an impossible brief so that it has a week, each solved, ranked by what it costs."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass, replace

from setwright.solver.auditing import Audit
from setwright.solver.brief.schema import Brief
from setwright.solver.planning import Clash, first_week
from setwright.solver.uses.relax.brief_changes import DropPins
from setwright.solver.uses.relax.clashing_brief import ClashingBrief
from setwright.solver.uses.relax.fewer_sets import every_lower_end, set_relaxations
from setwright.solver.uses.relax.more_time import longer_sessions, more_time, time_relaxations
from setwright.solver.uses.relax.pins_loosened import pin_relaxations, without_pin
from setwright.solver.uses.relax.relaxation import Relaxation
from setwright.solver.uses.relax.shortfalls import Shortfall, shortfalls_of
from setwright.solver.uses.relax.wishes_dropped import wish_relaxations

MINUTE = 0.2
"""Index points that a minute more a week weighs in the ranking (convention)."""
KIND = {
    "kit": 3.0,
    "station": 6.0,
    "pin": 1.0,
    "movement": 1.0,
    "muscle-day": 1.0,
    "rests": 1.0,
    "rule": 2.0,
    "goal": 2.0,
    "weekdays": 1.0,
}
"""Index points that a kind of relaxation weighs besides in the ranking (convention)."""
FEW = 3
"""With fewer relaxations than these, more time and fewer sets are tried together."""
MOST_PINS = 2
"""Pins dropped in turn, each together with more time."""
MOST = 6
"""Relaxations kept."""


@dataclass(frozen=True)
class SolvedRelaxation:
    """A relaxation with a week of the brief it leaves, audited, and what it costs."""

    relaxation: Relaxation
    audit: Audit
    cost: float = 0.0
    """Index points of stimulus below the best of the relaxations' weeks."""

    @property
    def weight(self) -> float:
        """What it is ranked by, in index points: the cost, the minutes and the kind."""
        return self.cost + MINUTE * self.relaxation.minutes + KIND.get(self.relaxation.kind, 0.0)


@dataclass(frozen=True)
class Relaxations:
    """What plain arithmetic says of a clash, and the ways to relax its brief, least weight first."""

    shortfalls: tuple[Shortfall, ...]
    ranked: tuple[SolvedRelaxation, ...]


def relaxations_of(clash: Clash) -> Relaxations:
    """The ranked relaxations of a clash, each verified by a week that the audit passes.

    Amounts are the smallest whose brief has a week, by bisection on solves. Costs compare weeks by little work each,
    so they are good to about a point. The same clash gives the same relaxations.
    """
    clashing = ClashingBrief(clash.resolved, clash.conflicts)
    found = list(_distinct(_single(clashing)))
    if len(found) < FEW:
        found += _combined(clashing)
    weeks = [_solved(clashing, relaxation) for relaxation in found]
    return Relaxations(shortfalls_of(clash.resolved), _ranked([r for r in weeks if r is not None])[:MOST])


def _single(clashing: ClashingBrief) -> Iterator[Relaxation]:
    """Every relaxation of one thing."""
    yield from pin_relaxations(clashing)
    yield from wish_relaxations(clashing)
    yield from set_relaxations(clashing)
    yield from time_relaxations(clashing)


def _combined(clashing: ClashingBrief) -> Iterator[Relaxation]:
    """Relaxations of two things at once, where one alone gives few."""
    if clashing.about("exact-band"):
        yield from _time_and_sets(clashing)
    if clashing.about("pinned") and clashing.about("day-minutes"):
        yield from _pin_and_time(clashing)


def _time_and_sets(clashing: ClashingBrief) -> Iterator[Relaxation]:
    """More time and then the least equal reduction of every lower end."""
    for time in more_time(clashing):
        if clashing.possible(time.brief):
            continue
        for sets in every_lower_end(clashing.after(time.brief)):
            yield replace(sets, changes=(*time.changes, *sets.changes), minutes=time.minutes)


def _pin_and_time(clashing: ClashingBrief) -> Iterator[Relaxation]:
    """One pin dropped and then the fewest minutes more."""
    for place, pin in enumerate(clashing.brief.pins[:MOST_PINS]):
        brief = clashing.changed(pins=without_pin(clashing, place))
        if brief is None:
            continue
        for time in longer_sessions(clashing.after(brief)):
            yield replace(time, kind="pin", changes=(DropPins((pin.exercise,)), *time.changes))


def _distinct(found: Iterator[Relaxation]) -> Iterator[Relaxation]:
    """Relaxations that leave different briefs."""
    seen: list[Brief] = []
    for relaxation in found:
        if relaxation.brief not in seen:
            seen.append(relaxation.brief)
            yield relaxation


def _solved(clashing: ClashingBrief, relaxation: Relaxation) -> SolvedRelaxation | None:
    """The relaxation with a week of its brief, or None where none was found."""
    brief = relaxation.brief
    week = first_week(clashing.instance(brief), clashing.outcome(brief).week)
    return None if week is None or week.broken else SolvedRelaxation(relaxation, week)


def _ranked(found: list[SolvedRelaxation]) -> tuple[SolvedRelaxation, ...]:
    """The relaxations with their costs, least weight first, of equal weight in the order found."""
    best = max((r.audit.stimulus for r in found), default=0.0)
    costed = [replace(r, cost=best - r.audit.stimulus) for r in found]
    return tuple(sorted(costed, key=lambda r: round(r.weight, 4)))
