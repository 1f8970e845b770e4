"""The page of all clients and a client's page: every subject read once, lifts that stand still among what is due."""

from __future__ import annotations

from collections.abc import Iterator
from contextlib import contextmanager
from dataclasses import replace
from datetime import date, timedelta
from typing import Any

import pytest
from in_book import clients

from setwright.catalogue.load import load_catalogue
from setwright.solver.book.at_once.held import held
from setwright.solver.book.clients import Client, add_client, changes, keep_brief
from setwright.solver.book.opened import Book
from setwright.solver.book.planned import blocks, keep_block, keep_week, kept_weeks
from setwright.solver.book.sessions import log_sessions, sessions_of
from setwright.solver.book.undone import take_back
from setwright.solver.log.values import LoggedSession, LoggedSet
from setwright.solver.records.standing import standing_of, standings
from setwright.solver.sheets.screen.over_time.due import StandingStill
from tests.book.conftest import RAW, session

MONDAY = date(2026, 5, 4)
ALWAYS = (date.min, date.max)
LINE: dict[str, Any] = {"exercise": "barbell-back-squat", "sets": 2, "reps": [6, 10], "rir": 2, "rest_seconds": 120}


def block(weeks: int, **kinds: str) -> dict[str, Any]:
    """A block of so many weeks of one squat; the kind of a week by its number, build where none is said."""
    days = [{"weekday": "mon", "minutes": 40, "entries": [LINE]}]
    starts = [(MONDAY + timedelta(weeks=week)).isoformat() for week in range(weeks)]
    return {
        "weeks": [{"starts": s, "kind": kinds.get(f"w{n}", "build"), "days": days} for n, s in enumerate(starts, 1)]
    }


@contextmanager
def queries(monkeypatch: pytest.MonkeyPatch) -> Iterator[list[str]]:
    """The queries that are made inside."""
    asked: list[str] = []
    rows = Book.rows

    def counted(self: Book, query: str, *values: object) -> list[Any]:
        asked.append(" ".join(query.split()))
        return rows(self, query, *values)

    with monkeypatch.context() as patch:
        patch.setattr(Book, "rows", counted)
        yield asked


def filled(book: Book, count: int) -> list[Client]:
    found = [add_client(book, f"C{number:02}", RAW) for number in range(count)]
    for client in found:
        keep_block(book, client, MONDAY, MONDAY + timedelta(days=20), block(3))
        keep_week(book, client, MONDAY, {"days": []}, "found")
        log_sessions(book, client, [session(4), session(7, 2)])
    return found


def test_a_hundred_clients_take_as_many_queries_as_one(book: Book, monkeypatch: pytest.MonkeyPatch) -> None:
    counts = []
    for more in (1, 9):
        filled_before = len(clients(book))
        for client in [add_client(book, f"D{filled_before + n:02}", RAW) for n in range(more)]:
            keep_week(book, client, MONDAY, {"days": []})
        with queries(monkeypatch) as asked:
            assert len(standings(book, load_catalogue(), MONDAY)) == filled_before + more
        counts.append(len(asked))
    assert counts[0] == counts[1] <= 6


def test_a_client_s_subjects_are_read_once_each(book: Book, monkeypatch: pytest.MonkeyPatch) -> None:
    client = filled(book, 2)[1]
    with queries(monkeypatch) as asked:
        found = standing_of(book, client, load_catalogue(), MONDAY)
    assert len(set(asked)) == len(asked)
    assert len(asked) <= 6 and (found.code, found.sessions) == ("C01", 2)


def test_what_is_read_at_once_is_what_is_read_one_by_one(book: Book) -> None:
    first, second = filled(book, 2)
    keep_block(book, first, MONDAY, MONDAY + timedelta(days=6), block(1))
    log_sessions(book, first, [replace(session(4), note="anew")], replace=True)
    keep_brief(book, second, {**RAW, "goal": "growth"}, "another goal")
    keep_week(book, second, MONDAY, {"days": [], "n": 2}, "again")
    take_back(book, second)
    take_back(book, second)
    keep_brief(book, second, {**RAW, "goal": "efficiency"}, "a third goal")
    at_once = held(book, ALWAYS)
    assert [of.client for of in at_once] == list(clients(book))
    for of in at_once:
        assert of.weeks == kept_weeks(book, of.client) and of.blocks == blocks(book, of.client)
        assert of.sessions == sessions_of(book, of.client) and of.changes == changes(book, of.client)
        assert held(book, ALWAYS, of.client) == (of,)
    far = (date(2030, 1, 7), date(2030, 1, 14))
    assert all(week.document == {} for of in held(book, far) for week in of.weeks)


# ---- lifts that stand still


def squat(day: date, load: float, reps: int = 8) -> LoggedSession:
    return LoggedSession(day, tuple(LoggedSet("barbell-back-squat", n, reps, load=load, rir=2) for n in (1, 2)), "kg")


def weekly(count: int, rise: float = 0.0) -> list[LoggedSession]:
    """A session a week from the first Monday on, the load rising by so much each time."""
    return [squat(MONDAY + timedelta(weeks=week), 80.0 + rise * week) for week in range(count)]


def due_stalls(book: Book, client: Client, today: date) -> tuple[StandingStill, ...]:
    return standing_of(book, client, load_catalogue(), today).due.stalls


def test_a_lift_that_has_not_moved_is_due_and_one_that_rises_is_not(book: Book, client: Client) -> None:
    today = MONDAY + timedelta(weeks=6)
    keep_block(book, client, MONDAY, MONDAY + timedelta(days=55), block(8))
    log_sessions(book, client, weekly(6))
    (stall,) = due_stalls(book, client, today)
    assert (stall.exercise, stall.name) == ("barbell-back-squat", load_catalogue().exercises[stall.exercise].name)
    assert MONDAY <= stall.since < today
    assert due_stalls(book, client, today + timedelta(weeks=9)) == (), "outside the block nothing is gone on with"
    rising = add_client(book, "R", RAW)
    keep_block(book, rising, MONDAY, MONDAY + timedelta(days=55), block(8))
    log_sessions(book, rising, weekly(6, rise=5.0))
    assert due_stalls(book, rising, today) == ()


def test_a_lighter_week_is_no_standing_still_and_loads_of_two_units_say_nothing(book: Book, client: Client) -> None:
    today = MONDAY + timedelta(weeks=6)
    lighter = {f"w{number}": "lighter" for number in range(3, 8)}
    keep_block(book, client, MONDAY, MONDAY + timedelta(days=55), block(8, **lighter))
    log_sessions(book, client, weekly(6))
    assert due_stalls(book, client, today) == (), "two usual weeks are too few to tell"
    pounds = add_client(book, "L", RAW)
    keep_block(book, pounds, MONDAY, MONDAY + timedelta(days=55), block(8))
    log_sessions(book, pounds, [replace(one, unit="lb") for one in weekly(6)])
    assert due_stalls(book, pounds, today) == ()
