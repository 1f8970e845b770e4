"""What must hold between entries: every contradiction in the catalogue, all at once."""

from __future__ import annotations

from collections.abc import Iterator

from setwright.catalogue.cautions import JOINTS
from setwright.catalogue.check_cautions import check_cautions
from setwright.catalogue.check_values import check_defaults, check_numbers, unknown_words
from setwright.catalogue.entries import Catalogue, Exercise
from setwright.catalogue.faults import Fault

REP_RANGES = frozenset(
    {(5, 5), (5, 8), (6, 8), (6, 10), (8, 10), (8, 12), (10, 15), (12, 15), (12, 20), (15, 20), (15, 30)}
)
LOADS = ("barbell", "dumbbell", "stack", "plates", "bodyweight", "band", "kettlebell")
BODY_WEIGHT = {"added": "plates", "helped": "stack"}
"""What a load does to the body's own weight -> how such a lift is loaded."""
TECHNIQUES = ("drop", "rest-pause")
FOCUSES = ("upper", "lower", "push", "pull", "arms")
LONGEST_LINE = 76
"""The most characters of an exercise's setting or cue: what fits on a line of the card."""


def check_catalogue(catalogue: Catalogue) -> Iterator[Fault]:
    """Every fault between entries: unknown words, hidden ids, untrained muscles, implausible values."""
    for exercise in catalogue.exercises.values():
        yield from _check_exercise(exercise, catalogue)
    yield from _check_aliases("exercise", [(e.id, e.name, e.aliases) for e in catalogue.exercises.values()])
    muscles = [(m.id, m.name, m.aliases) for m in catalogue.muscles.values()]
    groups = [(g.id, g.name, g.aliases) for g in catalogue.groups.values()]
    yield from _check_aliases("muscle or group", muscles + groups)
    yield from _check_aliases("equipment", [(i.id, i.name, i.aliases) for i in catalogue.items.values()])
    yield from _check_aliases("kit", [(k.id, k.name, k.aliases) for k in catalogue.kits.values()])
    yield from _check_aliases("caution", [(c.id, c.name, c.aliases) for c in catalogue.cautions.values()])
    yield from _check_words(catalogue)
    yield from check_cautions(catalogue)
    yield from _check_kits(catalogue)
    yield from check_numbers(catalogue)
    yield from check_defaults(catalogue)


def _check_exercise(e: Exercise, catalogue: Catalogue) -> Iterator[Fault]:
    """Words of one exercise that are not known, and values that are out of range or disagree with each other."""
    where = f"exercise {e.id}"
    yield from unknown_words(where, "equipment", e.needs, catalogue.items)
    yield from unknown_words(where, "muscle", [m for m, _ in e.contributions], catalogue.muscles)
    yield from unknown_words(where, "technique", e.techniques, TECHNIQUES)
    yield from unknown_words(where, "joint", e.joints, JOINTS)
    yield from unknown_words(where, "load kind", [e.load], LOADS)
    if e.body_weight is not None and BODY_WEIGHT.get(e.body_weight) != e.load:
        said = f"body_weight {e.body_weight!r} with load {e.load!r}"
        yield Fault(where, said, "write added for a load of plates, helped for a stack")
    if not e.contributions:
        yield Fault(where, "trains no muscle", "give it a muscle")
    if e.reps not in REP_RANGES:
        yield Fault(where, f"reps {list(e.reps)} are not in the list", "take a range of the list")
    if not 1 <= e.rank <= 5:
        yield Fault(where, f"rank {e.rank}", "1 to 5")
    if not 0 <= e.axial <= 3:
        yield Fault(where, f"axial {e.axial}", "0 to 3")
    if not 0 <= e.change_over <= 180:
        yield Fault(where, f"change_over {e.change_over} s", "0 to 180")
    if e.techniques and (e.multi_joint or e.limb != "both" or not e.safe_to_fail):
        yield Fault(where, "allows a technique", "only single-joint lifts of both limbs that are safe to fail do")
    if e.can_pin and e.safe_to_fail:
        yield Fault(where, "can pin the lifter and is safe to fail", "it cannot be both")
    for text in (e.setting, e.cue):
        if len(text) > LONGEST_LINE:
            yield Fault(where, f"{text!r} is {len(text)} characters", f"at most {LONGEST_LINE}")


def _check_aliases(kind: str, entries: list[tuple[str, str, tuple[str, ...]]]) -> Iterator[Fault]:
    """Two entries that claim one word, where the reader could not know which is meant."""
    owner: dict[str, str] = {}
    for key, name, _ in entries:
        for word in {key, name.lower()}:
            if owner.setdefault(word, key) != key:
                yield Fault(f"{kind} {key}", f"shares the name {word!r} with {owner[word]}", "rename one")
    for key, _, aliases in entries:
        for alias in aliases:
            holder = owner.setdefault(alias.lower(), key)
            if holder != key:
                yield Fault(f"{kind} {key}", f"the alias {alias!r} hides {holder}", "drop the alias")


def _check_words(catalogue: Catalogue) -> Iterator[Fault]:
    """Words of slots and groups that are not known, and muscles that no exercise trains directly."""
    for slot in catalogue.slots.values():
        yield from unknown_words(f"slot {slot.id}", "focus", slot.focus, FOCUSES)
    for group in catalogue.groups.values():
        named = (*group.priority, *group.otherwise, *group.normal_when_priority)
        yield from unknown_words(f"group {group.id}", "muscle", named, catalogue.muscles)
    for muscle in catalogue.muscles:
        if not any(muscle in e.direct for e in catalogue.exercises.values()):
            yield Fault(f"muscle {muscle}", "nothing trains it directly", "add an exercise or drop the muscle")


def _check_kits(catalogue: Catalogue) -> Iterator[Fault]:
    """Kits with unknown items, and muscles that a kit trains or not against what it says."""
    for kit in catalogue.kits.values():
        where = f"kit {kit.id}"
        yield from unknown_words(where, "equipment", sorted(kit.items), catalogue.items)
        yield from unknown_words(where, "muscle", kit.cannot, catalogue.muscles)
        able = [e for e in catalogue.exercises.values() if kit.items.issuperset(e.needs) and e.rank < 5]
        trained = {m for e in able for m in e.direct}
        for muscle in catalogue.muscles:
            if muscle not in trained and muscle not in kit.cannot:
                yield Fault(
                    where,
                    f"nothing in it trains {muscle} directly",
                    "add an exercise, or list it in `cannot`",
                )
            if muscle in trained and muscle in kit.cannot:
                yield Fault(where, f"`cannot` lists {muscle}, yet an exercise trains it", "take it out of `cannot`")
        yield from unknown_words(where, "movement", kit.cannot_fill, {s.movement for s in catalogue.slots.values()})
        for movement in sorted({e.movement for e in able} & kit.cannot_fill.keys()):
            yield Fault(
                where, f"`cannot_fill` lists {movement}, yet an exercise fills it", "take it out of `cannot_fill`"
            )
