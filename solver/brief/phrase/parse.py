"""One line such as `3 days x 40 min, grow delts` read into the raw table of a brief file."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from typing import Any

from setwright.catalogue.entries import Catalogue
from setwright.catalogue.faults import Fault
from setwright.solver.brief.phrase import choice_clauses as choice
from setwright.solver.brief.phrase.day_clauses import Days, days_clause
from setwright.solver.brief.phrase.draft import Said
from setwright.solver.brief.phrase.fixed_clauses import FIXED, fixed_clause, rest_between
from setwright.solver.brief.phrase.lexicon import Lexicon, lexicon_of
from setwright.solver.brief.phrase.muscle_clauses import emphasis_clause, limit_clause
from setwright.solver.brief.phrase.place_clauses import place_clause
from setwright.solver.brief.phrase.reader import Reader
from setwright.solver.brief.phrase.tokens import plain
from setwright.solver.brief.phrase.unrecognised import leftover

_EMPHASES = {
    "grow": "priority",
    "priority": "priority",
    "prioritise": "priority",
    "prioritize": "priority",
    "hold": "hold",
    "maintain": "hold",
    "normal": "normal",
}
_SYNONYMS = {
    "likes": "like",
    "prefer": "like",
    "prefers": "like",
    "dislikes": "dislike",
    "cautions": "caution",
    "pins": "pin",
}
_HANDLERS: Mapping[str, Callable[[Reader, Said, str], None]] = {
    "no": choice.no_clause,
    "without": choice.list_clause,
    "avoid": choice.list_clause,
    "like": choice.list_clause,
    "dislike": choice.list_clause,
    "single": choice.list_clause,
    "must": choice.must_clause,
    "pin": choice.pin_clause,
    "caution": choice.caution_clause,
    "bad": choice.caution_clause,
    "sport": choice.sport_clause,
    "keep": choice.keep_clause,
    "warm": choice.time_clause,
    "spare": choice.time_clause,
    "rule": choice.rule_clause,
}
LEADERS = (*_EMPHASES, *_HANDLERS, *_SYNONYMS, "for", "with", "at", "in", "using", "on")
"""The words that begin a clause, besides numbers, weekdays and the catalogue's words."""


def read_phrase(text: str, catalogue: Catalogue) -> tuple[dict[str, Any], tuple[Fault, ...]]:
    """The raw brief a phrase says, with every fault met in reading it."""
    reader = Reader(plain(text), _lexicon(catalogue))
    reader.stops = frozenset((*LEADERS, *(words[0] for words in FIXED if len(words) == 1)))
    said, days = Said(reader), Days()
    while True:
        reader.skip_separators()
        if reader.done:
            break
        if not _clause(reader, said, days):
            leftover(reader, LEADERS)
    _put_days(reader, said, days)
    if said.home and "equipment" not in said.raw and not reader.faults:
        reader.fault(
            "'home' does not say what is there",
            "write at home with dumbbells, home gym, barbell garage, bands or bodyweight",
        )
    return said.raw, tuple(dict.fromkeys(reader.faults))


def _lexicon(catalogue: Catalogue) -> Lexicon:
    return lexicon_of(catalogue)


def _clause(r: Reader, said: Said, days: Days) -> bool:
    """Read one clause; whether any stood here."""
    return (
        rest_between(r, said)
        or days_clause(r, said, days)
        or fixed_clause(r, said)
        or choice.bare_caution(r, said)
        or limit_clause(r, said)
        or _led_clause(r, said)
        or (_not_a_name(r) and place_clause(r, said))
    )


def _led_clause(r: Reader, said: Said) -> bool:
    """Read a clause that a leading word begins, unless a kit's own name begins with it."""
    first = r.peek().text
    if r.met(("kit",)) and first not in _EMPHASES:
        return False
    word = _SYNONYMS.get(first, first)
    if word in _EMPHASES:
        r.at += 1
        r.take("on") if word == "priority" else None
        emphasis_clause(r, said, _EMPHASES[word], first)
        return True
    if word in _HANDLERS:
        r.at += 1
        _HANDLERS[word](r, said, word)
        return True
    return False


def _not_a_name(r: Reader) -> bool:
    """Whether no muscle or exercise with a longer name than any equipment's stands here."""
    other, own = r.met(("muscle", "group", "exercise")), r.met(("kit", "item"))
    return other is None or (own is not None and own.length >= other.length)


def _put_days(r: Reader, said: Said, days: Days) -> None:
    """The day clauses as the raw list of days, each with its own place where every clause names one."""
    if days.counted and days.named:
        r.fault("days are both counted and named", "count them all or name every weekday")
        return
    rows = [*days.counted, *(row for rows, _ in days.named for row in rows)]
    if not rows:
        if not r.faults:
            r.fault("the days are not said", "begin with, for example, 3 days x 40 min")
        return
    said.raw["days"] = rows
    places = [place for _, place in days.named]
    if len(places) == 1 and places[0]:
        places[0].into(said)
    elif any(places) and not all(places):
        with_place = next(place for place in places if place)
        r.fault(
            f"'{with_place.text}' stands with some days, and others have no place",
            "name a place after every day, or set it apart with a comma for the whole week",
        )
    else:
        for rows, place in days.named:
            for row in rows if place else []:
                row["equipment"] = place.equipment if place else None
            if place:
                place.dumbbells_into(said)
