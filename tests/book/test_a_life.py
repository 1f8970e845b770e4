"""Twelve weeks of an invented client from an empty book: block, log, travel, a missed week, a stall, a return."""

from __future__ import annotations

import json
import re
from collections.abc import Callable, Mapping
from datetime import date
from pathlib import Path
from typing import Any

import pytest
from click.testing import CliRunner
from light_search import little_searches

from setwright.catalogue.load import load_catalogue
from setwright.solver.book.clients import brief_of, client_of
from setwright.solver.book.opened import Book, open_book
from setwright.solver.book.planned import blocks
from setwright.solver.book.sessions import sessions_of
from setwright.solver.cli.group import setwright
from setwright.solver.records.kept_blocks import read_kept
from setwright.solver.sheets.document.progress.log_model import log_document
from setwright.solver.uses.blocks.block import Block
from tests.book.simulated_client import SimulatedClient

CATALOGUE = load_catalogue()
FIRST, SECOND = "2026-01-05", "2026-03-09"
AWAY = "2026-02-02..2026-02-08 hotel-gym 2x25"
MISSED = 3
"""The week in which nothing is done."""
STILL = "wide-grip-pulldown"

Run = Callable[..., str]


class Life:
    """What twelve weeks left behind."""

    def __init__(self, place: Path, folder: Path) -> None:
        self.place, self.folder = place, folder
        self.client = SimulatedClient(CATALOGUE)
        self.said: dict[str, str] = {}

    def run(self, *words: str, code: int = 0) -> str:
        """What a command says; it must end with this code."""
        result = CliRunner().invoke(setwright, [*words, "--book", str(self.place)], prog_name="setwright")
        assert result.exit_code == code, f"{words}: {result.output}"
        return result.stdout + result.stderr

    def document(self, *words: str) -> dict[str, Any]:
        """The JSON that a command prints."""
        result = CliRunner().invoke(setwright, [*words, "--json", "--book", str(self.place)], prog_name="setwright")
        assert result.exit_code == 0, result.output
        found: dict[str, Any] = json.loads(result.stdout)
        return found

    def train(self, week: Mapping[str, Any]) -> None:
        """Ask what is next, do the week's sessions, import them from a file, and once more by mistake."""
        after = self.document("block", "next", "@M", "--on", week["starts"])
        targets = {(line["day"] - 1, line["exercise"]): line for line in after["lines"]}
        done = [self.client.session(week, day, targets) for day, d in enumerate(week["days"]) if d["entries"]]
        file = self.folder / f"{week['starts']}.json"
        file.write_text(json.dumps(log_document(done)))
        self.run("log", "import", "@M", str(file))
        assert f"{len(done)} there already" in self.run("log", "import", "@M", str(file))


@pytest.fixture(scope="module")
def life(tmp_path_factory: pytest.TempPathFactory) -> Life:
    """The twelve weeks, played."""
    folder = tmp_path_factory.mktemp("life")
    life = Life(folder / "book.db", folder)
    with little_searches():
        _played(life)
    return life


def _played(life: Life) -> None:
    life.run("client", "add", "M", "3 days x 40 min, grow delts, novice, 61 years")
    life.run("block", "plan", "@M", "--weeks", "6", "--starts", FIRST, "--travel", AWAY, "--search", "quick")
    first = life.document("block", "show", "@M", "--on", FIRST)
    lifts = {entry["exercise"] for day in first["weeks"][0]["days"] for entry in day["entries"]}
    life.client.standing_still = frozenset(lifts & {STILL}) or frozenset(sorted(lifts)[:1])
    for week in first["weeks"]:
        if week["number"] != MISSED:
            life.train(week)
    life.said["next"] = life.run("block", "next", "@M", "--on", "2026-02-09")
    life.said["check"] = life.run("log", "check", "@M")
    life.said["pace"] = life.run("log", "pace", "@M", "--on", FIRST, "--take")
    life.run("block", "plan", "@M", "--weeks", "6", "--starts", SECOND, "--break", "3", "--search", "quick")
    second = life.document("block", "show", "@M", "--on", SECOND)
    for week in second["weeks"][:2]:
        life.train(week)


