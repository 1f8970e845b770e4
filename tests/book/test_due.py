"""What is due for a client: told from weeks, blocks and sessions as they are kept."""

from __future__ import annotations

from datetime import date, timedelta
from typing import Any

import pytest

from setwright.solver.book import planned
from setwright.solver.book.clients import Client
from setwright.solver.book.opened import Book
from setwright.solver.book.planned import keep_block, keep_week
from setwright.solver.book.sessions import log_sessions, session_days
from setwright.solver.records.due import due_of
from setwright.solver.records.standing import standing_of
from setwright.solver.sheets.screen.over_time.due import Due, PlannedSession
from tests.book.conftest import session

MONDAY = date(2026, 5, 4)
WEEK: dict[str, Any] = {"days": [{"weekday": "mon", "minutes": 40}, {"weekday": "thu", "minutes": 30}]}


def block(weeks: int) -> dict[str, Any]:
    starts = [(MONDAY + timedelta(weeks=week)).isoformat() for week in range(weeks)]
    return {"weeks": [{"starts": first, **WEEK} for first in starts]}


def due(book: Book, client: Client, day: int) -> Due:
    return due_of(book, client, session_days(book, client), date(2026, 5, day))


def test_nothing_is_due_where_nothing_is_planned(book: Book, client: Client) -> None:
    assert due(book, client, 4) == Due(None, False, 0, None, None, False)


def test_the_next_session_is_today_s_until_it_is_logged_then_the_coming_one(book: Book, client: Client) -> None:
    keep_week(book, client, MONDAY, WEEK)
    assert due(book, client, 4).next == PlannedSession(MONDAY, 1, 40)
    log_sessions(book, client, [session(4)])
    assert due(book, client, 4).next == PlannedSession(date(2026, 5, 7), 2, 30)
    assert due(book, client, 8).next is None


def test_a_kept_week_comes_before_the_block_s(book: Book, client: Client) -> None:
    keep_block(book, client, MONDAY, date(2026, 5, 17), block(2))
    keep_week(book, client, MONDAY, {"days": [{"weekday": "wed", "minutes": 20}]})
    assert due(book, client, 4).next == PlannedSession(date(2026, 5, 6), 1, 20)
    assert due(book, client, 7).next == PlannedSession(date(2026, 5, 11), 1, 40)


@pytest.mark.parametrize(
    ("logged", "day", "behind"), [((), 4, 0), ((), 5, 1), ((5,), 8, 1), ((5, 6), 8, 0), ((5,), 14, 2)]
)
def test_planned_sessions_that_are_not_logged_are_behind_on_whichever_day_they_were_done(
    book: Book, client: Client, logged: tuple[int, ...], day: int, behind: int
) -> None:
    keep_block(book, client, MONDAY, date(2026, 5, 17), block(2))
    log_sessions(book, client, [session(on) for on in logged])
    found = due(book, client, day)
    assert found.behind == behind
    assert found.days_since_last == (day - logged[-1] if logged else None)


def test_the_end_of_a_block_is_due_a_week_before_and_a_review_after_unless_one_follows(
    book: Book, client: Client
) -> None:
    ends = date(2026, 5, 17)
    keep_block(book, client, MONDAY, ends, block(2))
    seen = [(due(book, client, day).block_ends, due(book, client, day).review) for day in (9, 10, 17, 18)]
    assert seen == [(None, False), (ends, False), (ends, False), (ends, True)]
    keep_block(book, client, date(2026, 6, 1), date(2026, 6, 14), {"weeks": []})
    assert due(book, client, 18).block_ends is None


def test_days_in_any_order_stand_on_no_date(book: Book, client: Client) -> None:
    keep_week(book, client, MONDAY, {"days": [{"weekday": None, "minutes": 40}]})
    assert due(book, client, 4) == Due(None, True, 0, None, None, False)


def test_what_stands_is_told_without_reading_documents_and_sets(
    book: Book, client: Client, monkeypatch: pytest.MonkeyPatch
) -> None:
    """The page of all clients asks this of each: before, it read every week, block and set that was ever written."""
    for week in range(-20, 3):
        keep_week(book, client, MONDAY + timedelta(weeks=week), WEEK, "kept")
    log_sessions(book, client, [session(4)])
    read = list[str]()
    loads = planned.json.loads
    monkeypatch.setattr(planned.json, "loads", lambda text: read.append(text) or loads(text))
    asked = list[str]()
    book.connection.set_trace_callback(asked.append)
    found = standing_of(book, client.code, date(2026, 5, 5))
    assert (len(found.weeks), found.sessions, found.last, found.due.planned) == (23, 1, MONDAY, True)
    assert len([text for text in read if "days" in loads(text) and "minutes" in text]) <= 5
    assert not any("set_done" in query for query in asked)
