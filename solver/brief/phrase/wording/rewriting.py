"""A sentence rewritten step by step into the words that the clauses of a phrase know; what is not known is left."""

from __future__ import annotations

import re
from functools import cache
from typing import Final, NamedTuple

from setwright.solver.brief.phrase.lexicon import Lexicon
from setwright.solver.brief.phrase.wording.days.clock_times import without_clock_times
from setwright.solver.brief.phrase.wording.days.counts import counts_parted
from setwright.solver.brief.phrase.wording.days.joining import joined, themed
from setwright.solver.brief.phrase.wording.days.muscle_days import with_muscle_days
from setwright.solver.brief.phrase.wording.days.pins import with_pins
from setwright.solver.brief.phrase.wording.days.placed_counts import leaves_places_open, with_placed_counts
from setwright.solver.brief.phrase.wording.days.schedule import scheduled
from setwright.solver.brief.phrase.wording.days.sports import without_heavy_legs, without_sport
from setwright.solver.brief.phrase.wording.days.times import COUNTS, DURATIONS, FRACTIONS, HALVES, OF_DAYS
from setwright.solver.brief.phrase.wording.days.weekdays import (
    NAMES,
    with_weekdays,
    without_days_off,
    without_exceptions,
)
from setwright.solver.brief.phrase.wording.emphasis import EMPHASIS
from setwright.solver.brief.phrase.wording.fillers import FILLERS, LEFT_OVER
from setwright.solver.brief.phrase.wording.health import HEALTH
from setwright.solver.brief.phrase.wording.kit import KIT, SPELLING
from setwright.solver.brief.phrase.wording.lifts import LIFTS
from setwright.solver.brief.phrase.wording.numbers import AGES, MARKS, NUMBERS, NUMBERS_OF_SETS, Rewrites
from setwright.solver.brief.phrase.wording.patterns.absent_lifts import without_unknown_lifts
from setwright.solver.brief.phrase.wording.patterns.absent_things import without_unknown_things
from setwright.solver.brief.phrase.wording.patterns.limits import days_at_most, often_said
from setwright.solver.brief.phrase.wording.sayings import Sayings
from setwright.solver.brief.phrase.wording.sets_asked import without_sets_asked
from setwright.solver.brief.phrase.wording.style import STYLE
from setwright.solver.brief.phrase.wording.wants import wanted


class Wording(NamedTuple):
    """A sentence in plainer words, and the clauses of it that ask for nothing."""

    text: str
    passed_over: tuple[str, ...]


def plain_wording(text: str, lexicon: Lexicon) -> Wording:
    """The text in plainer words; each step is a table of its own module."""
    asked = text.lower()
    text, hours = without_clock_times(text.lower())
    text = _spaced(_rewritten(text, (*SPELLING, *MARKS, *HALVES)))
    text, unknown = without_unknown_lifts(text)
    text, things = without_unknown_things(text)
    over_lifts = [f"{name}: the catalogue has none" for name in (*unknown, *things)]
    if days_at_most(text, lexicon) or _QUESTION.search(asked):
        return Wording("", ())
    text, often = often_said(with_weekdays(_rewritten(text, AGES)), lexicon)
    text = _spaced(_rewritten(text, NUMBERS_OF_SETS))
    text, of_sets, over = without_sets_asked(text)
    if _REST_UNCLEAR.search(text):
        return Wording("", ())
    text = _rewritten(text, (*FRACTIONS, *NUMBERS))
    text = _spaced(_rewritten(text, NAMES))
    text = _spaced(_rewritten(text, DURATIONS))
    text = without_days_off(without_exceptions(text))
    text = _rewritten(text, OF_DAYS)
    text = _spaced(_rewritten(text, COUNTS))
    text, sports = without_sport(text)
    text, heavy = without_heavy_legs(_spaced(text), sports)
    text, of_muscles = with_muscle_days(_spaced(text), lexicon)
    text, pins = with_pins(_spaced(text), lexicon)
    text = _rewritten(_spaced(_rewritten(text, FILLERS)), OF_DAYS)
    text, counts = with_placed_counts(_spaced(text), lexicon)
    if not counts and leaves_places_open(text):
        return Wording("", ())
    text = text if counts else scheduled(counts_parted(text), lexicon)
    text = _spaced(joined(text))
    sayings = Sayings(lexicon, _spaced(_rewritten(text, LEFT_OVER)))
    if not (plainer := sayings.plainer()) and sayings.whole:
        return Wording("", ())
    text = wanted(_spaced(plainer), lexicon)
    text = _spaced(_rewritten(text, (*HEALTH, *STYLE, *LIFTS, *EMPHASIS, *KIT)))
    text = wanted(themed(text), lexicon)
    passed = (
        *over_lifts,
        *(f"{said}: so it is, because of the sport" for said in heavy),
        *over,
        *(f"{hour}: the week names no hours" for hour in hours),
        *sayings.over,
    )
    return Wording(
        ", ".join([*counts, *([text] if text else []), *pins, *of_muscles, *often, *of_sets, *sports]), passed
    )


_QUESTION: Final = re.compile(
    r"(?:^|[.!?;,] )(?:so |and |hi |hello |hey |coach )*(?:is|are|am|do|does|did|should|was|were|how|why|what|when|which|who|can i|could i|may i|shall i|"
    r"will i|would it|would that)\b[^.?!]*\?"
)
"""A question asks for an answer, not for a week; `can you make me a plan?` is none."""


_REST_UNCLEAR: Final = re.compile(r"\b(?:less|little|more|enough|fewer) rests?\b")
"""How much rest is open, and the rest may be the other muscles too."""


def _rewritten(text: str, rewrites: Rewrites) -> str:
    for pattern, said in rewrites:
        text = _compiled(pattern).sub(said, text)
    return text


@cache
def _compiled(pattern: str) -> re.Pattern[str]:
    return re.compile(pattern)


def _spaced(text: str) -> str:
    """The text with single blanks, and no empty clauses."""
    text = " ".join(text.split())
    return re.sub(r"(?:\s*[,;.]\s*(?=[,;.]|$))+", "", re.sub(r"\s+([,;.])", r"\1", text)).strip(" ,;.")
