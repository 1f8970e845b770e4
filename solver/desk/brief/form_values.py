"""A brief as the fields of its form: name of a field to what stands in it."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Any

from setwright.catalogue.entries import Catalogue
from setwright.solver.brief.defaults import WEEKDAYS
from setwright.solver.brief.schema import Brief, DayAsk, LiftAsk
from setwright.solver.sheets.plain.phrase_clauses import pin_words, sport_words
from setwright.solver.sheets.plain.phrase_names import family_names, item_name, lift_name, place_words

YES = "yes"


def form_values(brief: Brief, catalogue: Catalogue) -> dict[str, str]:
    """What stands in each field of the form of a brief; a field that is empty is left out."""
    found = dict((*_week(brief, catalogue), *_wants(brief, catalogue), *_person(brief, catalogue)))
    return {name: text for name, value in found.items() if (text := _text(value))}


def place_lines(equipment: str | tuple[str, ...] | None, catalogue: Catalogue) -> str:
    """A kit, or items with commas between them."""
    words = (equipment,) if isinstance(equipment, str) else equipment or ()
    return ", ".join(place_words(word, catalogue) for word in words)


def _week(brief: Brief, catalogue: Catalogue) -> Iterator[tuple[str, Any]]:
    """Days, place and what is owned."""
    yield from (("title", brief.title), ("goal", brief.goal), ("any_order", brief.any_order))
    if brief.any_order:
        yield "rest_days_between", brief.rest_days_between
    for row, day in zip(_rows(brief), brief.days, strict=True):
        yield from _day(row, day, catalogue)
    yield "place", place_lines(brief.equipment, catalogue)
    yield "without", ", ".join(item_name(item, catalogue) for item in brief.without)
    owned = brief.owned
    yield from (
        (field, getattr(owned, field)) for field in ("dumbbell_max", "dumbbell_step", "bar", "safeties", "busy")
    )
    yield "plates", ", ".join(f"{plate:g}" for plate in owned.plates)
    yield "single", ", ".join(item_name(item, catalogue) for item in owned.single)


def _rows(brief: Brief) -> tuple[str, ...]:
    """The row of the form that each day stands in: its weekday, else the next one."""
    return tuple(day.weekday or WEEKDAYS[place] for place, day in enumerate(brief.days))


def _day(row: str, day: DayAsk, catalogue: Catalogue) -> Iterator[tuple[str, Any]]:
    yield f"{row}-minutes", day.minutes
    yield f"{row}-focus", day.focus
    yield f"{row}-place", place_lines(day.equipment, catalogue)


def _wants(brief: Brief, catalogue: Catalogue) -> Iterator[tuple[str, Any]]:
    """Muscles, exercises and how the week is filled."""
    for name, ask in brief.muscles.items():
        yield f"{name}-emphasis", ask.emphasis
        yield f"{name}-least", ask.at_least
        yield f"{name}-most", ask.at_most
        yield f"{name}-days", ask.days_at_least
    items = {item: item_name(item, catalogue) for item in catalogue.items}
    yield "must", "\n".join(brief.must)
    yield "avoid", "\n".join(family_names(brief.avoid, catalogue))
    for field in ("dislike", "like"):
        ids = getattr(brief, field)
        yield field, "\n".join(items.get(id) or lift_name(id, catalogue, True) for id in ids)
    yield "pins", "\n".join(pin_words(pin, catalogue).removeprefix("pin ") for pin in brief.pins)
    yield "sport", "\n".join(sport_words(sport).removeprefix("sport ") for sport in brief.other)
    for field in ("pairs", "techniques"):
        said = getattr(brief, field)
        yield field, "" if said is None else YES if said else "no"
    yield from (("reps", brief.reps), ("dose", brief.dose), ("rir_more", brief.rir_more))
    yield "keep_share", None if brief.keep_share is None else 100 * brief.keep_share


def _person(brief: Brief, catalogue: Catalogue) -> Iterator[tuple[str, Any]]:
    """Who trains: experience, unit, known lifts, health notes, the clock."""
    client = brief.client
    yield from (("experience", client.experience), ("unit", client.unit), ("alone", client.trains_alone))
    yield "loads", brief.lifts is not None
    lifts = (brief.lifts or {}).items()
    yield "lifts", "\n".join(f"{lift_name(id, catalogue)} = {lift_words(known)}" for id, known in lifts)
    yield "age", client.age
    yield from ((f"caution-{caution.tag}", True) for caution in client.cautions)
    if client.clearance:
        yield from ((f"clearance_{field}", getattr(client.clearance, field)) for field in ("by", "on", "limits"))
    for field in ("warm_up", "spare"):
        seconds = getattr(brief.clock, field)
        yield field, None if seconds is None else seconds / 60


def lift_words(known: LiftAsk) -> str:
    """What is known of a lift, as a brief file says it: 80x8, 2 left."""
    if known.maximum is not None:
        return f"max {known.maximum:g}"
    left = "" if known.rir is None else f", {known.rir} left"
    return f"{known.load:g}x{known.reps}{left}"


def _text(value: Any) -> str:
    """A value as it stands in a field; empty where nothing is said."""
    if isinstance(value, bool):
        return YES if value else ""
    if isinstance(value, float):
        return f"{value:g}"
    return "" if value is None else str(value)
