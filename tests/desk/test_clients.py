"""The clients with what is due, and what is done to one as a whole."""

from __future__ import annotations

import io
import re
import sqlite3
import zipfile
from datetime import date, timedelta

import pytest
from at_desk import JSON, PHRASE
from block_in_book import block_in_book
from starlette.testclient import TestClient

from setwright.solver.book.clients import client_of
from setwright.solver.book.opened import Book
from setwright.solver.book.planned import keep_week
from setwright.solver.desk.desk import Desk
from setwright.solver.records.next_week import next_week_of
from setwright.solver.records.standing import standing_of

PAGE = "/clients/M"


def planned(desk: Desk, code: str, day: date) -> None:
    """A week with one session on a day."""
    weekday = f"{day:%a}".lower()
    with desk.book() as book:
        monday = day - timedelta(days=day.weekday())
        keep_week(book, client_of(book, code), monday, {"days": [{"weekday": weekday, "minutes": 20}]})


def test_clients_stand_in_the_order_of_their_next_sessions_those_at_rest_last(client_m: TestClient, desk: Desk) -> None:
    for code in ("A", "Z"):
        client_m.post("/clients", data={"code": code, "phrase": PHRASE, "name": "Somebody" if code == "Z" else ""})
    planned(desk, "Z", date.today())
    client_m.post("/clients/A/rest", data={})
    document = client_m.get("/", headers=JSON).json()
    assert [c["code"] for c in document["clients"]] == ["Z", "M", "A"]
    assert document["clients"][0]["due"]["next"] == {"on": date.today().isoformat(), "number": 1, "minutes": 20}
    page = client_m.get("/").text
    assert "<strong>Today</strong>: session 1, 20 min" in page and "No week is planned" in page
    assert "Somebody" in page and "at rest since" in page


def test_a_client_who_is_at_rest_is_brought_back(client_m: TestClient) -> None:
    assert client_m.post(f"{PAGE}/rest", data={"since": "2026-05-04"}).status_code == 303
    assert client_m.get(PAGE, headers=JSON).json()["resting_since"] == "2026-05-04"
    client_m.post(f"{PAGE}/rest", data={"back": "yes"})
    assert client_m.get(PAGE, headers=JSON).json()["resting_since"] is None
    assert client_m.post(f"{PAGE}/rest", data={"since": "soon"}).status_code == 422


def test_a_name_is_written_down_and_taken_away(client_m: TestClient) -> None:
    client_m.post(f"{PAGE}/name", data={"name": "Somebody <b>"})
    assert "Somebody &lt;b&gt;" in client_m.get(PAGE).text
    client_m.post(f"{PAGE}/name", data={"name": ""})
    assert client_m.get(PAGE, headers=JSON).json()["name"] == ""


def test_a_client_s_page_says_that_cautions_are_kept_and_not_which(client_m: TestClient) -> None:
    client_m.post("/clients", data={"code": "K", "phrase": f"{PHRASE}, bad knees, 64 years"})
    for answer in (client_m.get("/clients/K"), client_m.get("/clients/K", headers=JSON), client_m.get("/")):
        said = re.sub(r"(\d+\.){4}[0-9a-f]{8}|\d{4}-\d\d-\d\dT[\d:]+Z", "a stamp or a moment", answer.text)
        assert "knee" not in said and "64" not in said
    assert "Cautions are kept" in client_m.get("/clients/K").text
    assert "Cautions are kept" not in client_m.get(PAGE).text


def test_a_client_is_handed_out_as_files(client_m: TestClient) -> None:
    client_m.post("/clients", data={"code": "K", "phrase": f"{PHRASE}, bad knees"})
    answer = client_m.get("/clients/K/export")
    assert answer.headers["content-disposition"] == 'attachment; filename="K.zip"'
    with zipfile.ZipFile(io.BytesIO(answer.content)) as files:
        assert sorted(files.namelist()) == ["client.json", "health.json", "sets.csv"]
        assert b"knee" in files.read("health.json") and b"knee" not in files.read("client.json")


def test_a_client_is_erased_once_the_code_is_typed(client_m: TestClient) -> None:
    answer = client_m.post(f"{PAGE}/erase", data={"confirm": "K"})
    assert answer.status_code == 422 and "type M to confirm" in answer.text.lower().replace("type m", "type M")
    assert client_m.post(f"{PAGE}/erase", data={"confirm": "M"}).headers["location"] == "/"
    assert client_m.get(PAGE).status_code == 422


def test_a_backup_is_the_whole_book(client_m: TestClient, desk: Desk) -> None:
    answer = client_m.get("/book/backup")
    copy = sqlite3.connect(":memory:")
    copy.deserialize(answer.content)
    assert copy.execute("SELECT code FROM client").fetchall() == [("M",)]


@pytest.mark.parametrize("act", ["name", "rest", "erase", "back"])
def test_an_unknown_client_is_told(browser: TestClient, act: str) -> None:
    assert browser.post(f"/clients/X/{act}", data={}).status_code == 422


def test_lifts_that_stand_still_are_due_as_the_page_of_next_loads_tells_them(browser: TestClient, desk: Desk) -> None:
    """Six weeks of the same bench press before the block, and a row that rises."""
    block_in_book(desk)
    day, first = date(2026, 1, 14), date(2025, 11, 24)
    for week in range(6):
        text = f"bench press 60x8,8,8 @ 2 RIR\nchest-supported dumbbell row {20 + 2 * week}x10,10,10 @ 1 RIR"
        browser.post("/clients/M/log/add", data={"sets": text, "on": str(first + timedelta(weeks=week))})
    with desk.book() as book:
        client = client_of(book, "M")
        found = standing_of(book, client, desk.catalogue, day).due.stalls
        _, told = next_week_of(book, client, desk.catalogue, day)
    assert [(one.exercise, one.since) for one in found] == [(one.exercise, one.since) for one in told.stalls]
    assert [one.name for one in found] == ["Barbell bench press"]


def test_a_lift_that_stands_still_stands_among_what_is_due(client_m: TestClient, desk: Desk) -> None:
    lifts = [{"exercise": "x", "name": name, "since": "2026-01-05"} for name in ("Hack squat", "Dip", "Row", "Curl")]
    house = client_m.app.state.house  # type: ignore[attr-defined]
    source = '{% from "clients/due.html" import due with context %}{{ due(c) }}'
    due = {"next": None, "behind": 0, "review": False, "block_ends": None, "planned": True}
    one, many = (
        house.from_string(source).render(c={"code": "M", "due": {**due, "stalls": some}}) for some in (lifts[:1], lifts)
    )
    assert "<strong>A lift stands still</strong>: Hack squat, since Mon 5 Jan 2026" in one
    assert "<strong>4 lifts stand still</strong>: Hack squat, Dip, Row and 1 more, since" in many
    assert 'href="/clients/M/next#still"' in one


def test_the_clients_page_takes_no_more_queries_for_more_clients(
    client_m: TestClient, desk: Desk, monkeypatch: pytest.MonkeyPatch
) -> None:
    asked: list[str] = []
    rows = Book.rows
    monkeypatch.setattr(Book, "rows", lambda self, query, *values: asked.append(query) or rows(self, query, *values))
    counts = []
    for more in ("A", "BCDEFGH"):
        for code in more:
            client_m.post("/clients", data={"code": code, "phrase": PHRASE})
        asked.clear()
        client_m.get("/")
        counts.append(len(asked))
    assert counts[0] == counts[1]
