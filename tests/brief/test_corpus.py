"""Some six hundred sentences of coaches and clients, each with what a person understands by it.

They were written without a look at what the program reads. None may be taken for something else; the share that is
understood is measured here, so that it can only grow.
"""

from __future__ import annotations

import io
import tomllib
from functools import cache
from pathlib import Path
from typing import Any

import pytest
from phrase_meaning import differences

from setwright.catalogue.faults import UsageFault
from setwright.catalogue.load import load_catalogue
from setwright.solver.brief.file import read_brief
from setwright.solver.brief.parsed_brief import ParsedBrief

CATALOGUE = load_catalogue()
PHRASES: list[dict[str, Any]] = tomllib.loads(Path(__file__).with_name("phrases.toml").read_text("utf-8"))["phrase"]
MEANT = [phrase for phrase in PHRASES if "refused" not in phrase]
LEAST_UNDERSTOOD = 0.59
"""The part of the sentences with a meaning that is understood; the aim is 0.95."""


@cache
def read(says: str) -> ParsedBrief | None:
    """The brief of a sentence, or None where it is refused."""
    try:
        return read_brief(says, CATALOGUE, io.BytesIO(b""))
    except UsageFault:
        return None


def test_none_is_taken_for_something_else() -> None:
    wrong = {
        phrase["says"]: found
        for phrase in MEANT
        if (parsed := read(phrase["says"])) and (found := differences(phrase, parsed.brief, CATALOGUE))
    }
    assert wrong == {}


def test_what_a_careful_person_would_ask_about_is_refused() -> None:
    assert [phrase["says"] for phrase in PHRASES if "refused" in phrase and read(phrase["says"])] == []


def test_the_part_that_is_understood() -> None:
    understood = sum(read(phrase["says"]) is not None for phrase in MEANT)
    assert understood >= LEAST_UNDERSTOOD * len(MEANT), f"{understood} of {len(MEANT)}"


def test_the_corpus_is_large_and_says_nothing_twice() -> None:
    says = [" ".join(phrase["says"].lower().split()) for phrase in PHRASES]
    assert len(says) == len(set(says)) >= 400
    assert len(PHRASES) - len(MEANT) >= 30


@pytest.mark.parametrize(
    ("says", "plainer"),
    [
        ("I can train four times a week, fifty minutes a go.", "4 days x 50 min"),
        ("M/W/F 45", "mon wed fri 45"),
        ("an hour and a half on Saturdays, 30 on weekdays", "sat 90 min, mon-fri 30 min"),
        ("weekdays apart from Wednesday, 45 mins", "mon tue thu fri 45 min"),
        ("glutes and hams, tue thu, 40 mins each", "grow glutes and hamstrings"),
        ("football Tuesdays and Thursdays, lifting mon fri 45 min", "sport football on thu"),
    ],
)
def test_a_sentence_in_plainer_words_is_told(says: str, plainer: str) -> None:
    parsed = read(says)
    assert parsed is not None
    told = [assumption.text for assumption in parsed.assumed if assumption.text.startswith("read as: ")]
    assert len(told) == 1 and plainer in told[0]


def test_a_sentence_about_health_is_told_to_nobody_else() -> None:
    parsed = read("careful with my knee and shoulder, 30 min 4x")
    assert parsed is not None and parsed.brief.client.cautions
    assert {a.kind for a in parsed.assumed if a.text.startswith("read as")} == {"health"}


TURNED_ROUND = (
    "3 days x 40 min, not on mondays",
    "40 min mon wed fri but only 20 min on fri",
    "I can't train on weekends, 3 days 40 min",
    "3 days 40 min, I don't want bigger legs",
    "3 days 40 min, no need to grow arms",
    "3 days, 40 min, my knee is fine now",
    "45 min mon wed, no pain in my shoulder",
    "mon wed 40 min, don't grow chest",
    "2 days 30 min, I hate that my arms are small",
    "3 days 40 min, never deadlifts",
    "3 days 40 min, last year I had a bad back",
    "4 days 30 min, my wife has a bad knee",
    "mon 40 min, 2 days off",
    "3 days 40 min, no more bench press than needed",
    "30 min 3 times, biceps bigger than triceps",
    "3 days x 40 min, chest is big enough",
    "3 days x 40 min, glutes are not a priority",
    "no gym this week, 3 days 20 min",
    "3 days 20 min, dumbbells are too heavy",
    "gym closed on friday, mon wed fri 40 min",
    "mon wed fri 40 min or 45 min",
    "3 days 40 min, less rest, more sets",
    "3 days 40 min, arms up in the air",
    "tue thu 45 min, football on sat is cancelled",
    "60 min 2 times per month",
    "2 weeks, 3 days each, 40 min",
    "3 days x 40 min, 10 reps max",
    "3 days 40 min, bench 100 kg",
    "drop 5 kg, 3 days 40 min",
    "3 days 40 min, no legs on friday",
    "m w f 40 min, t th off",
    "3 days 40 min with a friend, no supersets with her",
    "3 days 40 min, big legs already",
    "mon wed fri 40 min, not fri 50 min",
)
"""Sentences whose known words say the opposite, or something else, by the words around them."""


@pytest.mark.parametrize("says", TURNED_ROUND)
def test_what_the_words_around_turn_round_is_refused_and_not_taken_for_its_opposite(says: str) -> None:
    assert read(says) is None
