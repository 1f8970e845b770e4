"""A block on the desk: planned from its form, kept when the coach says so, shown, handed over, gone on with."""

from __future__ import annotations

import io
import zipfile
from datetime import date

import pytest
from at_desk import JSON, ended
from block_in_book import MONDAY, block_in_book
from starlette.testclient import TestClient

from setwright.solver.book.clients import client_of
from setwright.solver.book.planned import blocks
from setwright.solver.book.sessions import log_sessions
from setwright.solver.desk.blocks.ask_form import block_ask_of
from setwright.solver.desk.desk import Desk
from setwright.solver.log.values import LoggedSession, LoggedSet
from setwright.solver.sheets.document.blocks.block_document import block_document
from setwright.solver.uses.blocks.ask import Sessions, Short, Span, Travel


def kept(desk: Desk) -> int:
    with desk.book() as book:
        return len(blocks(book, client_of(book, "M")))


def test_a_client_without_a_block_has_the_form_alone(client_m: TestClient) -> None:
    page = client_m.get("/clients/M/block")
    assert page.status_code == 200 and 'action="/clients/M/block/plan"' in page.text
    assert client_m.get("/clients/M/block", headers=JSON).status_code == 422


def test_a_planned_block_is_kept_only_when_the_coach_says_so(client_m: TestClient, desk: Desk) -> None:
    form = {"weeks": "2", "starts": "2027-01-04", "search": "quick", "kind-0": "off", "first-0": "2027-01-11"}
    begun = client_m.post("/clients/M/block/plan", data={**form, "last-0": "2027-01-17"}, headers=JSON)
    address = begun.json()["address"]
    standing = ended(client_m, address)
    assert (standing["state"], standing["document"]["schema"]) == ("done", "setwright.block/1")
    assert [week["kind"] for week in standing["document"]["weeks"]] == ["build", "off"]
    page = client_m.get(address)
    assert "Keep this block" in page.text and kept(desk) == 0
    answer = client_m.post("/clients/M/block/keep", data={"found": standing["id"]})
    assert answer.headers["location"] == "/clients/M/block?on=2027-01-04"
    assert kept(desk) == 1
    shown = client_m.get("/clients/M/block?on=2027-01-04", headers=JSON).json()
    assert shown == standing["document"]


def test_all_that_is_amiss_in_the_form_is_said_at_once(client_m: TestClient) -> None:
    form = {"weeks": "many", "starts": "soon", "now": "chest", "kind-0": "short", "first-0": "2027-01-04"}
    answer = client_m.post("/clients/M/block/plan", data=form, headers=JSON)
    assert answer.status_code == 422
    assert {fault["where"] for fault in answer.json()["faults"]} == {
        "weeks",
        "first Monday",
        "sets now",
        "short 2027-01-04..2027-01-04",
    }
    late = client_m.post("/clients/M/block/plan", data={"weeks": "60", "starts": "2027-01-05"}, headers=JSON).json()
    assert [fault["where"] for fault in late["faults"]] == ["weeks", "starts"]
    assert client_m.post("/clients/M/block/keep", data={"found": "x"}).status_code == 422


def test_each_kind_of_days_is_read_from_its_row() -> None:
    fields = {
        "weeks": "8",
        "lighter_every": "0",
        "break": "4",
        "now": "chest 6, back 8.5",
        "shift": "on",
        "kind-0": "off",
        "first-0": "2027-01-06",
        "kind-1": "travel",
        "first-1": "2027-01-12",
        "last-1": "2027-01-14",
        "kit-1": "bands, pull-up bar",
        "kind-n2": "short",
        "first-n2": "2027-01-18",
        "last-n2": "2027-01-24",
        "sessions-n2": "2",
        "minutes-n2": "25",
        "kind-3": "minimum",
        "first-3": "2027-01-25",
        "last-3": "2027-01-31",
        "kind-4": "travel",
        "first-4": "",
        "last-4": "",
    }
    ask = block_ask_of(fields, date(2027, 1, 4))
    assert (ask.weeks, ask.lighter_every, ask.break_weeks_before, ask.shifted) == (8, 0, 4, True)
    assert ask.starts == date(2027, 1, 4) and ask.now == (("chest", 6.0), ("back", 8.5))
    assert ask.off == (Span(date(2027, 1, 6), date(2027, 1, 6)),)
    assert ask.travel == (Travel(date(2027, 1, 12), date(2027, 1, 14), ("bands", "pull-up bar")),)
    assert ask.short == (Short(date(2027, 1, 18), date(2027, 1, 24), Sessions(2, 25)),)
    assert ask.minimum == (Span(date(2027, 1, 25), date(2027, 1, 31)),)


