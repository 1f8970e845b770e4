"""Next loads, stalls, what was done and a pace in words and as documents, for a coach."""

from __future__ import annotations

import json
import sys
import xml.etree.ElementTree as ET
from datetime import timedelta
from pathlib import Path
from typing import Any, get_args

import jsonschema
import pytest

sys.path.insert(0, str(Path(__file__).parents[1] / "uses"))
from logs import BENCH, CATALOGUE, FIRST, RAISE, log_of, next_of, sets_of, usual_kits
from simulated_logs import Truth, simulated_log
from weeks import audited, days, terms_of

from setwright.solver.auditing import Audit
from setwright.solver.brief.schema import Clock
from setwright.solver.evaluation.week import Entry
from setwright.solver.log.values import LoggedSession
from setwright.solver.sheets.charts.charts import maximum_chart
from setwright.solver.sheets.common.json_values import dumped
from setwright.solver.sheets.document.progress.next_document import NextDocument, next_document
from setwright.solver.sheets.document.progress.pace_document import PaceDocument, pace_document
from setwright.solver.sheets.screen.progress.done_table import muscles_text, sessions_text
from setwright.solver.sheets.screen.progress.next_table import next_text
from setwright.solver.sheets.screen.progress.pace_words import pace_text
from setwright.solver.sheets.screen.progress.stall_words import drawn_maximum, stalls_text
from setwright.solver.sheets.screen.progress.why_words import why_sentence
from setwright.solver.uses.loads.buildable import Steps
from setwright.solver.uses.pace.reading import client_pace
from setwright.solver.uses.progress.done_against_planned import muscles_done, sessions_done
from setwright.solver.uses.progress.maximum_course import maximum_course
from setwright.solver.uses.progress.next_targets import NextTarget, next_targets
from setwright.solver.uses.progress.reason import Why
from setwright.solver.uses.progress.stalls import stalls

CURL, PUSH_UP = "dumbbell-curl", "push-up"
LINES = (
    "barbell-bench-press 3 reps=8-12, dumbbell-side-raise 3, push-up 2",
    "barbell-bench-press 3 reps=8-12, dumbbell-curl 3 reps=8-12, plank 2",
)


@pytest.fixture(scope="module")
def week() -> Audit:
    return audited(terms_of(days=days("mon thu", 60)), LINES)


@pytest.fixture(scope="module")
def log() -> list[LoggedSession]:
    first = (*sets_of(BENCH, "60x12,12,12 @2"), *sets_of(RAISE, "8x15,15,15"), *sets_of(PUSH_UP, "x15,14 @2"))
    return [LoggedSession(FIRST, first, session=1), LoggedSession(FIRST + timedelta(days=3), sets_of("plank", "x10,9"))]


@pytest.fixture(scope="module")
def targets(week: Audit, log: list[LoggedSession]) -> tuple[NextTarget, ...]:
    return next_targets(week.evaluated.week, log, usual_kits(), CATALOGUE, "kg", FIRST + timedelta(days=7))


EVERY: dict[Why, NextTarget] = {
    "never-done": next_of(BENCH),
    "load-unsaid": next_of(BENCH, "x12,12,12"),
    "long-gap": next_of(BENCH, "60x12,12,12 @2", after=30),
    "far-from-range": next_of(BENCH, "80x5,5,5 @2", reps=(12, 15)),
    "far-too-easy": next_of(BENCH, "60x12,12,12 @6"),
    "under-range-twice": next_of(BENCH, "80x7,7,6 @2", "80x7,7,6 @2"),
    "under-range-once": next_of(BENCH, "80x7,7,6 @2"),
    "closer-to-failure": next_of(BENCH, "60x12,12,12 @0"),
    "two-for-two": next_of(BENCH, "60x11,12,14 @2", "60x11,12,14 @2"),
    "top-of-range": next_of(BENCH, "60x12,12,12 @2"),
    "big-step-earned": next_of(CURL, "10x16,16,16 @2"),
    "step-too-big": next_of(CURL, "10x12,12,12 @2"),
    "step-out-of-reach": next_of(RAISE, "2x28,28,28 @2", reps=(12, 20)),
    "no-heavier": next_of(CURL, "24x12,12,12 @2", kit=Steps(2, 2, 24)),
    "harder-form": next_of(PUSH_UP, "x12,12,12"),
    "fewer-sets": next_of(BENCH, "60x12,12 @2"),
    "technique-only": next_of(CURL, "10x25 @0", sets=1, technique="drop"),
    "more-reps": next_of(BENCH, "60x10,10,9 @2"),
}


