"""Concessions of kit: the smallest additions that open what is asked for."""

from __future__ import annotations

from collections.abc import Iterator

from setwright.catalogue.entries import Catalogue, Exercise
from setwright.solver.brief.schema import Brief
from setwright.solver.uses.relax.more_time import listed
from setwright.solver.uses.relax.relaxation import Case, Mend

MOST_KITS = 3
"""Additions offered for one wish."""


def kit_mends(case: Case, lifts: list[Exercise], all_of_them: bool) -> Iterator[Mend]:
    """The smallest additions to the kit that open the lifts (all of them, or any)."""
    found = 0
    for items in missing(case, lifts, all_of_them):
        brief = with_items(case, items)
        if found < MOST_KITS and brief is not None and case.possible(brief):
            found += 1
            names = [with_article(case.catalogue, item) for item in items]
            fixed = any(case.catalogue.items[item].place == "fixed" for item in items)
            yield Mend("station" if fixed else "kit", f"add {listed(names)} to the kit", brief)


def missing(case: Case, lifts: list[Exercise], all_of_them: bool) -> list[tuple[str, ...]]:
    """Sets of items that would open the lifts on every day, none of which holds another; smallest first."""
    lacks = [frozenset(e.needs) - frozenset.intersection(*(d.items for d in case.resolved.days)) for e in lifts]
    if all_of_them:
        lacks = [frozenset().union(*lacks)]
    able = {lack for lack in lacks if lack}
    least = [lack for lack in able if not any(other < lack for other in able)]
    return sorted(
        (tuple(sorted(lack)) for lack in least), key=lambda items: (len(items), [burden(case, i) for i in items])
    )


def burden(case: Case, item: str) -> tuple[int, str]:
    """How much it is to add an item: carried, a place to lift at, a station."""
    return ("portable", "place", "fixed").index(case.catalogue.items[item].place), item


def with_items(case: Case, items: tuple[str, ...]) -> Brief | None:
    """The brief with some items at hand on every day."""

    def wider(said: str | tuple[str, ...] | None) -> tuple[str, ...] | None:
        return None if said is None else (*((said,) if isinstance(said, str) else said), *items)

    brief = case.brief
    days = tuple(d.model_copy(update={"equipment": wider(d.equipment)}) for d in brief.days)
    without = tuple(item for item in brief.without if item not in items)
    return case.changed(days=days, equipment=wider(brief.equipment), without=without)


def with_article(catalogue: Catalogue, item: str) -> str:
    name = catalogue.items[item].name.lower()
    return name if name.endswith("s") else f"an {name}" if name[0] in "aeio" else f"a {name}"
