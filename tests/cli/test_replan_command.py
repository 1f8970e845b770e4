"""`replan` on the command line: days and words understood, all faults at once, documents and exit codes."""

from __future__ import annotations

import json
from collections.abc import Callable
from pathlib import Path
from typing import Any

import pytest
from click.testing import Result

from setwright.catalogue.load import load_catalogue
from setwright.solver.auditing import audit
from setwright.solver.brief.parsed_brief import parse_brief
from setwright.solver.foreign.foreign_week import read_any
from setwright.solver.rulebook import resolve
from setwright.solver.sheets.common.json_values import dumped
from setwright.solver.sheets.document.changed_week import changed_week_document
from setwright.solver.sheets.document.week_reader import read_week

pytestmark = pytest.mark.usefixtures("little")
Run = Callable[..., Result]
TABLE = (
    "day,exercise,sets,reps,RIR,rest\n"
    "mon,Barbell bench press,3,6-10,2,120\n"
    "mon,Chest-supported dumbbell row,3,8-12,1,90\n"
    "mon,Dumbbell side raise,3,12-15,1,60\n"
    "wed,Barbell back squat,3,6-8,2,120\n"
    "wed,Barbell Romanian deadlift,3,6-10,2,120\n"
    "wed,Wide-grip pulldown,3,8-12,1,90\n"
    "fri,Leg press,3,8-12,2,90\n"
    "fri,Machine chest press,3,8-12,1,90\n"
    "fri,Dumbbell curl,3,8-12,1,60\n"
    "fri,Seated leg curl,3,10-15,1,60\n"
)


@pytest.fixture
def week(tmp_path: Path) -> Path:
    """A week's file of three sessions, made by hand, with a load that its coach wrote into Monday."""
    catalogue = load_catalogue()
    days = [{"weekday": day, "minutes": 45} for day in ("mon", "wed", "fri")]
    read = read_any(TABLE.encode(), "t", catalogue, parse_brief({"days": days}, catalogue, "t"))
    found = audit(resolve(read.parsed.brief, catalogue), read.week)
    assert not found.broken, found.broken
    document = changed_week_document({}, read.parsed, found)
    document["days"][0]["entries"][0]["load"] = "60 kg"
    path = tmp_path / "week.json"
    path.write_text(dumped(document))
    return path


def replanned(run: Run, week: Path, *options: str) -> dict[str, Any]:
    found = run("replan", str(week), *options, "--json")
    assert found.exit_code == 0, found.output
    document: dict[str, Any] = json.loads(found.stdout)
    parsed, lines = read_week(document, load_catalogue())
    assert not audit(resolve(parsed.brief, load_catalogue()), lines).broken
    return document


def test_a_missed_session_as_text_and_as_a_week(run: Run, week: Path, tmp_path: Path) -> None:
    text = run("replan", str(week), "--missed", "wed")
    assert text.exit_code == 0, text.output
    assert text.stdout.startswith("Monday is done; Wednesday is missed.")
    for said in ("3 lines of 9 sets let go", "No rule is broken.", "Nothing is chased", "Below their band"):
        assert said in " ".join(text.stdout.split())
    new = tmp_path / "new.json"
    assert run("replan", str(week), "--missed", "wed", "-o", str(new)).exit_code == 0
    document, before = json.loads(new.read_text()), json.loads(week.read_text())
    assert dumped(document["days"][0]) == dumped(before["days"][0])
    assert any(line["swaps"] for line in document["days"][2]["entries"])
    assert document["days"][1]["entries"] == [] and document["brief"]["days"][1]["missed"] is True
    assert (document["replan"]["done"], document["replan"]["missed"]) == (["mon"], ["wed"])
    assert document["replan"]["changed_lines"] <= 3
    assert "wed: missed" in run("audit", str(new)).stdout.lower().replace("wednesday", "wed")


def test_a_replanned_week_is_replanned_again_and_handed_out(run: Run, week: Path, tmp_path: Path) -> None:
    new = tmp_path / "new.json"
    assert run("replan", str(week), "--missed", "wed", "-o", str(new)).exit_code == 0
    again = replanned(run, new, "--today", "fri=30")
    assert again["replan"]["done"] == ["mon"] and again["replan"]["missed"] == ["wed"]
    assert again["days"][2]["seconds"] <= 30 * 60
    both = run("replan", str(new), "--done", "wed", "--today", "fri=30")
    assert both.exit_code == 2 and "wed is missed in the week already" in both.stderr
    assert run("sheet", str(new), "--as", "md", "-o", str(tmp_path)).exit_code == 0


def test_fewer_minutes_with_and_without_their_day(run: Run, week: Path) -> None:
    said = replanned(run, week, "--today", "wed=30")
    assert said["brief"]["days"][1]["minutes"] == 30 and said["replan"]["done"] == ["mon"]
    assert replanned(run, week, "--today", "30", "--done", "mon")["days"] == said["days"]
    assert replanned(run, week, "--today", "30", "--on", "wednesday", "--done", "mon")["days"] == said["days"]
    unsaid = run("replan", str(week), "--today", "30")
    assert unsaid.exit_code == 2 and "write DAY=30" in unsaid.stderr


def test_a_place_may_be_said_by_dates(run: Run, week: Path) -> None:
    """7 January 2026 is a Wednesday (ISO 8601)."""
    away = replanned(run, week, "--done", "mon", "--kit", "hotel", "--from", "2026-01-07", "--to", "2026-01-08")
    assert away["days"] == replanned(run, week, "--done", "mon", "--kit", "hotel", "--on", "wed")["days"]