OF_A_BLOCK: tuple[Why, ...] = ("as-planned", "lighter-week")
"""Reasons that only a block's weeks give; the tests of `block next` have their cases."""


@pytest.mark.parametrize("why", EVERY)
def test_every_reason_is_one_short_sentence(why: Why) -> None:
    target = EVERY[why]
    assert target.reason.why == why
    said = why_sentence(target, CATALOGUE.exercises[target.exercise])
    assert said.rstrip("*").endswith(".") and len(said) <= 90 and said[0].isupper() | said[0].isdigit()
    assert "None" not in said and "{" not in said


def test_no_reason_is_without_a_case() -> None:
    assert set(get_args(Why)) == {*EVERY, *OF_A_BLOCK}


@pytest.mark.parametrize(
    ("why", "said"),
    [
        ("long-gap", "30 days without it: 12 % lighter."),
        ("under-range-twice", "Most sets under 8, 2 sessions running: 6 % lighter."),
        ("step-too-big", "The next load is 20 % more: 16 in all sets first."),
        ("big-step-earned", "16 in all sets: enough for a step of 20 %."),
        ("top-of-range", "All sets reached 12 with 2 left or more."),
        ("harder-form", "At the top: more repetitions, or a harder form.*"),
    ],
)
def test_reasons_say_their_amounts(why: Why, said: str) -> None:
    """Of 60 kg 90 % is 54; 52.5 kg can be built, 12.5 % less."""
    assert why_sentence(EVERY[why], CATALOGUE.exercises[EVERY[why].exercise]) == said


def test_the_page_shows_last_time_next_time_and_why(week: Audit, targets: tuple[NextTarget, ...]) -> None:
    """One small test that prints it: `pytest -s` shows what a coach sees."""
    text = next_text(targets, week.evaluated)
    print(text)
    bench = next(line for line in text.splitlines() if line.startswith("Barbell bench press"))
    assert "60 kg, 3 x 12, 2" in bench and "62.5 kg (20 + 1.25 a" in bench and "All sets reached 12" in bench
    assert "35 s, 30 s" in text, "a hold is told in seconds"
    assert "Monday" in text and "Thursday" in text
    assert "0.95, 0.17 to 1.73; Halperin et al." in text and "Caution:" in text and "To find a load" in text
    assert "decided by the repetitions alone" in text


@pytest.mark.parametrize("width", [60, 76, 100, 300])
def test_no_line_is_wider_than_the_page(week: Audit, targets: tuple[NextTarget, ...], width: int) -> None:
    assert max(map(len, next_text(targets, week.evaluated, width).splitlines())) <= min(width, 100)


def test_the_document_is_what_its_model_reads(week: Audit, targets: tuple[NextTarget, ...]) -> None:
    document = json.loads(dumped(next_document(targets, week.evaluated, "kg", FIRST)))
    assert document["schema"] == "setwright.next/1" and len(document["lines"]) == len(targets)
    bench = document["lines"][0]
    assert bench["load"] == {"load": 62.5, "plates_a_side": [20.0, 1.25]} and bench["aims"] == [8, 8, 8]
    assert bench["reason"]["why"] == "top-of-range" and bench["reason"]["sessions"] == [FIRST.isoformat()]
    read = NextDocument.model_validate(document)
    assert read.model_dump(mode="json", by_alias=True) == document
    jsonschema.validate(document, NextDocument.model_json_schema(mode="serialization"))


def test_health_notes_stay_out(targets: tuple[NextTarget, ...]) -> None:
    cautious: dict[str, Any] = {"cautions": [{"tag": "shoulder", "said_by": "Dr Example"}], "age": 70}
    careful = audited(terms_of(days=days("mon thu", 60), client=cautious), LINES)
    for said in (next_text(targets, careful.evaluated), dumped(next_document(targets, careful.evaluated, "kg", FIRST))):
        assert "Dr Example" not in said and "shoulder" not in said.lower() and "70" not in said


def test_stalls_name_what_to_try_in_order(week: Audit) -> None:
    sessions = log_of(BENCH, *["80x8,8,8 @2"] * 4, every=7)
    text = stalls_text(stalls(week, sessions, usual_kits(), "kg"), CATALOGUE, "kg")
    print(text)
    places = [text.index(f"  {n}. ") for n in (1, 2, 3, 4)]
    assert places == sorted(places)
    assert text.index("sleep") < text.index("75 kg") < text.index("another lift") < text.index("band")
    assert "(convention)" in text
    assert "No lift stands still" in stalls_text((), CATALOGUE, "kg")


