"""One line such as `3 days x 40 min, grow delts` read into the raw table of a brief file."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from typing import Any

from setwright.catalogue.entries import Catalogue
from setwright.catalogue.faults import Fault
from setwright.solver.brief.phrase.clauses import choice_clauses as choice
from setwright.solver.brief.phrase.clauses import setting_clauses as setting
from setwright.solver.brief.phrase.clauses.age_clauses import age_clause
from setwright.solver.brief.phrase.clauses.day_clauses import DayClauses, cycle_clause, days_clause
from setwright.solver.brief.phrase.clauses.effort_clauses import effort_clause
from setwright.solver.brief.phrase.clauses.fixed_clauses import FIXED, fixed_clause, other_aim, rest_between
from setwright.solver.brief.phrase.clauses.muscle_clauses import emphasis_clause, limit_clause, sets_clause
from setwright.solver.brief.phrase.clauses.muscle_day_clauses import muscle_day_clause, put_muscle_days
from setwright.solver.brief.phrase.clauses.place_clauses import place_clause
from setwright.solver.brief.phrase.day_words import at_count_of_days, at_weekday
from setwright.solver.brief.phrase.draft import BriefDraft
from setwright.solver.brief.phrase.durations import at_duration
from setwright.solver.brief.phrase.lexicon import Lexicon, lexicon_of
from setwright.solver.brief.phrase.place_settling import settle_place
from setwright.solver.brief.phrase.token_reader import TokenReader
from setwright.solver.brief.phrase.tokens import plain
from setwright.solver.brief.phrase.unrecognised import take_unrecognised

_EMPHASES = {
    "grow": "priority",
    "priority": "priority",
    "focus": "priority",
    "bigger": "priority",
    "big": "priority",
    "more": "priority",
    "stronger": "priority",
    "wider": "priority",
    "thicker": "priority",
    "lagging": "priority",
    "weak": "priority",
    "emphasis": "priority",
    "emphasise": "priority",
    "emphasize": "priority",
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
    "loves": "like",
    "love": "like",
    "dislikes": "dislike",
    "hates": "dislike",
    "hate": "dislike",
    "cautions": "caution",
    "pins": "pin",
    "skip": "no",
}
_LONG_SYNONYMS: Mapping[tuple[str, ...], str] = {
    ("can't", "do"): "avoid",
    ("can't",): "avoid",
    ("cannot", "do"): "avoid",
    ("cannot",): "avoid",
    ("doesn't", "like"): "dislike",
    ("don't", "like"): "dislike",
    ("do", "not", "like"): "dislike",
    ("does", "not", "like"): "dislike",
}
_HANDLERS: Mapping[str, Callable[[TokenReader, BriefDraft, str], None]] = {
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
    "keep": setting.keep_clause,
    "warm": setting.time_clause,
    "spare": setting.time_clause,
    "rule": setting.rule_clause,
}
LEADERS = (*_EMPHASES, *_HANDLERS, *_SYNONYMS, "age", "aged", "for", "with", "at", "in", "using", "on")
"""The words that begin a clause, besides numbers, weekdays and the catalogue's words."""


def draft_phrase(
    text: str, catalogue: Catalogue, lexicon: Lexicon | None = None
) -> tuple[dict[str, Any], tuple[Fault, ...]]:
    """The raw table of a brief file that a phrase says the same as, with every fault met in reading it.

    `lexicon` takes the place of the catalogue's own.
    """
    reader = TokenReader(plain(text), lexicon or lexicon_of(catalogue))
    reader.stop_words = frozenset((*LEADERS, *(words[0] for words in FIXED if len(words) == 1)))
    draft, days = BriefDraft(reader, catalogue.defaults.phrase_rests), DayClauses()
    while True:
        start = reader.position
        reader.skip_separators()
        if reader.done:
            break
        _ask_which(reader, start)
        if not _clause(reader, draft, days):
            take_unrecognised(reader, LEADERS)
    draft.put_rest(catalogue)
    _put_days(reader, draft, days)
    put_muscle_days(reader, draft)
    settle_place(reader, draft)
    return draft.raw, tuple(dict.fromkeys(reader.faults))


def _ask_which(reader: TokenReader, start: int) -> None:
    """Keep the fault of `mon 60 min or tue 60 min`: days after `or` may take the place of those before it."""
    either = any(token.text == "or" for token in reader.tokens[start : reader.position])
    if either and (at_weekday(reader) or at_duration(reader) or (reader.number() and at_count_of_days(reader))):
        reader.fault("'or' leaves open which days it is", "name one of them, or write and for both")


def _clause(reader: TokenReader, draft: BriefDraft, days: DayClauses) -> bool:
    """Read one clause; whether any stood here."""
    return (
        rest_between(reader, draft)
        or age_clause(reader, draft)
        or effort_clause(reader, draft)
        or muscle_day_clause(reader, draft)
        or cycle_clause(reader, days)
        or days_clause(reader, days)
        or fixed_clause(reader, draft)
        or other_aim(reader)
        or choice.bare_caution(reader, draft)
        or limit_clause(reader, draft)
        or sets_clause(reader, draft)
        or _led_clause(reader, draft)
        or (_not_a_name(reader) and place_clause(reader, draft))
    )


def _led_clause(reader: TokenReader, draft: BriefDraft) -> bool:
    """Read a clause that a leading word begins, unless a kit's own name begins with it."""
    if reader.sees("for") and reader.peek(1).text in _EMPHASES:
        reader.position += 1
    first = reader.peek().text
    if reader.match(("kit",)) and first not in _EMPHASES:
        return False
    for words, meant in _LONG_SYNONYMS.items():
        if reader.take(*words):
            _HANDLERS[meant](reader, draft, meant)
            return True
    word = _SYNONYMS.get(first, first)
    if word in _EMPHASES:
        reader.position += 1
        if word in ("priority", "focus", "emphasis"):
            reader.take("on")
        if word == "weak":
            reader.take_any(("point", "points"))
        emphasis_clause(reader, draft, _EMPHASES[word], first)
        return True
    if word in _HANDLERS:
        reader.position += 1
        _HANDLERS[word](reader, draft, word)
        return True
    return False


def _not_a_name(reader: TokenReader) -> bool:
    """Whether no muscle or exercise with a longer name than any equipment's stands here."""
    other, own = reader.match(("muscle", "group", "exercise")), reader.match(("kit", "item"))
    return other is None or (own is not None and own.length >= other.length)


def _put_days(reader: TokenReader, draft: BriefDraft, days: DayClauses) -> None:
    """The day clauses as the raw list of days, each with its own place where every clause names one."""
    if days.counted and days.named:
        reader.fault("days are both counted and named", "count them all or name every weekday")
        return
    days.put_cycle(reader)
    clauses = [*days.counted, *days.named]
    rows = [row for rows, _ in clauses for row in rows]
    if not rows:
        if not reader.faults:
            reader.fault("the days are not said", "begin with, for example, 3 days x 40 min")
        return
    draft.raw["days"] = rows
    places = [place for _, place in clauses]
    if len(places) == 1 and places[0]:
        places[0].put_into(draft)
    elif any(places) and not all(places):
        with_place = next(place for place in places if place)
        reader.fault(
            f"'{with_place.text}' stands with some days, and others have no place",
            "name a place after every day, or set it apart with a comma for the whole week",
        )
    else:
        for rows, place in clauses:
            if place:
                for row in rows:
                    row["equipment"] = place.equipment
                place.put_dumbbells_into(draft)
