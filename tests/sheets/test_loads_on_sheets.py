"""Loads on what is handed over: in one unit, said once how to find them, and nothing at all where no lifts are said."""

from __future__ import annotations

import json
from collections.abc import Callable
from datetime import date
from typing import Any

import pytest
from jsonschema import Draft202012Validator

from setwright.catalogue.entries import Catalogue
from setwright.solver.brief.parsed_brief import parse_brief, raw_of
from setwright.solver.planning import Solved
from setwright.solver.rulebook import RULES
from setwright.solver.sheets.common.loads.load_words import A_START, FIND_IT, FIRST_SESSION
from setwright.solver.sheets.common.loads.said_loads import SaidLoad
from setwright.solver.sheets.document.printed_schema import week_schema
from setwright.solver.sheets.document.solved_week import week_document
from setwright.solver.sheets.formats import written
from setwright.solver.sheets.handout.handout import Handout, handout_of
from setwright.solver.sheets.pdf.card import card_values
from setwright.solver.sheets.screen.week_table import week_text

RAW: dict[str, Any] = {
    "days": [{"weekday": "mon", "minutes": 40}, {"weekday": "thu", "minutes": 40}],
    "muscles": {"delts": "priority"},
    "pairs": True,
}
LIFTS = {"squat": "225x5, 2 left", "dumbbell bench press": "60x10, 2 left", "romanian deadlift": "max 275"}
"""In pounds; the other lifts of the week are not known."""
TEXTS = ("html", "md", "csv", "ics")


@pytest.fixture(scope="module")
def pounds(solved_as: Callable[..., Solved], catalogue: Catalogue) -> Solved:
    return solved_as(parsed=parse_brief({**RAW, "lifts": LIFTS, "client": {"unit": "lb"}}, catalogue))


@pytest.fixture(scope="module")
def handed_over(pounds: Solved, catalogue: Catalogue) -> Handout:
    return handout_of(week_document(pounds), catalogue, start=date(2026, 1, 5))


def test_the_document_says_each_load_with_its_unit(pounds: Solved) -> None:
    monday, thursday = (day["entries"] for day in week_document(pounds)["days"])
    assert [line["load"] for line in monday] == ["215 lb", "60 lb a dumbbell", FIND_IT, FIND_IT, FIND_IT]
    assert thursday[0]["load"] == "215 lb"
    assert monday[0]["ramp_up"] == "105 lb x 8, 150 lb x 5, 180 lb x 2"
    assert all("ramp_up" not in line for line in monday[2:])


def test_it_fits_its_schema_and_is_read_back_as_the_same(pounds: Solved, catalogue: Catalogue) -> None:
    document = json.loads(json.dumps(week_document(pounds)))
    for mode in ("validation", "serialization"):
        assert list(Draft202012Validator(week_schema(mode)).iter_errors(document)) == []
    again = parse_brief(document["brief"], catalogue, rule_ids=tuple(RULES)).brief
    assert again.lifts == pounds.parsed.brief.lifts and raw_of(again)["lifts"] == document["brief"]["lifts"]


def test_loads_that_are_handed_in_take_the_place_of_the_reckoned_ones(pounds: Solved) -> None:
    said = {(0, 0): SaidLoad("200 lb", "100 lb x 8"), (0, 1): SaidLoad("50 lb a dumbbell")}
    lines = week_document(pounds, loads=said)["days"][0]["entries"]
    assert [line["load"] for line in lines] == ["200 lb", "50 lb a dumbbell", None, None, None]
    assert lines[0]["ramp_up"] == "100 lb x 8" and "ramp_up" not in lines[1]


def test_without_lifts_nothing_is_said_of_loads(solved: Solved, catalogue: Catalogue) -> None:
    document = week_document(solved)
    assert {line["load"] for day in document["days"] for line in day["entries"]} == {None}
    assert not [line for day in document["days"] for line in day["entries"] if "ramp_up" in line]
    assert "lifts" not in document["brief"]
    handout = handout_of(document, catalogue, start=date(2026, 1, 5))
    assert handout.on_loads == ()
    for name in TEXTS:
        assert FIND_IT not in written(name, handout).decode()
    assert "Load" not in week_text(solved)


