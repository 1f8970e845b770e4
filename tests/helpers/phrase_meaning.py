"""What a person understands by a sentence of tests/brief/phrases.toml held against the brief that was read from it."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from typing import Any

from setwright.catalogue.entries import Catalogue
from setwright.solver.brief.defaults import WEEKDAYS
from setwright.solver.brief.schema import Brief, weekdays_of

Meaning = Mapping[str, Any]
Difference = tuple[str, Any, Any]
"""The key that differs, what was meant and what was read."""


def differences(meant: Meaning, brief: Brief, catalogue: Catalogue) -> list[Difference]:
    """Every key that the brief has otherwise than a person means it; the keys in `soft` are left to judgement."""
    found = [
        *_of_days(meant, brief),
        *_of_place(meant, brief, catalogue),
        *_of_muscles(meant, brief, catalogue),
        *_of_lifts(meant, brief),
        *_of_client(meant, brief),
        *_of_sets(meant, brief),
    ]
    soft = set(meant.get("soft", ()))
    soft |= {"themes"} if "days" in soft else set()
    soft |= {"place"} if "kit" in soft else set()
    return [difference for difference in found if difference[0] not in soft]


def _of_days(meant: Meaning, brief: Brief) -> Iterator[Difference]:
    said = [_day_of(words.split()) for words in meant["days"]]
    read = [(day.weekday, day.minutes, day.focus) for day in brief.days]
    named = any(weekday for weekday, _, _ in said)
    keys = [[(d if named else None, m) for d, m, _ in days] for days in (said, read)]
    if sorted(map(str, keys[0])) != sorted(map(str, keys[1])):
        yield "days", said, read
    themes = [sorted(str(theme) for _, _, theme in days if theme != "full-body") for days in (said, read)]
    if themes[0] != themes[1]:
        yield "themes", *themes
    if set(meant.get("sport", ())) != {other.weekday for other in brief.other}:
        yield "sport", meant.get("sport"), [other.weekday for other in brief.other]


def _day_of(words: Sequence[str]) -> tuple[str | None, int, str | None]:
    """mon 40 push as its weekday, minutes and theme."""
    weekday, rest = (words[0], words[1:]) if words[0] in WEEKDAYS else (None, words)
    theme = rest[1] if len(rest) > 1 else None
    return weekday, int(rest[0]), "lower" if theme == "legs" else theme


def _of_place(meant: Meaning, brief: Brief, catalogue: Catalogue) -> Iterator[Difference]:
    of_days = [day.equipment for day in brief.days]
    if "place" in meant:
        if len(set(map(str, of_days))) < 2:
            yield "place", meant["place"], of_days
        return
    read = brief.equipment if brief.equipment is not None else of_days[0]
    words = (read,) if isinstance(read, str) else read or ()
    asked = meant.get("kit", ["commercial-gym"])
    without = set(brief.without)
    if _items(asked, catalogue) - without != _items(words, catalogue) - without and set(asked) != set(words):
        yield "kit", asked, words
    if (
        bool(meant.get("without")) != bool(without)
        and not meant.get("avoid")
        and "machines" not in meant.get("without", ())
    ):
        yield "without", meant.get("without"), brief.without


def _items(words: Sequence[str], catalogue: Catalogue) -> set[str]:
    kits = [catalogue.kits[word].items if word in catalogue.kits else {word} for word in words]
    return {item for items in kits for item in items}


def _of_muscles(meant: Meaning, brief: Brief, catalogue: Catalogue) -> Iterator[Difference]:
    for emphasis in ("priority", "hold", "none"):
        read = [name for name, asked in brief.muscles.items() if asked.emphasis == emphasis]
        asked = meant.get(emphasis, ())
        ends = [(_muscles(names, catalogue), _muscles(names, catalogue, also=True)) for names in (asked, read)]
        if not (ends[0][0] <= ends[1][1] and ends[1][0] <= ends[0][1]):
            yield emphasis, asked, read
    limits = [name for name, asked in brief.muscles.items() if asked.exact]
    if bool(limits) != bool(meant.get("sets")):
        yield "sets", meant.get("sets"), limits
    often = [name for name, asked in brief.muscles.items() if asked.days_at_least]
    if bool(often) != bool(meant.get("often")):
        yield "often", meant.get("often"), often


def _muscles(names: Sequence[str], catalogue: Catalogue, also: bool = False) -> set[str]:
    """The muscles of names and groups, with those that a group has beside its first ones if `also`."""
    found: set[str] = set()
    for name in names:
        group = catalogue.groups.get(name)
        found |= {name} if group is None else {*group.priority, *(group.otherwise if also else ())}
    return found


def _of_lifts(meant: Meaning, brief: Brief) -> Iterator[Difference]:
    shunned = [*brief.avoid, *brief.dislike, *(brief.without if meant.get("avoid") else ())]
    if bool(meant.get("avoid")) != bool(shunned):
        yield "avoid", meant.get("avoid"), shunned
    wanted = [*brief.like, *brief.must, *(pin.exercise for pin in brief.pins)]
    if bool(meant.get("like")) != bool(wanted):
        yield "like", meant.get("like"), wanted
    if meant.get("pairs") != brief.pairs:
        yield "pairs", meant.get("pairs"), brief.pairs


SAID_EXACTLY = ("reps", "dose", "techniques", "rir_at_least", "rest_at_least", "rest_at_most", "exercise-count")
"""Fields that `other` gives as field=value, and that a sentence which does not name them leaves as they are."""


def _of_sets(meant: Meaning, brief: Brief) -> Iterator[Difference]:
    """How sets are done, and pins: what `other` says as field=value, pin=exercise day sets."""
    said = [words.split("=", 1) for words in meant.get("other", ()) if "=" in words]
    usual = {"reps": "usual", "dose": "usual"}
    for field in SAID_EXACTLY:
        value = brief.rules.get(field) if field == "exercise-count" else getattr(brief, field)
        read = f"{value:g}" if isinstance(value, float) else str(value).lower()
        asked = next((value for name, value in said if name == field), str(usual.get(field)).lower())
        if read != asked:
            yield field, asked, read
    for field, read in _details(brief).items():
        named = " ".join(value for name, value in said if name == field)
        asked = read if field == "dumbbell_max" and not named else named
        if read != asked:
            yield field, asked, read
    for field in ("trained", "rested"):
        days = zip(weekdays_of(brief), brief.days, strict=True)
        read_days = sorted(f"{name} {day}" for day, ask in days for name in getattr(ask, field) or ())
        asked_days = sorted(value for name, value in said if name == field)
        if read_days != asked_days:
            yield field, asked_days, read_days
    pins = sorted(f"{pin.exercise} {pin.day or ''} {pin.sets or ''}".strip() for pin in brief.pins)
    asked_pins = sorted(value for name, value in said if name == "pin")
    if asked_pins and pins != asked_pins:
        yield "pins", asked_pins, pins


def _details(brief: Brief) -> dict[str, str]:
    """What is owned, the minutes of the clock, and how the days lie, as `other` says them."""
    owned, clock = brief.owned, brief.clock
    heaviest = "" if owned.dumbbell_max is None else f"{owned.dumbbell_max:g} {brief.client.unit}"
    minutes = {name: getattr(clock, name) for name in ("spare", "warm_up")}
    return {
        "dumbbell_max": heaviest,
        "single": " ".join(owned.single),
        "safeties": "true" if owned.safeties or "safeties" in (brief.equipment or ()) else "",
        "rest_days_between": f"{brief.rest_days_between}" if brief.any_order else "",
        "must": " ".join(brief.must),
        **{name: "" if seconds is None else f"{seconds / 60:g}" for name, seconds in minutes.items()},
    }


def _of_client(meant: Meaning, brief: Brief) -> Iterator[Difference]:
    client = brief.client
    read = {
        "goal": brief.goal,
        "experience": client.experience,
        "age": client.age,
        "alone": client.trains_alone,
        "cautions": sorted(caution.tag for caution in client.cautions),
    }
    usual = {"goal": "balanced", "experience": "intermediate", "age": None, "alone": False, "cautions": []}
    for key, value in read.items():
        asked = meant.get(key, usual[key])
        if value != (sorted(asked) if key == "cautions" else asked):
            yield key, asked, value
