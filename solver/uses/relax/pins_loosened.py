"""Relaxations of pins: one of a pin's conditions less, another partner, the kit for it, or no pin."""

from __future__ import annotations

from collections.abc import Iterator

from setwright.catalogue.entries import Exercise
from setwright.solver.brief.schema import Pin
from setwright.solver.evaluation.pairing.pairs import fits
from setwright.solver.rules.pinned import wish_of
from setwright.solver.uses.relax.brief_changes import (
    BriefChange,
    ChangePartner,
    DropPartner,
    DropPins,
    LeaveDayOpen,
    LeaveSetsOpen,
)
from setwright.solver.uses.relax.clashing_brief import ClashingBrief
from setwright.solver.uses.relax.more_kit import kit_relaxations
from setwright.solver.uses.relax.relaxation import Relaxation, first_able, least

MOST_PARTNERS = 2
"""Other partners offered for one pin."""


def pin_relaxations(clashing: ClashingBrief) -> Iterator[Relaxation]:
    """Every relaxation of the pins that clash, one at a time; of several together where no one is enough."""
    wishes = clashing.wishes("pinned")
    alone = [
        relaxation
        for place, pin in enumerate(clashing.brief.pins)
        if wish_of(pin) in wishes
        for relaxation in _one_pin(clashing, place, pin)
    ]
    yield from alone
    if not alone and clashing.about("pinned") and len(clashing.brief.pins) > 1:
        yield from _many_pins(clashing)


def without_pin(clashing: ClashingBrief, place: int) -> tuple[Pin, ...]:
    """The brief's pins without one of them."""
    return (*clashing.brief.pins[:place], *clashing.brief.pins[place + 1 :])


def _one_pin(clashing: ClashingBrief, place: int, pin: Pin) -> Iterator[Relaxation]:
    loose = first_able(_loosened(clashing, place, pin), clashing.possible)
    if loose is not None:
        yield loose
    if pin.pair_with is not None:
        yield from _other_partners(clashing, place, pin)
    lifts = [clashing.catalogue.exercises[e] for e in (pin.exercise, pin.pair_with) if e]
    yield from kit_relaxations(clashing, lifts, all_of_them=True)
    brief = clashing.changed(pins=without_pin(clashing, place))
    if brief is not None and clashing.possible(brief):
        yield Relaxation("pin", (DropPins((pin.exercise,), pin.day),), brief)


def _loosened(clashing: ClashingBrief, place: int, pin: Pin) -> Iterator[Relaxation]:
    """The pin without its partner, its sets or its day."""
    changes: list[tuple[str, BriefChange]] = []
    if pin.pair_with:
        changes.append(("pair_with", DropPartner(pin.exercise, pin.pair_with)))
    if pin.sets:
        changes.append(("sets", LeaveSetsOpen((pin.exercise,), pin.sets)))
    if pin.day:
        changes.append(("day", LeaveDayOpen(pin.exercise, pin.day)))
    for name, change in changes:
        brief = clashing.changed(pins=_with_pin(clashing, place, pin.model_copy(update={name: None})))
        if brief is not None:
            yield Relaxation("pin", (change,), brief)


def _other_partners(clashing: ClashingBrief, place: int, pin: Pin) -> Iterator[Relaxation]:
    """The pair with its second lift exchanged for one of the same movement."""
    exercises = clashing.catalogue.exercises
    one, two = exercises[pin.exercise], exercises[pin.pair_with or ""]
    slots: list[str] = []
    for other in _like(clashing, two):
        if len(slots) < MOST_PARTNERS and other.slot.id not in slots and fits(clashing.resolved, one, other):
            brief = clashing.changed(pins=_with_pin(clashing, place, pin.model_copy(update={"pair_with": other.id})))
            if brief is not None and clashing.possible(brief):
                slots.append(other.slot.id)
                yield Relaxation("partner", (ChangePartner(one.id, other.id, two.id),), brief)


def _like(clashing: ClashingBrief, exercise: Exercise) -> list[Exercise]:
    """Open exercises of the same movement, the same slot and the best ranks first."""
    found = {e.id: e for day in clashing.resolved.open_on for e in day if e.movement == exercise.movement}
    found.pop(exercise.id, None)
    return sorted(found.values(), key=lambda e: (e.slot.id != exercise.slot.id, e.rank, e.id))


def _many_pins(clashing: ClashingBrief) -> Iterator[Relaxation]:
    """The sets of all the pins left open; the fewest pins dropped, the last ones first."""
    pins = clashing.brief.pins
    brief = clashing.changed(pins=tuple(p.model_copy(update={"sets": None}) for p in pins))
    if brief is not None and any(p.sets for p in pins) and clashing.possible(brief):
        yield Relaxation("pin", (LeaveSetsOpen(tuple(p.exercise for p in pins)),), brief)
    found = least(lambda count: clashing.changed(pins=pins[:-count]), len(pins), clashing.possible)
    brief = clashing.changed(pins=pins[:-found]) if found else None
    if found and brief is not None:
        yield Relaxation("pin", (DropPins(tuple(p.exercise for p in pins[-found:])),), brief)


def _with_pin(clashing: ClashingBrief, place: int, pin: Pin) -> tuple[Pin, ...]:
    return (*clashing.brief.pins[:place], pin, *clashing.brief.pins[place + 1 :])
