"""One act, one transaction: all of its rows are written or none, and they carry one moment."""

from __future__ import annotations

import itertools
from datetime import date
from pathlib import Path

import pytest

from setwright.solver.book import opened
from setwright.solver.book.clients import add_client, brief_of, client_of, keep_brief
from setwright.solver.book.opened import open_book
from setwright.solver.book.planned import keep_week
from setwright.solver.book.session_rows import import_row
from setwright.solver.book.stamps import EMPTY, news_since
from setwright.solver.book.undone import journal_of
from setwright.solver.records.logs import paces as taken
from setwright.solver.uses.pace.client_pace import ClientPace
from tests.book.conftest import RAW

MONDAY = date(2026, 11, 30)


@pytest.fixture
def clock_that_ticks(monkeypatch: pytest.MonkeyPatch) -> None:
    """Each reading of the clock is a second after the one before."""
    seconds = itertools.count()
    monkeypatch.setattr(opened, "moment", lambda: f"2026-11-28T10:00:{next(seconds):02d}Z")


def moments(place: Path) -> dict[str, list[str]]:
    """Table -> the moments of its rows."""
    with open_book(place) as book:
        return {table: [row["made"] for row in book.rows(f"SELECT made FROM {table}")] for table in TABLES}


TABLES = ("brief", "week", "act", "change", "import")


@pytest.mark.usefixtures("clock_that_ticks")
def test_all_rows_of_a_transaction_carry_one_moment_and_the_next_has_another(place: Path) -> None:
    with open_book(place) as book:
        client = add_client(book, "M", RAW)
        with book.writing():
            keep_brief(book, client, {**RAW, "goal": "growth"}, "growth")
            keep_week(book, client, MONDAY, {})
            import_row(book, client, b"rows", ())
        keep_week(book, client, MONDAY, {})
    found = moments(place)
    assert found["brief"][1:] == found["week"][:1] == found["act"][:1] == found["change"] == found["import"]
    assert found["week"][0] < found["week"][1] == found["act"][1]


@pytest.mark.usefixtures("clock_that_ticks")
def test_an_act_and_the_note_of_it_are_told_once(place: Path) -> None:
    """An act and its note are one thing where their moments are the same; before, a second could come between."""
    with open_book(place) as book:
        client = add_client(book, "M", RAW)
        keep_brief(book, client, {**RAW, "goal": "growth"}, "growth")
        assert [news.said for news in news_since(book, client, EMPTY)] == ["brief: growth"]


def test_a_pace_is_not_kept_where_the_brief_cannot_be(place: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    class Told:
        """A pace of which only the document is asked."""

        class clock:
            @staticmethod
            def model_dump(exclude_none: bool) -> dict[str, float]:
                return {}

    def full(*rest: object) -> None:
        raise OSError("no room")

    monkeypatch.setattr(taken, "pace_document", lambda pace: {"schema": "setwright.pace/1"})
    monkeypatch.setattr(taken, "keep_brief", full)
    with open_book(place) as book:
        client = add_client(book, "M", RAW)
        told: ClientPace = Told()  # type: ignore[assignment]
        with pytest.raises(OSError, match="no room"):
            taken.take_pace(book, client, told, "pace")
        assert not book.rows("SELECT 1 FROM pace")
        assert brief_of(book, client_of(book, "M")) == brief_of(book, client)


def test_a_week_and_a_brief_of_one_transaction_are_one_act(place: Path) -> None:
    with open_book(place) as book:
        client = add_client(book, "M", RAW)
        with book.writing():
            keep_brief(book, client, {**RAW, "goal": "growth"}, "pinned")
            keep_week(book, client, MONDAY, {}, "pinned")
        (act,) = journal_of(book, client).holding
        assert sorted(kind for kind, _ in act.rows) == ["brief", "week"]