def test_stations_places_sore_muscles_and_lifts(run: Run, week: Path) -> None:
    taken = replanned(run, week, "--taken", "leg press", "--on", "fri", "--done", "mon,wed")
    assert taken["brief"]["days"][2]["without"] == ["leg-press"]
    assert "leg-press" not in {line["exercise"] for line in taken["days"][2]["entries"]}
    curl = replanned(run, week, "--taken", "dumbbell curl", "--done", "mon,wed")
    assert curl["brief"]["days"][2]["avoid"] == ["dumbbell-curl"]
    sore = replanned(run, week, "--sore", "quads", "--done", "mon")
    assert [day.get("rested") for day in sore["brief"]["days"]] == [None, ["quads"], None]
    away = replanned(run, week, "--kit", "hotel", "--missed", "wed")
    assert [day.get("equipment") for day in away["brief"]["days"]] == [None, None, "hotel-gym"]
    pinned = replanned(run, week, "--pin", "hack squat@fri", "--avoid", "leg press", "--done", "mon,wed")
    names = {line["exercise"] for line in pinned["days"][2]["entries"]}
    assert "hack-squat" in names and "leg-press" not in names


def test_all_faults_at_once_each_with_the_nearest_word(run: Run, week: Path) -> None:
    options = ("--done", "mno", "--missed", "fryday", "--today", "wed=5", "--taken", "leg pres", "--kit", "hotl gym")
    found = run("replan", str(week), *options, "--sore", "quadz", "--pin", "hack squt@sun", "--avoid", "plnk")
    assert found.exit_code == 2 and found.stdout == ""
    lines = found.stderr.splitlines()
    for option, near in (
        ("--today", "10 to 240"),
        ("--missed", "did you mean 'friday'?"),
        ("--done", "did you mean 'mon'?"),
        ("--taken", "did you mean 'leg press'?"),
        ("--kit", "did you mean 'hotel gym'?"),
        ("--sore", "did you mean 'quad'?"),
        ("--pin", "did you mean 'hack squat'?"),
        ("--pin", "the week has no day 'sun'"),
        ("--avoid", "did you mean 'plank'?"),
    ):
        assert any(line.startswith(option) and near in line for line in lines), (option, found.stderr)


@pytest.mark.parametrize(
    ("options", "said"),
    [
        (("--done", "mon,wed", "--missed", "wed"), "wed is missed"),
        (("--missed", "wed", "--today", "wed=30"), "wed is done or missed"),
        (("--done", "mon", "--taken", "cable", "--on", "mon"), "name a day that is left: wed, fri"),
        (("--done", "mon", "--pin", "plank@mon"), "mon is done or missed"),
        (("--done", "mon,wed,fri"), "nothing is left to plan"),
        (("--missed", "fri", "--kit", "hotel"), "nothing is left to plan"),
        (("--missed", "mon,wed", "--missed", "fri"), "every session is missed"),
        (("--done", "mon"), "nothing has happened"),
        ((), "nothing has happened"),
        (("--missed", "wed", "--pin", "plank", "--avoid", "plank"), "is under --avoid too"),
        (("--kit", "hotel", "--from", "2026-01-09", "--to", "2026-01-07"), "comes after"),
        (("--done", "mon", "--kit", "hotel", "--from", "2026-01-05"), "no session that is left"),
        (("--kit", "hotel", "--on", "fri", "--from", "2026-01-09"), "--on names the day already"),
    ],
)
def test_what_cannot_be_is_refused(run: Run, week: Path, options: tuple[str, ...], said: str) -> None:
    found = run("replan", str(week), *options)
    assert found.exit_code == 2 and said in found.stderr, found.output


def test_the_last_session_missed_leaves_nothing_to_plan_and_says_what_is_below(run: Run, week: Path) -> None:
    found = run("replan", str(week), "--missed", "fri")
    assert found.exit_code == 0, found.output
    assert "No session is left: nothing is planned." in found.stdout and "Below their band" in found.stdout


def test_what_is_owned_at_home_is_said_to_be_taken_along(run: Run, week: Path) -> None:
    document = json.loads(week.read_text())
    document["brief"]["owned"]["safeties"] = True
    week.write_text(json.dumps(document))
    assert "safeties of the brief's `owned`" in run("replan", str(week), "--kit", "hotel", "--missed", "wed").stderr
    assert "owned" not in run("replan", str(week), "--missed", "wed").stderr


def test_a_clash_ends_as_it_does_for_a_brief(run: Run, week: Path) -> None:
    options = ("--done", "mon,wed", "--pin", "leg press", "--taken", "leg press")
    found = run("replan", str(week), *options)
    assert found.exit_code == 3 and "Leg press pinned" in found.stdout
    document = json.loads(run("replan", str(week), *options, "--json").stdout)
    assert document["schema"] == "setwright.clash/1"


def test_sessions_without_weekdays_are_named_by_number(run: Run, week: Path, tmp_path: Path) -> None:
    document = json.loads(week.read_text())
    document["brief"]["any_order"] = True
    for day in (*document["brief"]["days"], *document["days"]):
        day["weekday"] = None
    path = tmp_path / "numbered.json"
    path.write_text(json.dumps(document))
    found = replanned(run, path, "--missed", "2")
    assert found["replan"]["missed"] == ["session 2"] and found["days"][0] == document["days"][0]
    pinned = run("replan", str(path), "--missed", "2", "--pin", "hack squat@3")
    assert pinned.exit_code == 2 and "have no weekdays" in pinned.stderr
