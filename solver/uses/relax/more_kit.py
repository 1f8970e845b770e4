"""Relaxations of kit: the smallest additions that open what is asked for."""

from __future__ import annotations

from collections.abc import Iterator

from setwright.catalogue.entries import Exercise
from setwright.solver.brief.schema import Brief
from setwright.solver.uses.relax.brief_changes import AddItems
from setwright.solver.uses.relax.clashing_brief import ClashingBrief
from setwright.solver.uses.relax.relaxation import Relaxation

MOST_KITS = 3
"""Additions offered for one wish."""


def kit_relaxations(clashing: ClashingBrief, lifts: list[Exercise], all_of_them: bool) -> Iterator[Relaxation]:
    """The smallest additions to the kit that open the lifts (all of them, or any) and free the brief."""
    found = 0
    for items in _missing(clashing, lifts, all_of_them):
        brief = _with_items(clashing, items)
        if found < MOST_KITS and brief is not None and clashing.possible(brief):
            found += 1
            fixed = any(clashing.catalogue.items[item].place == "fixed" for item in items)
            yield Relaxation("station" if fixed else "kit", (AddItems(items),), brief)


def _missing(clashing: ClashingBrief, lifts: list[Exercise], all_of_them: bool) -> list[tuple[str, ...]]:
    """Sets of items that would open the lifts on every day, none of which holds another; smallest first."""
    lacks = [frozenset(e.needs) - frozenset.intersection(*(d.items for d in clashing.resolved.days)) for e in lifts]
    if all_of_them:
        lacks = [frozenset().union(*lacks)]
    able = {lack for lack in lacks if lack}
    least = [lack for lack in able if not any(other < lack for other in able)]
    return sorted(
        (tuple(sorted(lack)) for lack in least), key=lambda items: (len(items), [_burden(clashing, i) for i in items])
    )


def _burden(clashing: ClashingBrief, item: str) -> tuple[int, str]:
    """How much it is to add an item: something carried, a place to lift at, a station."""
    return ("portable", "place", "fixed").index(clashing.catalogue.items[item].place), item


def _with_items(clashing: ClashingBrief, items: tuple[str, ...]) -> Brief | None:
    """The brief with some items at hand on every day."""

    def wider(said: str | tuple[str, ...] | None) -> tuple[str, ...] | None:
        return None if said is None else (*((said,) if isinstance(said, str) else said), *items)

    brief = clashing.brief
    days = tuple(d.model_copy(update={"equipment": wider(d.equipment)}) for d in brief.days)
    without = tuple(item for item in brief.without if item not in items)
    return clashing.changed(days=days, equipment=wider(brief.equipment), without=without)