def kept(book: Book) -> list[Block]:
    """The client's blocks, audited anew with the health notes."""
    client = client_of(book, "M")
    return [read_kept(book, client, found.document, CATALOGUE) for found in blocks(book, client)]


@pytest.mark.slow
def test_every_week_s_audit_is_empty(life: Life) -> None:
    with open_book(life.place) as book:
        weeks = [week for block in kept(book) for week in block.weeks]
    assert len(weeks) == 12
    for week in weeks:
        assert week.audit is not None and not week.audit.broken
        assert all(s <= 60 * d.minutes for s, d in zip(week.seconds, week.audit.evaluated.resolved.days, strict=False))


@pytest.mark.slow
def test_the_kinds_of_weeks_are_those_of_the_calendar(life: Life) -> None:
    with open_book(life.place) as book:
        first, second = kept(book)
    assert [week.kind for week in first.weeks] == ["build", "build", "build", "build", "travel", "lighter"]
    assert second.weeks[0].kind == "return"
    usual = next(week for week in second.weeks if week.kind == "build")
    assert second.weeks[0].sets <= 0.7 * usual.sets, "a return starts at about half"


@pytest.mark.slow
def test_nothing_is_lost_and_nothing_is_there_twice(life: Life) -> None:
    with open_book(life.place) as book:
        sessions = sessions_of(book, client_of(book, "M"))
        (held,) = book.rows("SELECT count(*) FROM session")[0]
    assert held == len(sessions) == len({session.on for session in sessions})
    assert not any(date(2026, 1, 19) <= session.on < date(2026, 1, 26) for session in sessions), "the missed week"


@pytest.mark.slow
def test_repetitions_or_loads_rise_week_by_week_but_for_the_lift_that_stands_still(life: Life) -> None:
    with open_book(life.place) as book:
        before = [s for s in sessions_of(book, client_of(book, "M")) if s.on < date(2026, 2, 2)]
    lifts = {s.exercise for session in before for s in session.sets if s.load} - life.client.standing_still
    asked = {}
    for lift in lifts:
        found = [(s.load, s.reps) for session in before for s in session.sets if (s.exercise, s.number) == (lift, 1)]
        asked[lift] = found == sorted(found)
    assert all(asked.values()), "first sets never go back while strength rises"


@pytest.mark.slow
def test_a_return_begins_lighter_than_the_weeks_before_the_break(life: Life) -> None:
    with open_book(life.place) as book:
        sessions = sessions_of(book, client_of(book, "M"))
    before = [s for s in sessions if s.on < date(2026, 2, 2)]
    back = [s for s in sessions if s.on >= date.fromisoformat(SECOND)][:3]
    loads = {
        lift: max(s.load for session in before for s in session.sets if s.exercise == lift and s.load)
        for lift in {s.exercise for session in before for s in session.sets if s.load}
    }
    again = [(s.exercise, s.load) for session in back for s in session.sets if s.exercise in loads and s.load]
    assert again and all(load < loads[lift] for lift, load in again)


@pytest.mark.slow
def test_what_is_next_says_last_time_next_time_and_why(life: Life) -> None:
    said = life.said["next"]
    assert "Last time" in said and "Why" in said and "lighter week" in said.lower()
    assert "A lift stands still where" in said, "the lift that does not grow is seen"
    assert not re.search(r"\b61\b", life.said["next"] + life.said["check"]), "the age is nobody else's"


@pytest.mark.slow
def test_the_pace_is_taken_into_the_brief_and_the_second_block_keeps_it(life: Life) -> None:
    with open_book(life.place) as book:
        client = client_of(book, "M")
        assert brief_of(book, client)["clock"]["spare"] > 0, "sessions took a tenth longer than planned"
        first, second = kept(book)
    assert client.version == 2
    assert max(second.base.evaluated.seconds(day) for day in range(3)) <= 40 * 60
    assert second.base.stimulus < first.base.stimulus, "a slower client gets less into the same minutes"
