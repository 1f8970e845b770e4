"""A week on the desk that life got into: said on a form, planned again for what is left, kept or left."""

from __future__ import annotations

import pytest
from at_desk import JSON, ended
from block_in_book import block_in_book
from starlette.testclient import TestClient

from setwright.solver.book.clients import client_of
from setwright.solver.book.planned import kept_weeks
from setwright.solver.desk.desk import Desk

ADDRESS = "/clients/M/replan?on=2026-01-14"


@pytest.fixture
def coach(browser: TestClient, desk: Desk) -> TestClient:
    block_in_book(desk)
    browser.post("/clients/M/log/add", data={"sets": "bench press 60x8,8,8", "on": "2026-01-12"})
    return browser


def kept(desk: Desk) -> list[tuple[str, str]]:
    with desk.book() as book:
        return [(str(week.starts), week.why) for week in kept_weeks(book, client_of(book, "M"))]


def test_the_form_knows_the_week_and_what_is_logged_of_it(coach: TestClient) -> None:
    page = coach.get(ADDRESS).text
    assert "Week 2 of the block" in page
    assert 'name="done" value="mon" checked' in page and 'name="done" value="thu">' in page
    assert coach.get(ADDRESS, headers=JSON).json()["schema"] == "setwright.week/1"
    assert coach.get("/clients/M/replan?on=2030-01-01").status_code == 422


def test_what_cannot_have_happened_is_said_at_once(coach: TestClient) -> None:
    nothing = coach.post(ADDRESS, data={"done": "mon"}, headers=JSON).json()["faults"]
    assert nothing[0]["said"] == "nothing has happened" and "--" not in nothing[0]["remedy"]
    form = {"done": "mon", "missed": "mon", "minutes-thu": "2", "kit": "moon", "sore": "elbowz"}
    faults = coach.post(ADDRESS, data=form, headers=JSON).json()["faults"]
    assert {"minutes now of thu", "another place", "sore", "done"} <= {fault["where"] for fault in faults}


def test_a_missed_day_is_told_line_by_line_and_kept_when_the_coach_says_so(coach: TestClient, desk: Desk) -> None:
    form = {"done": "mon", "minutes-thu": "20", "sore": "hamstrings", "search": "quick"}
    address = coach.post(ADDRESS, data=form, headers=JSON).json()["address"]
    standing = ended(coach, address)
    assert standing["state"] == "done", standing["faults"]
    replan = standing["document"]["replan"]
    assert (replan["done"], replan["missed"]) == (["mon"], [])
    assert any(said.startswith("Thursday, ") for said in replan["words"]["changes"])
    page = coach.get(address).text
    assert "Keep this week" in page and "Below their band" in page and kept(desk) == []
    answer = coach.post("/clients/M/replan/keep", data={"found": standing["id"]})
    assert answer.headers["location"] == "/clients/M/weeks/2026-01-12"
    ((monday, why),) = kept(desk)
    assert (monday, why) == ("2026-01-12", "thu 20 min")
    assert "41" not in str(standing["document"]["brief"]["client"])


def test_when_no_session_is_left_nothing_is_searched_for(coach: TestClient) -> None:
    address = coach.post(ADDRESS, data={"done": "mon", "missed": "thu"}, headers=JSON).json()["address"]
    standing = ended(coach, address)
    assert standing["document"]["replan"]["words"]["title"] == "No session is left: nothing is planned."
    assert "Nothing is chased" in coach.get(address).text


def test_there_is_nothing_to_keep_without_a_search(coach: TestClient) -> None:
    assert coach.post("/clients/M/replan/keep", data={"found": "x"}).status_code == 422
