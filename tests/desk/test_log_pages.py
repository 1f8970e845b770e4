"""The log on the desk: sessions shown and typed, files read whole or not, looked through, the pace taken over."""

from __future__ import annotations

from datetime import date, datetime, timedelta

import pytest
from at_desk import JSON
from block_in_book import block_in_book
from starlette.testclient import TestClient

from setwright.solver.book.clients import brief_of, client_of
from setwright.solver.book.sessions import log_sessions, sessions_of
from setwright.solver.desk.desk import Desk
from setwright.solver.log.values import LoggedSession, LoggedSet

TABLE = "date,exercise,load,reps\n2026-01-05,Barbell bench press,60,8\n2026-01-05,Barbell bench press,60,7\n"


@pytest.fixture
def coach(browser: TestClient, desk: Desk) -> TestClient:
    block_in_book(desk)
    return browser


def sessions(desk: Desk) -> tuple[LoggedSession, ...]:
    with desk.book() as book:
        return sessions_of(book, client_of(book, "M"))


def test_typed_sets_go_on_from_those_there_or_take_their_place(coach: TestClient, desk: Desk) -> None:
    typed = {"sets": "bench press 60x8,8 @ 2 RIR\nseated leg curl 30x12", "on": "2026-01-05", "minutes": "35"}
    assert coach.post("/clients/M/log/add", data=typed).headers["location"] == "/clients/M/log"
    coach.post("/clients/M/log/add", data={"sets": "bench press 60x7", "on": "2026-01-05"})
    (session,) = sessions(desk)
    assert [s.number for s in session.sets if s.exercise == "barbell-bench-press"] == [1, 2, 3]
    assert session.minutes == 35
    coach.post("/clients/M/log/add", data={"sets": "bench press 62.5x8", "on": "2026-01-05", "anew": "on"})
    assert [s.load for s in sessions(desk)[0].sets] == [62.5]
    page = coach.get("/clients/M/log").text
    assert "Monday 2026-01-05" in page and "62.5 x 8" in page and "2026-01-05?anew=1" in page
    assert len(coach.get("/clients/M/log", headers=JSON).json()["sessions"]) == 1
    assert coach.get("/clients/M/log?from=2026-01-06", headers=JSON).json()["sessions"] == []


def test_all_that_is_amiss_with_typed_sets_is_said_and_nothing_is_written(coach: TestClient, desk: Desk) -> None:
    typed = {"sets": "bench press", "on": "2026-01-05", "minutes": "long", "hard": "11"}
    answer = coach.post("/clients/M/log/add", data=typed, headers=JSON)
    assert answer.status_code == 422
    assert [fault["where"] for fault in answer.json()["faults"]] == ["minutes", "how hard", "log add"]
    assert sessions(desk) == ()


def read(coach: TestClient, text: str, **fields: str) -> dict[str, object]:
    file = {"file": ("log.csv", text.encode(), "text/csv")}
    found: dict[str, object] = coach.post("/clients/M/log/import", data=fields, files=file, headers=JSON).json()
    return found


def test_a_file_is_read_first_and_written_once(coach: TestClient, desk: Desk) -> None:
    assert read(coach, TABLE, act="read")["written"] is False
    assert sessions(desk) == ()
    assert read(coach, TABLE, act="write")["written"] is True
    read(coach, TABLE, act="write")
    assert [s.reps for s in sessions(desk)[0].sets] == [8, 7] and len(sessions(desk)) == 1
    assert coach.get("/clients/M/log/import").status_code == 200


def test_a_fault_names_its_row_and_column_and_nothing_is_written(coach: TestClient, desk: Desk) -> None:
    faults = read(coach, TABLE + "2026-01-06,Barbell bench press,heavy,8\n", act="write")["faults"]
    assert isinstance(faults, list) and "line 4, load" in faults[0]["where"]
    assert sessions(desk) == ()
    assert coach.post("/clients/M/log/import", data={"act": "write"}).status_code == 422


def test_columns_are_named_and_what_is_no_set_is_shown(coach: TestClient) -> None:
    german = TABLE.replace("date,exercise", "Datum,exercise") + "rest day,,,\n"
    named = {"field-0": "date", "heading-0": "Datum"}
    found = read(coach, german, act="read", **named)
    assert len(found["sessions"]) == 1 and found["unread"], found  # type: ignore[arg-type]
    assert "faults" in read(coach, german, act="read", **{"field-0": "date"})
    twice = read(coach, german, act="read", **named, **{"field-1": "date", "heading-1": "Day"})
    assert "second time" in str(twice["faults"])


def test_a_slip_in_the_log_is_found(coach: TestClient) -> None:
    coach.post("/clients/M/log/add", data={"sets": "bench press 60x8,8,8", "on": "2026-01-05"})
    coach.post("/clients/M/log/add", data={"sets": "bench press 600x8", "on": "2026-01-12"})
    found = coach.get("/clients/M/log/check", headers=JSON).json()["findings"]
    assert {"load", "sets"} <= {one["kind"] for one in found}
    assert "600 kg, usually about 60 kg" in coach.get("/clients/M/log/check").text
    later = coach.get("/clients/M/log/check?from=2026-02-01", headers=JSON).json()
    assert later["findings"] == []


def test_a_pace_needs_sessions_and_is_taken_over_into_the_brief(coach: TestClient, desk: Desk) -> None:
    assert "Not enough is logged" in coach.get("/clients/M/log/pace").text
    assert coach.post("/clients/M/log/pace").status_code == 422
    held = [timed(date(2026, 1, day)) for day in (5, 6, 7, 12, 13, 14)]
    with desk.book() as book:
        log_sessions(book, client_of(book, "M"), held)
    document = coach.get("/clients/M/log/pace", headers=JSON).json()
    assert document["basis"] == "session minutes" and document["clock"]["spare"] > 0
    assert "Take it over into the brief" in coach.get("/clients/M/log/pace").text
    assert coach.post("/clients/M/log/pace").headers["location"] == "/clients/M/brief"
    with desk.book() as book:
        assert brief_of(book, client_of(book, "M"))["clock"]["spare"] == document["clock"]["spare"]


def timed(on: date) -> LoggedSession:
    """The planned Monday, which took 45 minutes."""
    lifts = ("barbell-bench-press", "chest-supported-dumbbell-row")
    sets = tuple(LoggedSet(lift, number, 8, 40.0, 2) for lift in lifts for number in (1, 2, 3))
    started = datetime(on.year, on.month, on.day, 18)
    return LoggedSession(on, sets, session=1, started=started, ended=started + timedelta(minutes=45))


def test_a_file_with_another_session_of_the_day_is_refused_until_it_may_take_the_place(
    coach: TestClient, desk: Desk
) -> None:
    coach.post("/clients/M/log/add", data={"sets": "bench press 50x8", "on": "2026-01-05"})
    faults = read(coach, TABLE, act="write")["faults"]
    assert isinstance(faults, list) and "may take the place" in faults[0]["remedy"]
    assert [s.load for s in sessions(desk)[0].sets] == [50.0]
    assert read(coach, TABLE, act="write", anew="on")["written"] is True
    assert [s.load for s in sessions(desk)[0].sets] == [60.0, 60.0]
