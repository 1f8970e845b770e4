"""`client` and `book`: people written down, changed, shown, handed out and erased, and planned as @CODE."""

from __future__ import annotations

import json
from collections.abc import Callable
from pathlib import Path

import pytest
from click.testing import Result

pytestmark = pytest.mark.usefixtures("little")
Run = Callable[..., Result]
PHRASE = "3 days x 40 min, grow delts, 64 years, bad knees"


@pytest.fixture(autouse=True)
def place(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Path:
    """A book of the test's own."""
    found = tmp_path / "book.db"
    monkeypatch.setenv("SETWRIGHT_BOOK", str(found))
    return found


@pytest.fixture
def added(run: Run) -> None:
    """An invented client with health notes."""
    assert run("client", "add", "M", PHRASE).exit_code == 0


def test_a_client_is_planned_as_the_brief_would_be(run: Run, added: None) -> None:
    by_code = run("week", "@m", "--search", "quick", "--json")
    by_phrase = run("week", PHRASE, "--search", "quick", "--json")
    assert by_code.exit_code == 0, by_code.stderr
    one, other = json.loads(by_code.stdout), json.loads(by_phrase.stdout)
    assert one["days"] == other["days"]
    assert one["brief"]["client"]["code"] == "M", "the sheets say whose week it is"
    assert "Age 64" in by_code.stderr, "the coach is told of cautions as with a brief"


def test_what_is_shown_holds_no_health_note(run: Run, added: None) -> None:
    shown = [run("client", "list"), run("client", "show", "@M"), run("client", "show", "@M", "--json")]
    for result in shown:
        assert result.exit_code == 0
        assert "64" not in result.stdout and "knee" not in result.stdout
    assert "3 days x 40 min" in shown[0].stdout


def test_a_new_brief_keeps_what_belongs_to_the_person(run: Run, added: None) -> None:
    assert run("client", "set", "@M", "--experience", "advanced").exit_code == 0
    result = run("client", "set", "@M", "2 days x 30 min, hotel gym")
    assert result.exit_code == 0 and "version 3" in result.stderr
    assert "Age 64" in result.stderr, "age and cautions stay"
    shown = run("client", "show", "@M").stdout
    assert "2 days x 30 min" in shown and "Advanced" in shown
    assert "experience advanced" in shown and "a new brief" in shown
    assert "64" not in shown


@pytest.mark.parametrize(
    ("arguments", "said"),
    [
        (["client", "show", "@Mm"], "did you mean 'M'"),
        (["week", "@Mm"], "did you mean 'M'"),
        (["client", "add", "m", "2 days x 30 min"], "in the book already"),
        (["client", "add", "N", "2 days x 30 mni"], ""),
        (["client", "set", "@M"], "nothing is said to change"),
        (["client", "set", "@M", "--lift", "squat"], "expected LIFT=SET"),
        (["client", "set", "@M", "--lift", "sqwat=80x8"], "did you mean 'squat'"),
        (["client", "set", "@M", "--lift", "squat=80x40"], ""),
        (["client", "set", "@M", "--experience", "expert"], "novice"),
        (["client", "rest", "@M", "--back", "--since", "2026-05-04"], "leave one of them out"),
        (["client", "lst"], "did you mean 'list'"),
        (["book", "erase", "@M"], "--yes"),
        (["book", "export", "@X", "folder"], "no client"),
    ],
)
def test_what_is_wrong_is_said_and_nothing_is_changed(
    run: Run, added: None, place: Path, arguments: list[str], said: str
) -> None:
    before = run("client", "show", "@M", "--json").stdout
    result = run(*arguments)
    assert result.exit_code == 2 and said in result.stderr
    assert run("client", "show", "@M", "--json").stdout == before
    assert run("client", "list").stdout.count("@") == 1


def test_what_is_known_of_a_lift_stays_under_a_new_brief_and_takes_the_place_of_what_was_known(
    run: Run, added: None, tmp_path: Path
) -> None:
    assert run("client", "set", "@M", "--lift", "squat=100x5", "--lift", "bench press=80x8, 2 left").exit_code == 0
    assert run("client", "set", "@M", "--lift", "barbell back squat=max 130").exit_code == 0
    assert run("client", "set", "@M", "2 days x 45 min").exit_code == 0
    run("book", "export", "@M", str(tmp_path / "out"))
    lifts = json.loads((tmp_path / "out" / "client.json").read_text())["briefs"][-1]["document"]["lifts"]
    assert lifts["barbell-back-squat"]["maximum"] == 130
    assert lifts["barbell-bench-press"]["load"] == 80


def test_rest_leaves_a_client_out_of_the_list_until_back(run: Run, added: None) -> None:
    assert "since 2026-05-04" in run("client", "rest", "@M", "--since", "2026-05-04").stderr
    assert "No client" in run("client", "list").stdout
    assert "at rest since 2026-05-04" in run("client", "list", "--resting").stdout
    run("client", "rest", "@M", "--back")
    assert "@M" in run("client", "list").stdout


def test_the_book_is_backed_up_checked_handed_out_and_a_client_erased(
    run: Run, added: None, place: Path, tmp_path: Path
) -> None:
    assert run("book", "where").stdout.strip() == str(place)
    assert "all is well" in run("book", "check").stdout
    copy = tmp_path / "copy.db"
    assert run("book", "backup", str(copy)).exit_code == 0
    assert run("book", "backup", str(copy)).exit_code == 2
    assert run("book", "export", "@M", str(tmp_path / "out")).exit_code == 0
    assert {path.name for path in (tmp_path / "out").iterdir()} == {"client.json", "sets.csv", "health.json"}
    erased = run("book", "erase", "@M", "--yes")
    assert erased.exit_code == 0 and "cannot reach" in erased.stderr
    assert "No client" in run("client", "list").stdout
    assert "@M" in run("client", "list", "--book", str(copy)).stdout


def test_a_book_that_others_can_read_is_refused_loudly(run: Run, added: None, place: Path) -> None:
    place.chmod(0o644)
    for command in (["client", "list"], ["week", "@M"], ["book", "check"]):
        result = run(*command)
        assert result.exit_code == 1 and "chmod 600" in result.stderr


def test_a_unit_is_not_changed_under_logged_sets(run: Run, added: None, place: Path) -> None:
    from datetime import date

    from setwright.solver.book.clients import client_of
    from setwright.solver.book.opened import open_book
    from setwright.solver.book.sessions import log_sessions
    from setwright.solver.log.values import LoggedSession, LoggedSet

    with open_book(place) as book:
        done = LoggedSession(date(2026, 5, 4), (LoggedSet("barbell-back-squat", 1, 8, 80.0),))
        log_sessions(book, client_of(book, "M"), [done])
    result = run("client", "set", "@M", "--unit", "lb")
    assert result.exit_code == 2 and "never mixed" in result.stderr


def test_the_last_acts_on_a_client_are_taken_back_one_by_one_and_done_again(run: Run, added: None) -> None:
    run("client", "set", "@M", "--experience", "advanced", "--age", "65")
    run("client", "set", "@M", "2 days x 30 min, hotel gym")
    listed = run("book", "undo", "@M", "--list").stdout
    assert [line[12:] for line in listed.splitlines()] == ["brief: a new brief", "brief: experience advanced"]
    assert "taken back: brief: a new brief" in run("book", "undo", "@M").stderr
    assert "3 days x 40 min" in run("client", "show", "@M").stdout
    assert run("book", "undo", "@M").exit_code == 0
    assert "Intermediate" in run("client", "show", "@M").stdout
    assert run("book", "undo", "@M").exit_code == 2
    for _ in range(2):
        assert run("book", "undo", "@M", "--again").exit_code == 0
    assert "2 days x 30 min" in run("client", "show", "@M").stdout
    assert run("book", "undo", "@M", "--again").exit_code == 2
    assert run("book", "undo", "@M", "--again", "--list").exit_code == 2
