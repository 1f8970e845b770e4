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
        ("an hour and a half on Saturdays, 30 on weekdays", "90 min on sat, 30 min mon-fri"),
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
