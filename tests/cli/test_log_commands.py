"""`log` and `block` over the book: written down once, corrected in new rows, gone on with."""

from __future__ import annotations

import json
import os
import shutil
from collections.abc import Callable
from datetime import date
from pathlib import Path

import pytest
from click.testing import CliRunner, Result
from light_search import little_searches

from setwright.solver.book.clients import client_of
from setwright.solver.book.opened import open_book
from setwright.solver.book.planned import blocks, keep_week
from setwright.solver.book.sessions import sessions_of
from setwright.solver.cli.group import setwright

Run = Callable[..., Result]
MONDAY = "2026-01-05"


@pytest.fixture(scope="module")
def planned(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """A book with a client and a block of four weeks from one short day a week."""
    place = tmp_path_factory.mktemp("planned") / "book.db"

    def done(*words: str) -> None:
        result = CliRunner().invoke(setwright, [*words, "--book", str(place)], prog_name="setwright")
        assert result.exit_code == 0, result.output

    done("client", "add", "M", "1 day x 30 min, monday, dumbbells and bench, 64 years")
    done("client", "set", "@M", "--lift", "dumbbell bench press=20x10")
    with little_searches():
        done("block", "plan", "@M", "--weeks", "4", "--starts", MONDAY, "--lighter-every", "4", "--search", "quick")
    return place


@pytest.fixture(autouse=True)
def place(planned: Path, tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Path:
    """A copy of that book."""
    found = tmp_path / "book.db"
    shutil.copy(planned, found)
    found.chmod(0o600)
    monkeypatch.setenv("SETWRIGHT_BOOK", str(found))
    return found


@pytest.fixture
def lifts(run: Run) -> list[str]:
    """The block's lifts of its one session."""
    document = json.loads(run("block", "show", "@M", "--json").stdout)
    return [entry["exercise"] for entry in document["weeks"][0]["days"][0]["entries"]]


def logged(place: Path) -> int:
    """How many sessions hold."""
    with open_book(place) as book:
        return len(sessions_of(book, client_of(book, "M")))


def test_a_kept_block_is_shown_as_it_was_planned_without_health_notes(run: Run, place: Path) -> None:
    shown = run("block", "show", "@M")
    assert shown.exit_code == 0 and "4 weeks" in shown.stdout and "lighter" in shown.stdout
    with open_book(place) as book:
        (kept,) = blocks(book, client_of(book, "M"))
        written = "".join(str(tuple(row)) for row in book.rows("SELECT * FROM block"))
    assert json.loads(run("block", "show", "@M", "--json").stdout)["weeks"] == kept.document["weeks"]
    assert "64" not in json.dumps(kept.document["brief"]) and '"age"' not in written


def test_sets_typed_in_go_on_from_those_there_and_nothing_is_lost(run: Run, place: Path, lifts: list[str]) -> None:
    first = run("log", "add", "@M", f"{lifts[0]} 20x8,8 @ 2 RIR", "--on", MONDAY)
    assert first.exit_code == 0 and "1 session" in first.stderr
    assert run("log", "add", "@M", f"{lifts[0]} 20x7", f"{lifts[1]} 10x12", "--on", MONDAY).exit_code == 0
    with open_book(place) as book:
        (session,) = sessions_of(book, client_of(book, "M"))
        rows = len(book.rows("SELECT * FROM session"))
    assert [(s.exercise, s.number, s.reps) for s in session.sets] == [
        (lifts[0], 1, 8),
        (lifts[0], 2, 8),
        (lifts[0], 3, 7),
        (lifts[1], 1, 12),
    ]
    assert rows == 2, "the first entry is kept beside the one that replaces it"


def test_a_file_twice_is_written_once_and_a_change_needs_replace(run: Run, place: Path, tmp_path: Path) -> None:
    log = tmp_path / "log.csv"
    log.write_text('date,exercise,done,mood\n2026-01-05,goblet squat,"20x10,10 @ 2 RIR",good\n')
    assert "1 session" in run("log", "import", "@M", str(log)).stderr
    assert "1 there already" in run("log", "import", "@M", str(log)).stderr
    log.write_text('date,exercise,done\n2026-01-05,goblet squat,"20x10,11"\n')
    refused = run("log", "import", "@M", str(log))
    assert refused.exit_code == 2 and "--replace" in refused.stderr
    assert run("log", "import", "@M", str(log), "--replace").exit_code == 0
    assert logged(place) == 1


@pytest.mark.parametrize(
    ("words", "said"),
    [
        (["log", "add", "@M", "goblet squat"], "expected load x repetitions"),
        (["log", "add", "@M", "goblin squat 20x8"], "goblet squat"),
        (["log", "add", "@M", "goblet squat 20x8", "--on", "2999-01-01"], "2999"),
        (["log", "add", "@M", "goblet squat -20x8"], ""),
        (["log", "add", "@M", "goblet squat 20 lb x 8"], "lb"),
        (["log", "add", "@X", "goblet squat 20x8"], "no client"),
        (["log", "show", "@X"], "no client"),
        (["log", "pace", "@M", "--take"], "too little is logged"),
        (["block", "next", "@M", "--on", "2027-01-01"], "outside the block"),
    ],
)
def test_what_is_wrong_is_said_and_nothing_is_written(run: Run, place: Path, words: list[str], said: str) -> None:
    result = run(*words)
    assert result.exit_code == 2 and said in result.stderr, result.output
    assert logged(place) == 0


def test_a_file_with_one_fault_writes_nothing(run: Run, place: Path, tmp_path: Path) -> None:
    log = tmp_path / "log.csv"
    log.write_text("date,exercise,done\n2026-01-05,goblet squat,20x10\n2026-01-06,goblet squat,20x-3\n")
    result = run("log", "import", "@M", str(log))
    assert result.exit_code == 2 and "line 3" in result.stderr
    log.write_text("date,exercise,load (lb),reps\n2026-01-05,goblet squat,40,10\n")
    assert "never mixed" in run("log", "import", "@M", str(log)).stderr
    assert logged(place) == 0


def test_the_next_loads_come_from_the_log_and_a_lighter_week_is_lighter(
    run: Run, lifts: list[str], tmp_path: Path
) -> None:
    run("log", "add", "@M", f"{lifts[0]} 20x15,15,15,15 @ 3 RIR", "--on", MONDAY)

    def first_target(day: str) -> dict[str, object]:
        document = json.loads(run("block", "next", "@M", "--on", day, "--json").stdout)
        return next(line for line in document["lines"] if line["exercise"] == lifts[0])

    built, light = first_target("2026-01-12"), first_target("2026-01-26")
    assert built["load"]["load"] > 20, "all sets at the top of the range: the next load"
    assert light["load"]["load"] < 20 and light["reason"]["why"] == "lighter-week"
    text = run("block", "next", "@M", "--on", "2026-01-12", "--sheets", str(tmp_path / "cards"), "--as", "md")
    assert text.exit_code == 0, text.output
    (card,) = (tmp_path / "cards").iterdir()
    aim = built["aims"][0]
    assert f"{built['load']['load']:g} kg a dumbbell x {aim} |" in card.read_text()


def test_the_log_is_checked_against_the_week_that_was_planned(run: Run, lifts: list[str]) -> None:
    run("log", "add", "@M", f"{lifts[0]} 20x8", "leg press 100x10", "--on", "2026-01-06")
    said = run("log", "check", "@M").stdout
    assert "day off" in said.lower() or "no session" in said.lower() or "Tuesday" in said
    assert "Leg press" in said


def test_sessions_that_are_missing_are_named_up_to_a_day(run: Run, lifts: list[str]) -> None:
    run("log", "add", "@M", f"{lifts[0]} 20x8", "--on", "2026-01-12")

    def missing(*words: str) -> list[str]:
        said = run("log", "check", "@M", *words).stdout.splitlines()
        return [line[:10] for line in said if "is not in the log" in line]

    assert missing("--on", "2026-01-19") == ["2026-01-05"]
    assert missing("--on", "2026-01-20") == ["2026-01-05", "2026-01-19"]
    assert missing("--on", "2026-01-20", "--from", "2026-01-06") == ["2026-01-19"]
    assert missing() == missing("--on", "2999-01-01") == ["2026-01-05", "2026-01-19", "2026-01-26"], "up to today"


def test_a_week_that_was_kept_without_a_block_is_checked_too(run: Run, lifts: list[str], tmp_path: Path) -> None:
    week = tmp_path / "week.json"
    assert run("replan", "@M", "--avoid", lifts[0], "--week-of", MONDAY, "--json", "-o", str(week)).exit_code == 0
    assert run("client", "add", "N", "1 day x 30 min, monday, dumbbells and bench").exit_code == 0
    with open_book(Path(os.environ["SETWRIGHT_BOOK"])) as book:
        document = json.loads(week.read_bytes())
        keep_week(book, client_of(book, "N"), date(2026, 1, 5), document, "kept by hand")
    said = run("log", "check", "@N", "--on", "2026-01-20").stdout
    assert "2026-01-05" in said and "is not in the log" in said
    run("log", "add", "@N", "leg press 100x10", "--on", MONDAY)
    assert "Leg press" in run("log", "check", "@N", "--on", "2026-01-20").stdout


def test_the_log_is_checked_against_a_week_as_it_was_replanned(run: Run, lifts: list[str]) -> None:
    run("log", "add", "@M", f"{lifts[0]} 20x8", "--on", "2026-01-12")
    assert "is not in the week" not in run("log", "check", "@M").stdout
    assert run("replan", "@M", "--avoid", lifts[0], "--week-of", "2026-01-12").exit_code == 0
    assert "is not in the week (1 set done)" in run("log", "check", "@M").stdout


def test_one_side_s_sets_and_body_weight_can_be_typed(run: Run, place: Path) -> None:
    result = run("log", "add", "@M", "pull-up bw x 8, 7", "plank 40 s, 30 s", "--on", MONDAY)
    assert result.exit_code == 0, result.output
    assert logged(place) == 1


def test_a_week_replanned_is_kept_and_is_the_one_that_is_next(run: Run, place: Path, lifts: list[str]) -> None:
    result = run("replan", "@M", "--avoid", lifts[0], "--week-of", "2026-01-12")
    assert result.exit_code == 0, result.output
    assert "written down for @M: the week of 2026-01-12" in result.stderr
    assert f"without {lifts[0]}" in run("client", "show", "@M").stdout

    def next_lifts(day: str) -> list[str]:
        return [
            line["exercise"] for line in json.loads(run("block", "next", "@M", "--on", day, "--json").stdout)["lines"]
        ]

    assert lifts[0] not in next_lifts("2026-01-12")
    assert lifts[0] in next_lifts("2026-01-19"), "the weeks after it go on as they were"
    again = run("replan", "@M", "--avoid", lifts[1], "--week-of", "2026-01-12")
    assert again.exit_code == 0, again.output
    assert not {lifts[0], lifts[1]} & set(next_lifts("2026-01-12")), "replanned from the week as it stands"


def test_the_week_of_today_is_looked_at_by_code_without_health_notes(
    run: Run, lifts: list[str], tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    class Day(date):
        @classmethod
        def today(cls) -> Day:
            return cls(2026, 1, 13)

    monkeypatch.setattr("setwright.solver.cli.opened_week.date", Day)
    audited = run("audit", "@M", "--json")
    assert audited.exit_code == 0, audited.output
    assert "week 2 of the block" in audited.stderr
    written = run("sheet", "@M", "--as", "md,json", "-o", str(tmp_path / "sheets"))
    assert written.exit_code == 0, written.output
    said = "".join(path.read_text() for path in (tmp_path / "sheets").iterdir())
    document = json.loads(next((tmp_path / "sheets").glob("*.json")).read_text())
    assert lifts[0] in said and "age" not in document["brief"]["client"]
    monkeypatch.setattr(Day, "today", classmethod(lambda cls: cls(2027, 1, 13)))
    assert run("audit", "@M").exit_code == 2