@pytest.mark.parametrize("name", TEXTS)
def test_a_sheet_in_pounds_has_no_kilograms(handed_over: Handout, name: str) -> None:
    text = written(name, handed_over).decode().replace("\r\n ", "").replace("\u00a0", " ")
    assert "215 lb" in text and "60 lb a dumbbell" in text and "105 lb x 8" in text
    assert " kg" not in text


def test_a_card_in_pounds_has_no_kilograms(handed_over: Handout) -> None:
    said = json.dumps(card_values(handed_over))
    assert "215 lb" in said and "Load (lb)" in said and "kg" not in said
    assert written("pdf", handed_over).startswith(b"%PDF")


@pytest.mark.parametrize("name", ["html", "md"])
def test_how_a_load_is_found_is_said_once(handed_over: Handout, name: str) -> None:
    text = written(name, handed_over).decode()
    assert text.count(A_START) == text.count(FIRST_SESSION) == 1


def test_the_card_and_each_event_say_how_a_load_is_found(handed_over: Handout) -> None:
    assert card_values(handed_over)["cover"]["on_loads"] == [A_START, FIRST_SESSION]
    events = written("ics", handed_over).decode().replace("\r\n ", "").replace("\\,", ",").replace("\\;", ";")
    assert events.count(FIRST_SESSION) == events.count("BEGIN:VEVENT") == 2


def test_the_screen_says_what_the_loads_are_from(pounds: Solved) -> None:
    text = " ".join(week_text(pounds).split())
    assert "Loads from: Barbell back squat 225 lb x 5, 2 left; Dumbbell bench press 60 lb x 10, 2 left; " in text
    assert "Barbell Romanian deadlift maximum 275 lb" in text
    assert "Ramp-up before Barbell back squat: 105 lb x 8, 150 lb x 5, 180 lb x 2" in text
    assert FIRST_SESSION in text and "bars and plates: the usual ones in lb" in text
    assert max(map(len, week_text(pounds, 80).splitlines())) <= 80


# ---- plates


@pytest.fixture(scope="module")
def with_plates(solved_as: Callable[..., Solved], catalogue: Catalogue) -> Handout:
    owned = {"bar": 45, "plates": [45, 25, 10, 10, 5, 2.5]}
    parsed = parse_brief({**RAW, "lifts": LIFTS, "client": {"unit": "lb"}, "owned": owned}, catalogue)
    return handout_of(week_document(solved_as(parsed=parsed)), catalogue, start=date(2026, 1, 5))


def test_the_plates_of_a_load_add_up_to_it(with_plates: Handout) -> None:
    lines = [line for session in with_plates.sessions for line in session.lines if line.plates]
    assert {line.exercise for line in lines} >= {"barbell-back-squat"}
    for line in lines:
        plates = [float(part) for part in line.plates.removesuffix(" a side").split(" + ")]
        assert f"{45 + 2 * sum(plates):g} lb" == line.load


@pytest.mark.parametrize("name", TEXTS[:2])
def test_the_sheets_say_the_plates_and_a_load_without_them_says_nothing(
    with_plates: Handout, handed_over: Handout, name: str
) -> None:
    text = written(name, with_plates).decode().replace("\u00a0", " ").replace("\\+", "+")
    line = with_plates.sessions[0].lines[0]
    assert line.plates and f"Plates: {line.plates}" in text.replace("<bdi>", "")
    assert "Plates" not in written(name, handed_over).decode()


def test_the_card_the_workbook_and_the_calendar_say_the_plates(with_plates: Handout) -> None:
    row = card_values(with_plates)["sessions"][0]["rows"][0]
    line = with_plates.sessions[0].lines[0]
    assert [d["text"] for d in row["details"] if d["what"] == "plates"] == [line.plates]
    assert [d["what"] for d in row["details"]].index("plates") < [d["what"] for d in row["details"]].index("ramp_up")
    events = written("ics", with_plates).decode().replace("\r\n ", "")
    assert f"- Plates: {line.plates}" in events
    assert written("pdf", with_plates).startswith(b"%PDF") and written("xlsx", with_plates)
