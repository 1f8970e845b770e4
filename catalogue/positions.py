"""Which positions an exercise is done in, as far as a caution may ask about them."""

from __future__ import annotations

from setwright.catalogue.cautions import Position
from setwright.catalogue.entries import Catalogue, Exercise


def is_in(exercise: Exercise, position: Position) -> bool:
    """Whether an exercise is done in a position: listed for it, of one of its slots or kinds, or by its words."""
    if exercise.id in position.excepted:
        return False
    said = f"{exercise.name}; {exercise.setting}".lower()
    return (
        exercise.id in position.exercises
        or exercise.slot.id in position.slots
        or (position.holds and exercise.timed)
        or (position.pins and exercise.can_pin)
        or any(word in said for word in position.words)
    )


def positions_of(exercise: Exercise, catalogue: Catalogue) -> frozenset[str]:
    """The ids of the positions that an exercise is done in."""
    return frozenset(position.id for position in catalogue.positions.values() if is_in(exercise, position))
