"""Relaxations of sets and days: bands widened and days of direct work given up, by as little as frees the brief."""

from __future__ import annotations

import math
from collections.abc import Iterator

from setwright.solver.brief.defaults import LIMITS
from setwright.solver.brief.groups import expand_muscles
from setwright.solver.brief.schema import Brief, MuscleAsk
from setwright.solver.uses.relax.brief_changes import FewerDirectDays, LowerSets, RaiseSets
from setwright.solver.uses.relax.clashing_brief import ClashingBrief
from setwright.solver.uses.relax.relaxation import Relaxation, least

GRAIN = 0.5
"""A band gives way by half sets."""
MANY_GRAIN = 1.0
"""Many bands give way by whole sets together."""
MOST_STEPS = 40
"""Half sets by which an upper end is raised at most (convention)."""


def set_relaxations(clashing: ClashingBrief) -> Iterator[Relaxation]:
    """Every relaxation of weekly sets or of days of direct work that frees the brief."""
    if clashing.about("exact-band"):
        yield from _lower_ends(clashing)
        yield from _upper_ends(clashing)
    yield from _direct_days(clashing)


def every_lower_end(clashing: ClashingBrief) -> Iterator[Relaxation]:
    """The smallest equal reduction of all the lower ends that frees the brief."""
    muscles = _with_end(clashing, "at_least")
    if muscles:
        yield from _lowered(clashing, muscles)


def _lower_ends(clashing: ClashingBrief) -> Iterator[Relaxation]:
    """One lower end reduced; where no one alone is enough, all of them by the same amount."""
    muscles = [wish.subject for wish in clashing.wishes("exact-band")]
    alone = [relaxation for muscle in muscles for relaxation in _lowered(clashing, (muscle,))]
    yield from alone
    if not alone and len(_with_end(clashing, "at_least")) > 1:
        yield from every_lower_end(clashing)


def _lowered(clashing: ClashingBrief, muscles: tuple[str, ...]) -> Iterator[Relaxation]:
    """The smallest equal reduction of some lower ends."""
    asks = expand_muscles(clashing.brief, clashing.catalogue)
    ends = {m: asks[m].at_least or 0.0 for m in muscles}
    grain = GRAIN if len(muscles) == 1 else MANY_GRAIN

    def made(steps: int) -> Brief | None:
        changes = {m: {"at_least": max(0.0, end - grain * steps) or None} for m, end in ends.items()}
        return _with_asks(clashing, changes)

    found = least(made, math.ceil(max(ends.values()) / grain), clashing.possible)
    brief = made(found) if found else None
    if not found or brief is None:
        return
    by = min(grain * found, max(ends.values()))
    was = max(ends.values()) if len(set(ends.values())) == 1 else None
    given = sum(min(by, end) for end in ends.values())
    yield Relaxation("sets", (LowerSets(muscles, by, was),), brief, sets=given)


def _upper_ends(clashing: ClashingBrief) -> Iterator[Relaxation]:
    """One upper end raised."""
    asks = expand_muscles(clashing.brief, clashing.catalogue)
    for muscle in _with_end(clashing, "at_most"):
        end = asks[muscle].at_most or 0.0

        def made(steps: int, muscle: str = muscle, end: float = end) -> Brief | None:
            return _with_asks(clashing, {muscle: {"at_most": end + GRAIN * steps}})

        room = round((LIMITS["at_most"][1] - end) / GRAIN)
        found = least(made, min(room, MOST_STEPS), clashing.possible)
        brief = made(found) if found else None
        if found and brief is not None:
            more = GRAIN * found
            yield Relaxation("sets", (RaiseSets(muscle, end + more, end),), brief, sets=more)


def _direct_days(clashing: ClashingBrief) -> Iterator[Relaxation]:
    """One muscle's days of direct work reduced; where no one alone is enough, all of them."""
    asks = expand_muscles(clashing.brief, clashing.catalogue)
    everyone = tuple(m for m, ask in asks.items() if ask.days_at_least)
    muscles = [wish.subject for wish in clashing.wishes("days-at-least")]
    alone = [relaxation for muscle in muscles for relaxation in _days_lowered(clashing, asks, (muscle,))]
    yield from alone
    if muscles and not alone and len(everyone) > 1:
        yield from _days_lowered(clashing, asks, everyone)


def _days_lowered(
    clashing: ClashingBrief, asks: dict[str, MuscleAsk], muscles: tuple[str, ...]
) -> Iterator[Relaxation]:
    """Some muscles' days of direct work reduced by as few as possible."""
    ends = {m: asks[m].days_at_least or 0 for m in muscles}

    def made(steps: int) -> Brief | None:
        return _with_asks(clashing, {m: {"days_at_least": max(0, end - steps) or None} for m, end in ends.items()})

    most = max(ends.values())
    found = least(made, most, clashing.possible)
    brief = made(found) if found else None
    if found and brief is not None:
        yield Relaxation("days", (FewerDirectDays(muscles, max(0, most - found), most),), brief)


def _with_end(clashing: ClashingBrief, end: str) -> tuple[str, ...]:
    """The muscles with such an end of their own."""
    asks = expand_muscles(clashing.brief, clashing.catalogue)
    return tuple(muscle for muscle, ask in asks.items() if getattr(ask, end) is not None)


def _with_asks(clashing: ClashingBrief, changes: dict[str, dict[str, float | int | None]]) -> Brief | None:
    """The brief with some muscles' asks changed, each under its own name."""
    asks = expand_muscles(clashing.brief, clashing.catalogue)
    own = {muscle: asks[muscle].model_copy(update=change) for muscle, change in changes.items()}
    return clashing.changed(muscles={**clashing.brief.muscles, **own})
