"""Concessions of choice: pins loosened, movements let go, tastes and rules let off."""

from __future__ import annotations

from collections.abc import Iterator

from setwright.catalogue.entries import Exercise
from setwright.solver.brief.schema import Pin
from setwright.solver.evaluation.finding import Wish
from setwright.solver.evaluation.pairs import fits
from setwright.solver.rulebook import sentence_of
from setwright.solver.rules.pinned import wish_of
from setwright.solver.uses.relax.more_kit import kit_mends
from setwright.solver.uses.relax.more_time import listed, name_of
from setwright.solver.uses.relax.relaxation import Case, Mend, first_able, least

LET_GO = ("movement-once", "slot-once", "exercise-count", "day-sets", "exercise-days", "day-share")
"""Hard rules of order and variety that a coach may let go; those of safety, kit and time never."""
MOST_PARTNERS = 2


def choice_mends(case: Case) -> Iterator[Mend]:
    """Every concession of choice that frees the brief."""
    alone = [
        mend
        for place, pin in enumerate(case.brief.pins)
        if wish_of(pin) in case.wishes("pinned")
        for mend in pin_mends(case, place, pin)
    ]
    yield from alone
    if not alone and case.about("pinned") and len(case.brief.pins) > 1:
        yield from many_pins(case)
    for movement in case.brief.must:
        if Wish("must", movement) in case.wishes("must"):
            yield from must_mends(case, movement)
    yield from rule_mends(case)


# ---- pins


def pin_mends(case: Case, place: int, pin: Pin) -> Iterator[Mend]:
    """A pin with one of its words less, another partner, the kit for it, or dropped."""
    name = case.catalogue.exercises[pin.exercise].name.lower()
    loose = first_able(loosened(case, place, pin, name), case.possible)
    if loose is not None:
        yield loose
    if pin.pair_with is not None:
        yield from other_partners(case, place, pin, name)
    lifts = [case.catalogue.exercises[e] for e in (pin.exercise, pin.pair_with) if e]
    yield from kit_mends(case, lifts, all_of_them=True)
    pins = (*case.brief.pins[:place], *case.brief.pins[place + 1 :])
    brief = case.changed(pins=pins)
    if brief is not None and case.possible(brief):
        yield Mend("pin", f"drop the pin on {pinned_thing(pin, name)}", brief)


def many_pins(case: Case) -> Iterator[Mend]:
    """Where no one pin is enough: the sets of all of them left open, or the fewest dropped, the last ones first."""
    pins = case.brief.pins
    brief = case.changed(pins=tuple(p.model_copy(update={"sets": None}) for p in pins))
    if brief is not None and any(p.sets for p in pins) and case.possible(brief):
        yield Mend("pin", "leave the sets of every pinned exercise open", brief)
    found = least(lambda count: case.changed(pins=pins[:-count]), len(pins), case.possible)
    brief = case.changed(pins=pins[:-found]) if found else None
    if found and brief is not None:
        names = [case.catalogue.exercises[p.exercise].name.lower() for p in pins[-found:]]
        yield Mend("pin", f"drop the pins on {listed(names)}", brief)


def pinned_thing(pin: Pin, name: str) -> str:
    return f"{name} on {name_of(pin.day)}" if pin.day else name


def loosened(case: Case, place: int, pin: Pin, name: str) -> Iterator[Mend]:
    """The pin without its partner, its sets or its day."""
    changes: list[tuple[dict[str, None], str]] = []
    if pin.pair_with:
        other = case.catalogue.exercises[pin.pair_with].name.lower()
        changes.append(({"pair_with": None}, f"keep {name} without pairing it with {other}"))
    if pin.sets:
        changes.append(({"sets": None}, f"leave the sets of {name} open instead of {pin.sets}"))
    if pin.day:
        changes.append(({"day": None}, f"let {name} stand on any day instead of {name_of(pin.day)}"))
    for change, words in changes:
        brief = case.changed(pins=with_pin(case, place, pin.model_copy(update=change)))
        if brief is not None:
            yield Mend("pin", words, brief)


def with_pin(case: Case, place: int, pin: Pin) -> tuple[Pin, ...]:
    return (*case.brief.pins[:place], pin, *case.brief.pins[place + 1 :])


def other_partners(case: Case, place: int, pin: Pin, name: str) -> Iterator[Mend]:
    """The pair with one of its two lifts exchanged for one of the same movement."""
    exercises = case.catalogue.exercises
    one, two = exercises[pin.exercise], exercises[pin.pair_with or ""]
    slots: list[str] = []
    for other in like_it(case, two):
        if len(slots) < MOST_PARTNERS and other.slot.id not in slots and fits(case.resolved, one, other):
            brief = case.changed(pins=with_pin(case, place, pin.model_copy(update={"pair_with": other.id})))
            if brief is not None and case.possible(brief):
                slots.append(other.slot.id)
                words = f"pair {name} with {other.name.lower()} instead of {two.name.lower()}"
                yield Mend("partner", words, brief)


def like_it(case: Case, exercise: Exercise) -> list[Exercise]:
    """Open exercises of the same movement, the same slot and the best ranks first."""
    resolved = case.resolved
    listed_ = {e.id: e for day in resolved.open_on for e in day if e.movement == exercise.movement and e != exercise}
    return sorted(listed_.values(), key=lambda e: (e.slot.id != exercise.slot.id, e.rank, e.id))


# ---- movements, tastes and rules


def must_mends(case: Case, movement: str) -> Iterator[Mend]:
    """The kit for a movement, what is avoided allowed again, or the movement let go."""
    lifts = [e for e in case.catalogue.exercises.values() if e.movement == movement]
    yield from kit_mends(case, lifts, all_of_them=False)
    yield from allowed_mends(case, lifts)
    brief = case.changed(must=tuple(m for m in case.brief.must if m != movement))
    if brief is not None and case.possible(brief):
        yield Mend("movement", f"do without a {movement.replace('-', ' ')}", brief)


def allowed_mends(case: Case, lifts: list[Exercise]) -> Iterator[Mend]:
    """Something avoided allowed again, where nothing else closes it."""
    for exercise in lifts:
        if exercise.id in case.brief.avoid:
            brief = case.changed(avoid=tuple(e for e in case.brief.avoid if e != exercise.id))
            if brief is not None and case.possible(brief):
                yield Mend("avoid", f"allow {exercise.name.lower()} again", brief)
                return


def rule_mends(case: Case) -> Iterator[Mend]:
    """A rule made hard let cost instead, or a rule of order let go."""
    for rule in dict.fromkeys(c.rule for c in case.conflicts if not c.wish):
        if case.resolved.forced(rule):
            rules = {r: v for r, v in case.brief.rules.items() if r != rule}
            words = f"let the rule {rule} cost instead of forbid"
        elif rule in LET_GO:
            rules = {**case.brief.rules, rule: "off"}
            said = sentence_of(rule, case.resolved)
            words = f"let the rule {rule} go ({said[0].lower()}{said[1:].rstrip('.')})"
        else:
            continue
        brief = case.changed(rules=rules)
        if brief is not None and case.possible(brief):
            yield Mend("rule", words, brief)
