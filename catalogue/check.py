"""What must hold between entries: every contradiction in the catalogue, all at once."""

from __future__ import annotations

from collections.abc import Iterable, Iterator

from setwright.catalogue.entries import Catalogue, Exercise, Number
from setwright.catalogue.faults import Fault
from setwright.catalogue.near import did_you_mean

REP_RANGES = frozenset(
    {(5, 5), (5, 8), (6, 8), (6, 10), (8, 10), (8, 12), (10, 15), (12, 15), (12, 20), (15, 20), (15, 30)}
)
LOADS = ("barbell", "dumbbell", "stack", "plates", "bodyweight", "band", "kettlebell")
JOINTS = ("shoulder", "elbow", "wrist", "lower-back", "hip", "knee", "ankle", "neck")
TECHNIQUES = ("drop", "rest-pause")
FOCUSES = ("upper", "lower", "push", "pull", "arms")
LONGEST_LINE = 76
"""The most characters of an exercise's setting or cue: what fits on a line of the card."""
ABOVE_ZERO = (
    "rest-tau-high",
    "rest-tau-low",
    "session-scale",
    "index-reference",
    "rest-loss-high",
    "rest-loss-low",
    "rir-slope",
    "session-knee",
    "indirect-part",
    "drop-credit",
)
"""The evidence numbers that the curves, or the sensitivity of a comparison, divide by."""
BETWEEN_ZERO_AND_ONE = ("week-exponent",)
"""The evidence numbers that a concave curve needs strictly between 0 and 1."""


def check_catalogue(catalogue: Catalogue) -> Iterator[Fault]:
    """Every fault between entries: unknown words, hidden ids, untrained muscles, implausible values."""
    for exercise in catalogue.exercises.values():
        yield from check_exercise(exercise, catalogue)
    yield from check_aliases("exercise", [(e.id, e.name, e.aliases) for e in catalogue.exercises.values()])
    muscles = [(m.id, m.name, m.aliases) for m in catalogue.muscles.values()]
    groups = [(g.id, g.name, g.aliases) for g in catalogue.groups.values()]
    yield from check_aliases("muscle or group", muscles + groups)
    yield from check_aliases("equipment", [(i.id, i.name, i.aliases) for i in catalogue.items.values()])
    yield from check_aliases("kit", [(k.id, k.name, k.aliases) for k in catalogue.kits.values()])
    yield from check_words(catalogue)
    yield from check_kits(catalogue)
    yield from check_numbers(catalogue)
    yield from check_defaults(catalogue)


def check_exercise(e: Exercise, catalogue: Catalogue) -> Iterator[Fault]:
    where = f"exercise {e.id}"
    yield from unknown(where, "equipment", e.needs, catalogue.items)
    yield from unknown(where, "muscle", [m for m, _ in e.contributions], catalogue.muscles)
    yield from unknown(where, "technique", e.techniques, TECHNIQUES)
    yield from unknown(where, "joint", e.joints, JOINTS)
    yield from unknown(where, "load kind", [e.load], LOADS)
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


def unknown(where: str, kind: str, words: Iterable[str], known: Iterable[str]) -> Iterator[Fault]:
    listed = tuple(known)
    for word in words:
        if word not in listed:
            yield Fault(where, f"{kind} {word!r} is not known", did_you_mean(word, listed))


def check_aliases(kind: str, entries: list[tuple[str, str, tuple[str, ...]]]) -> Iterator[Fault]:
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


def check_words(catalogue: Catalogue) -> Iterator[Fault]:
    for slot in catalogue.slots.values():
        yield from unknown(f"slot {slot.id}", "focus", slot.focus, FOCUSES)
    for group in catalogue.groups.values():
        named = (*group.priority, *group.otherwise, *group.normal_when_priority)
        yield from unknown(f"group {group.id}", "muscle", named, catalogue.muscles)
    for caution in catalogue.cautions.values():
        yield from unknown(f"caution {caution.id}", "joint", caution.closes_joints, JOINTS)
    for muscle in catalogue.muscles:
        if not any(muscle in e.direct for e in catalogue.exercises.values()):
            yield Fault(f"muscle {muscle}", "nothing trains it directly", "add an exercise or drop the muscle")


def check_kits(catalogue: Catalogue) -> Iterator[Fault]:
    """Kits with unknown items, and muscles that a kit trains or not against what it says."""
    for kit in catalogue.kits.values():
        where = f"kit {kit.id}"
        yield from unknown(where, "equipment", sorted(kit.items), catalogue.items)
        yield from unknown(where, "muscle", kit.cannot, catalogue.muscles)
        trained = {
            m for e in catalogue.exercises.values() if kit.items.issuperset(e.needs) and e.rank < 5 for m in e.direct
        }
        for muscle in catalogue.muscles:
            if muscle not in trained and muscle not in kit.cannot:
                yield Fault(
                    where,
                    f"nothing in it trains {muscle} directly",
                    "add an exercise, or list it in `cannot`",
                )
            if muscle in trained and muscle in kit.cannot:
                yield Fault(where, f"`cannot` lists {muscle}, yet an exercise trains it", "take it out of `cannot`")


def check_numbers(catalogue: Catalogue) -> Iterator[Fault]:
    """Evidence outside its interval or unfit to be divided by, weights and costs below 0."""
    for number in catalogue.evidence.values():
        yield from _check_number(number)
    for rule in catalogue.rules.values():
        where = f"rule {rule.id}"
        for name, value in (("cost", rule.cost), ("limit", rule.limit)):
            if value is not None and value < 0:
                yield Fault(where, f"{name} {value:g}", "give 0 or more")
    for muscle in catalogue.muscles.values():
        if muscle.default_weight <= 0:
            yield Fault(f"muscle {muscle.id}", f"default_weight {muscle.default_weight:g}", "give a number above 0")


def _check_number(number: Number) -> Iterator[Fault]:
    where = f"evidence {number.id}"
    low = number.value if number.low is None else number.low
    high = number.value if number.high is None else number.high
    if not low <= number.value <= high:
        yield Fault(where, f"{number.value:g} lies outside [{low:g}, {high:g}]", "mend the interval")
    if number.id in ABOVE_ZERO and number.value <= 0:
        yield Fault(where, f"{number.value:g} is divided by", "give a number above 0")
    if number.id in BETWEEN_ZERO_AND_ONE:
        for value in dict.fromkeys((number.value, low, high)):
            if not 0 < value < 1:
                remedy = "give a number above 0 and below 1"
                yield Fault(where, f"{value:g} does not lie between 0 and 1", remedy)


def check_defaults(catalogue: Catalogue) -> Iterator[Fault]:
    """Defaults that name an unknown muscle, weigh nothing where they are divided by, or are upside down."""
    defaults, scale = catalogue.defaults, catalogue.defaults.cost_scale
    yield from unknown("defaults: bands-growth-minor", "muscle", defaults.minor_growth.muscles, catalogue.muscles)
    for emphasis, weight in defaults.weights.items():
        if weight <= 0 and emphasis != "none":
            yield Fault("defaults: weights", f"{emphasis} {weight:g} is divided by", "give a number above 0")
    if scale.reference <= 0:
        yield Fault("defaults: cost-scale", f"reference {scale.reference:g}", "give a number above 0")
    if not 0 < scale.least <= scale.most:
        said = f"least {scale.least:g} and most {scale.most:g}"
        yield Fault("defaults: cost-scale", said, "give least above 0 and most not below it")
    if not 0 < defaults.keep_share <= 1:
        said = f"keep-share {defaults.keep_share:g}"
        yield Fault("defaults: fewest-minutes", said, "give a share above 0, at most 1")