def test_a_kept_block_is_shown_as_weeks_lifts_and_muscles(browser: TestClient, desk: Desk) -> None:
    block = block_in_book(desk)
    page = browser.get(f"/clients/M/block?on={MONDAY}").text
    for said in ("Barbell bench press", "Week 2", "no sessions", "3 x ", "Weekly sets by muscle", "<svg"):
        assert said in page
    assert browser.get(f"/clients/M/block?on={MONDAY}", headers=JSON).json() == block_document(block)
    assert browser.get("/clients/M/block?on=someday").status_code == 422


def test_the_sheets_of_all_weeks_are_one_file_to_take_away(browser: TestClient, desk: Desk) -> None:
    block_in_book(desk)
    answer = browser.get(f"/clients/M/block/sheets?on={MONDAY}&as=md&as=csv")
    assert answer.headers["content-disposition"] == f'attachment; filename="block-{MONDAY}.zip"'
    names = zipfile.ZipFile(io.BytesIO(answer.content)).namelist()
    assert names == ["week-01.md", "week-01.csv", "week-02.md", "week-02.csv"]
    assert browser.get(f"/clients/M/block/sheets?on={MONDAY}&as=docx").status_code == 422


def test_the_coach_s_letterhead_stands_on_the_sheets_of_a_block_and_they_are_packed(
    browser: TestClient, desk: Desk
) -> None:
    block_in_book(desk)
    desk.place.with_name("coach.toml").write_text('name = "Ada Example"\n', encoding="utf-8")
    for address in (f"block/sheets?on={MONDAY}", f"next/sheets?on={MONDAY}"):
        packed = zipfile.ZipFile(io.BytesIO(browser.get(f"/clients/M/{address}&as=md").content))
        for file in packed.infolist():
            assert "Ada Example" in packed.read(file).decode()
            assert file.compress_type == zipfile.ZIP_DEFLATED and file.compress_size < file.file_size


@pytest.fixture
def logged(browser: TestClient, desk: Desk) -> TestClient:
    """Two Mondays with the same bench press."""
    block_in_book(desk)
    with desk.book() as book:
        for day in (5, 12):
            sets = tuple(LoggedSet("barbell-bench-press", n, 8, 60.0, 2) for n in (1, 2, 3))
            log_sessions(book, client_of(book, "M"), [LoggedSession(date(2026, 1, day), sets)])
    return browser


def test_next_loads_come_with_a_reason_what_was_done_and_the_drawn_maximum(logged: TestClient) -> None:
    page = logged.get("/clients/M/next?on=2026-01-15")
    assert page.status_code == 200
    for said in ("Repetitions first, up to 10.", "60 kg", "Done and planned", "Estimated maximum", "<svg"):
        assert said in page.text
    document = logged.get("/clients/M/next?on=2026-01-15", headers=JSON).json()
    assert (document["schema"], document["week"], document["kind"]) == ("setwright.next/1", 2, "build")
    bench = document["lines"][0]
    assert (bench["load"]["load"], bench["aims"], bench["reason"]["why"]) == (60.0, [9, 9, 9], "more-reps")
    assert [row["on"] for row in document["done"]] == ["2026-01-05", "2026-01-12"]
    assert len(document["maxima"]["barbell-bench-press"]) == 2


def test_outside_a_block_and_in_a_week_off_there_is_nothing_next(logged: TestClient) -> None:
    for day, said in (("2026-03-01", "outside the block"), ("2026-01-20", "is off")):
        answer = logged.get(f"/clients/M/next?on={day}", headers=JSON)
        assert answer.status_code == 422 and said in answer.json()["faults"][0]["said"]


def test_the_cards_of_a_week_carry_the_loads_from_the_log(logged: TestClient) -> None:
    answer = logged.get("/clients/M/next/sheets?on=2026-01-15&as=md")
    packed = zipfile.ZipFile(io.BytesIO(answer.content))
    assert packed.namelist() == ["week-02.md"]
    assert "60 kg x 9" in packed.read("week-02.md").decode()
