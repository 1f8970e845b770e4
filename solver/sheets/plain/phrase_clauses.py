"""The clauses of a brief's fields, as a phrase says them."""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from typing import Final

from setwright.catalogue.entries import Catalogue
from setwright.solver.brief import defaults
from setwright.solver.brief.phrase.clauses.fixed_clauses import FIXED
from setwright.solver.brief.schema import Brief, MuscleAsk, OtherActivity, Pin
from setwright.solver.sheets.plain.phrase_names import family_names, item_name, lift_name, place_words

LED: Final = {"priority": "grow", "hold": "hold", "normal": "normal", "none": "no"}
"""An emphasis -> the word that leads its clause."""


def clauses_of(brief: Brief, catalogue: Catalogue) -> Iterator[tuple[str, str]]:
    """(field, or part.field, and its clause) of all that a phrase has words for, apart from the days."""
    yield from _place(brief, catalogue)
    if brief.muscles:
        yield "muscles", ", ".join(_muscle(name, ask, catalogue) for name, ask in brief.muscles.items())
    yield from _of_sets(brief)
    yield from _fixed(brief)
    yield from _choices(brief, catalogue)
    if brief.any_order and brief.rest_days_between != defaults.REST_DAYS_BETWEEN:
        yield "rest_days_between", f"{brief.rest_days_between} rest days between"
    if brief.keep_share is not None:
        yield "keep_share", f"keep {100 * brief.keep_share:g} %"
    for field, words in (("warm_up", "warm up"), ("spare", "spare")):
        if (seconds := getattr(brief.clock, field)) is not None:
            yield f"clock.{field}", f"{words} {seconds / 60:g} min"
    if brief.rules:
        yield "rules", ", ".join(f"rule {rule} {_rule(ask)}" for rule, ask in brief.rules.items())
    if brief.client.age is not None:
        yield "client.age", f"{brief.client.age} years old"
    if brief.client.cautions:
        yield "client.cautions", ", ".join(f"caution {caution.tag}" for caution in brief.client.cautions)


def _place(brief: Brief, catalogue: Catalogue) -> Iterator[tuple[str, str]]:
    """The place of the whole week, with the weights of its dumbbells where they are among it."""
    if brief.equipment is None:
        return
    said = place_words(brief.equipment, catalogue)
    heaviest, step = brief.owned.dumbbell_max, brief.owned.dumbbell_step
    if heaviest is not None:
        weight = f" to {heaviest:g} {brief.client.unit}" + (f" by {step:g}" if step is not None else "")
        first, mark, rest = said.partition(" and ")
        said = (
            f"{first}{weight}{mark}{rest}" if "dumbbell" in first else said.replace("dumbbells", f"dumbbells{weight}")
        )
    if brief.equipment != defaults.KIT or heaviest is not None:
        yield "equipment", f"with {said}"


def _muscle(name: str, ask: MuscleAsk, catalogue: Catalogue) -> str:
    """What is asked of a muscle or group."""
    entry = catalogue.muscle_or_group(name)
    limits = []
    if ask.at_least is not None and ask.at_least == ask.at_most:
        limits.append(f"{ask.at_least:g} sets")
    else:
        limits += [f"at least {ask.at_least:g} sets"] if ask.at_least is not None else []
        limits += [f"at most {ask.at_most:g} sets"] if ask.at_most is not None else []
    limits += [f"at least {ask.days_at_least} days"] if ask.days_at_least is not None else []
    lead = [] if ask.emphasis == "normal" and limits else [LED[ask.emphasis]]
    return " ".join([*lead, entry.name.lower(), " and ".join(limits)]).rstrip()


def _of_sets(brief: Brief) -> Iterator[tuple[str, str]]:
    """What is asked of every set: its rest, the repetitions in reserve, the seconds of a repetition."""
    for field, words in (("rest_at_least", "rest at least"), ("rest_at_most", "rest at most")):
        if (seconds := getattr(brief, field)) is not None:
            yield field, f"{words} {seconds} s"
    if brief.rir_at_least:
        yield "rir_at_least", f"at least {brief.rir_at_least} RIR"
    if brief.clock.seconds_per_rep is not None:
        yield "clock.seconds_per_rep", f"{brief.clock.seconds_per_rep:g} seconds a rep"


def muscle_days(brief: Brief, catalogue: Catalogue) -> Iterator[str]:
    """A clause for each muscle or group and what its days are: train chest on mon and thu, rest legs on fri."""
    for field, word in (("trained", "train"), ("rested", "rest")):
        days: dict[str, list[str]] = {}
        for day in brief.days:
            for name in getattr(day, field) or ():
                days.setdefault(name, []).append(day.weekday or "")
        for name, on in days.items():
            entry = catalogue.muscle_or_group(name)
            yield f"{word} {entry.name.lower()} on {' and '.join(on)}"


def _fixed(brief: Brief) -> Iterator[tuple[str, str]]:
    """The fields of fixed words: goal, experience, unit, pairs and the like."""
    unsaid = Brief(days=brief.days, goal=defaults.GOAL)
    for path in dict.fromkeys(field for field, _ in FIXED.values()):
        value, usual = _at(brief, path), _at(unsaid, path)
        words = next((" ".join(said) for said, sets in FIXED.items() if sets == (path, value)), None)
        if value != usual and words is not None:
            yield path, words


def _at(brief: Brief, path: str) -> object:
    """The value at a path of dots."""
    found: object = brief
    for field in path.split("."):
        found = getattr(found, field)
    return found


def _choices(brief: Brief, catalogue: Catalogue) -> Iterator[tuple[str, str]]:
    """Exercises, items and movements: wanted, avoided, liked, not there."""
    items = {item: item_name(item, catalogue) for item in catalogue.items}
    both = items | {exercise: lift_name(exercise, catalogue, True) for exercise in catalogue.exercises}
    if brief.without:
        yield "without", _each("without", (items[id] for id in brief.without))
    if brief.avoid:
        yield "avoid", _each("avoid", family_names(brief.avoid, catalogue))
    if brief.dislike:
        lifts = [id for id in brief.dislike if id not in items]
        named = [*(items[id] for id in brief.dislike if id in items), *family_names(lifts, catalogue, True)]
        yield "dislike", _each("dislike", named)
    if brief.like:
        yield "like", _each("like", (both[id] for id in brief.like))
    if brief.owned.single:
        yield "owned.single", _each("single", (items[id] for id in brief.owned.single))
    if brief.must:
        yield "must", _each("must", brief.must)
    if brief.pins:
        yield "pins", ", ".join(pin_words(pin, catalogue) for pin in brief.pins)
    if brief.other:
        yield "other", ", ".join(sport_words(sport) for sport in brief.other)


def sport_words(sport: OtherActivity) -> str:
    """Other activity as a clause: sport football on tue lower."""
    return f"sport {sport.name or 'sport'} on {sport.weekday} {' '.join(sport.regions)}"


def _each(word: str, names: Iterable[str]) -> str:
    """Each name in a clause of its own, so that none is read with the one before it."""
    return ", ".join(f"{word} {name}" for name in names)


def pin_words(pin: Pin, catalogue: Catalogue) -> str:
    """A pin as a clause: pin bench press on wed 3 sets with pull-up."""
    words = ["pin", lift_name(pin.exercise, catalogue)]
    words += ["on", pin.day] if pin.day else []
    words += [f"{pin.sets} sets"] if pin.sets else []
    words += ["with", lift_name(pin.pair_with, catalogue)] if pin.pair_with else []
    return " ".join(words)


def _rule(ask: str | float) -> str:
    return ask if isinstance(ask, str) else f"{ask:g}"