def test_what_was_done_stands_beside_what_was_planned(week: Audit, log: list[LoggedSession]) -> None:
    text = sessions_text(sessions_done(week.evaluated, log), week.evaluated, "kg")
    assert "8 / 8" in text and "2,520 kg" in text and "- / " in text
    assert "From 2 Mar" in muscles_text(muscles_done(week.evaluated, log), week.evaluated)


def test_the_chart_stands_at_its_values() -> None:
    """Points and whiskers measured back into kilograms by the two lowest ticks."""
    points = [(0.0, 100.0, 95.0, 106.0), (7.0, 102.0, 97.0, 108.0), (21.0, 105.0, 100.0, 112.0)]
    root = ET.fromstring(maximum_chart(points, "Bench <press>", "kg", "2 Mar"))
    svg = "{http://www.w3.org/2000/svg}"
    lines = [line for line in root.iter(f"{svg}line") if line.get("class") in ("axis", "grid")]
    ticks = [text for text in root.iter(f"{svg}text") if text.get("text-anchor") == "end"][: len(lines)]
    (y0, v0), (y1, v1) = (
        (float(li.get("y1", "")), float(t.text or "")) for li, t in zip(lines[:2], ticks, strict=False)
    )
    scale = (v1 - v0) / (y1 - y0)
    circles = [float(one.get("cy", "")) for one in root.iter(f"{svg}circle")]
    assert [v0 + (y - y0) * scale for y in circles] == pytest.approx([p[1] for p in points], abs=0.1)
    whiskers = [one for one in root.iter(f"{svg}line") if one.get("class") == "whisker"]
    assert [v0 + (float(w.get("y2", "")) - y0) * scale for w in whiskers] == pytest.approx(
        [p[3] for p in points], abs=0.1
    )
    across = [float(one.get("cx", "")) for one in root.iter(f"{svg}circle")]
    assert (across[1] - across[0]) * 3 == pytest.approx(across[2] - across[0], abs=0.1)
    assert "Bench <press>" in (root[0].text or "") and "105.0 (100.0-112.0)" in (root[1].text or "")


def test_a_course_is_drawn_with_all_its_sessions() -> None:
    course = maximum_course(log_of(BENCH, "80x8 @2", "82.5x8 @2", "85x6"), Entry(BENCH, 3, (6, 8), 2, 90), CATALOGUE)
    assert drawn_maximum(course, "Bench press", "kg").count('class="point"') == 3
    assert drawn_maximum(course[:1], "Bench press", "kg").count('class="whisker"') == 1


def test_a_pace_is_told_with_its_intervals_and_its_clock() -> None:
    lines = (
        "barbell-back-squat 4 reps=5-5, barbell-bench-press 4 reps=5-8, dumbbell-side-raise 4 reps=15-20",
        "barbell-romanian-deadlift 3 reps=6-8, wide-grip-pulldown 3 reps=8-12, machine-side-raise 4 reps=15-30",
    )
    audit = audited(terms_of(days=days("mon thu", 60)), lines)
    pace = client_pace(audit, simulated_log(audit.evaluated, Truth(), 4, 2))
    text = pace_text(pace)
    print(text)
    assert "[clock]" in text and "90 % interval" in text and "Checked on the last 2 sessions" in text
    assert "change within a pair" in text, "what cannot be told is named"
    assert max(map(len, text.splitlines())) <= 100
    document = json.loads(dumped(pace_document(pace)))
    assert document["schema"] == "setwright.pace/1"
    assert Clock(**document["clock"]).model_dump(exclude_none=True) == document["clock"] != {}
    assert PaceDocument.model_validate(document).held_back is not None
    few = client_pace(audit, simulated_log(audit.evaluated, Truth(), 1, 2))
    assert pace_text(few).startswith("Not enough is logged: 4 sessions")
    assert pace_document(few)["lacking"]["sessions_needed"] == 4 and pace_document(few)["clock"] == {}
    minutes = client_pace(audit, simulated_log(audit.evaluated, Truth(), 4, 2, set_ends=False))
    assert "the parts cannot be told apart" in " ".join(pace_text(minutes).split())
