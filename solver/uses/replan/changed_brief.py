"""The brief after what happened: missed days, other minutes and places, what is closed on a day, new pins."""

from __future__ import annotations

from typing import Any

from setwright.catalogue.entries import Catalogue
from setwright.solver.brief.schema import Brief, DayAsk, Pin
from setwright.solver.uses.replan.happened import DayChange, Happened


def brief_after(brief: Brief, happened: Happened, catalogue: Catalogue) -> Brief:
    """The brief as it is now; pins that only a missed session could meet are dropped (see `pins_dropped`)."""
    days = tuple(_day_after(day, place, happened, catalogue) for place, day in enumerate(brief.days))
    dropped = pins_dropped(brief, happened)
    kept = tuple(pin for pin in brief.pins if pin not in dropped)
    pins = (*kept, *(pin for pin in happened.pins if pin not in kept))
    return brief.model_copy(update={"days": days, "pins": pins})


def pins_dropped(brief: Brief, happened: Happened) -> tuple[Pin, ...]:
    """The pins that name a missed day."""
    missed = {brief.days[day].weekday for day in happened.missed} - {None}
    return tuple(pin for pin in brief.pins if pin.day in missed)


def _day_after(day: DayAsk, place: int, happened: Happened, catalogue: Catalogue) -> DayAsk:
    if place in happened.missed:
        return day.model_copy(update={"missed": True, "trained": None})
    change = happened.changes.get(place)
    return day if change is None else day.model_copy(update=_updates(day, change, catalogue))


def _updates(day: DayAsk, change: DayChange, catalogue: Catalogue) -> dict[str, Any]:
    """The day's fields that a change sets, lists added to what the day has."""
    found: dict[str, Any] = {}
    if change.minutes is not None:
        found["minutes"] = change.minutes
    if change.kit is not None:
        found["equipment"] = change.kit
    for name in ("without", "avoid", "rested"):
        more = getattr(change, name)
        if more:
            found[name] = tuple(dict.fromkeys((*(getattr(day, name) or ()), *more)))
    if change.rested and day.trained:
        rested = frozenset[str]().union(*map(catalogue.muscles_of, found["rested"]))
        found["trained"] = tuple(name for name in day.trained if not catalogue.muscles_of(name) <= rested) or None
    return found
