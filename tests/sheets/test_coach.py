"""`coach.toml` is read strictly, all faults at once."""

from __future__ import annotations

import tomllib
from datetime import date, time
from pathlib import Path

import pytest
from handed import shipped

from setwright.catalogue.faults import UsageFault
from setwright.solver.sheets.common.labels import LABELS
from setwright.solver.sheets.handout.coach import DEFAULT_COACH, CoachFile, parse_coach

WHOLE = """
name = "Studio Birch"
lines = ["1 Invented Lane", "by appointment"]
language = "de-CH"
caution = "Bei Schmerzen aufhören."
paper = "letter"
weeks = 4
start = 2026-01-05
review_weeks = 6
time = "18:30"
alarm = 30
holidays = [2026-01-14, "2026-01-12"]
[times]
mon = 07:15:00
[words]
rest = "Pause"
[muscles]
chest = "Brust"
[exercises]
barbell-back-squat = "Kniebeuge"
"""


def test_every_field_is_read() -> None:
    coach = parse_coach(WHOLE.encode(), shipped())
    assert (coach.name, coach.lines) == ("Studio Birch", ("1 Invented Lane", "by appointment"))
    assert (coach.paper, coach.weeks, coach.review_weeks, coach.alarm) == ("letter", 4, 6, 30)
    assert (coach.start, coach.holidays) == (date(2026, 1, 5), (date(2026, 1, 12), date(2026, 1, 14)))
    assert (coach.time, coach.times["mon"]) == (time(18, 30), time(7, 15))
    assert coach.words["rest"] == "Pause"
    assert set(coach.words) == set(LABELS)
    assert coach.muscles["chest"] == "Brust"
    assert coach.caution == "Bei Schmerzen aufhören."


def test_an_empty_file_is_the_default() -> None:
    assert parse_coach(b"", shipped()) == DEFAULT_COACH


WRONG = """
nmae = "Studio"
name = 3
lines = ["one\\ntwo"]
language = "Deutsch!"
paper = "a5"
weeks = 0
start = "2026-02-30"
time = "25:00"
alarm = true
holidays = ["soon"]
[times]
mo = "18:00"
[words]
exercse = "x"
rest = ""
[muscles]
chset = "Brust"
[exercises]
barbell-back-squat = ""
"""
SAID = (
    "nmae: is not known here; did you mean 'name'?",
    "name: got 3, expected text in quotes",
    "lines[0]: holds a line break",
    "language: got 'Deutsch!'",
    "paper: got 'a5', expected 'a4' or 'letter'",
    "weeks: got 0, expected a whole number from 1 to 52",
    "start: got '2026-02-30', expected a date",
    "time: got '25:00', expected a time",
    "alarm: got true, expected a whole number from 0 to 1440",
    "holidays[0]: got 'soon'",
    "times.mo: is not known here; did you mean 'mon'?",
    "words.exercse: is not known here; did you mean 'exercise'?",
    "words.rest: is empty",
    "muscles.chset: is not in the catalogue; did you mean 'chest'?",
    "exercises.barbell-back-squat: is empty",
)


def test_every_fault_is_named_at_once() -> None:
    with pytest.raises(UsageFault) as caught:
        parse_coach(WRONG.encode(), shipped(), "my.toml")
    found = [str(fault) for fault in caught.value.faults]
    assert len(found) == len(SAID)
    for fault, said in zip(found, SAID, strict=True):
        assert fault.startswith(f"my.toml: {said}")


@pytest.mark.parametrize(
    ("data", "said"),
    [(b"\xff\xfe", "not UTF-8"), (b"name = ", "not TOML"), (b"#" * 300_000, "larger than 200 kB")],
)
def test_a_file_that_is_no_toml_says_why(data: bytes, said: str) -> None:
    with pytest.raises(UsageFault, match=said):
        parse_coach(data, shipped())


def test_the_example_of_the_docs_is_one() -> None:
    page = (Path(__file__).parents[2] / "docs" / "sheets.md").read_text(encoding="utf-8")
    block = page.split("```toml\n")[1].split("```")[0]
    assert set(tomllib.loads(block)) == set(CoachFile.model_fields)
    assert parse_coach(block.encode(), shipped()).words["rest"] == "Pause"
