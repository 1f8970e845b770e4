"""What must hold of cautions, age groups and positions: every word known, every age in one group at most."""

from __future__ import annotations

from collections.abc import Iterator
from itertools import combinations

from setwright.catalogue.cautions import JOINTS, ClientLimits
from setwright.catalogue.check_values import unknown_words
from setwright.catalogue.entries import Catalogue
from setwright.catalogue.faults import Fault


def check_cautions(catalogue: Catalogue) -> Iterator[Fault]:
    """Joints, positions, slots and exercises that are not known, and age groups that overlap or are upside down."""
    for caution in catalogue.cautions.values():
        yield from _check_limits(f"caution {caution.id}", caution.limits, catalogue)
    for group in catalogue.ages.values():
        yield from _check_limits(f"age {group.id}", group.limits, catalogue)
        if group.youngest > group.oldest:
            yield Fault(f"age {group.id}", f"youngest {group.youngest} is above oldest {group.oldest}", "swap the two")
    for one, other in combinations(catalogue.ages.values(), 2):
        if one.youngest <= other.oldest and other.youngest <= one.oldest:
            yield Fault(f"age {other.id}", f"overlaps {one.id}", "let each age be in one group")
    for position in catalogue.positions.values():
        where = f"position {position.id}"
        yield from unknown_words(where, "exercise", position.exercises, catalogue.exercises)
        yield from unknown_words(where, "exercise", position.excepted, catalogue.exercises)
        yield from unknown_words(where, "slot", position.slots, catalogue.slots)


def _check_limits(where: str, limits: ClientLimits, catalogue: Catalogue) -> Iterator[Fault]:
    yield from unknown_words(where, "joint", sorted(limits.closes_joints), JOINTS)
    yield from unknown_words(where, "position", sorted(limits.closes_positions), catalogue.positions)
    yield from unknown_words(where, "position", sorted(limits.warns_positions), catalogue.positions)
