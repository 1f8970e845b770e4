"""A client's weeks as a coach reads them."""

from __future__ import annotations

import pytest
from at_desk import JSON
from kept_week import HERE, MONDAY, keep_week_of_p
from starlette.testclient import TestClient

from setwright.solver.desk.desk import Desk


@pytest.fixture
def browser_p(desk: Desk, browser: TestClient) -> TestClient:
    keep_week_of_p(desk.place)
    return browser


def test_every_week_is_listed_with_where_it_comes_from(browser_p: TestClient) -> None:
    weeks = browser_p.get("/clients/P/weeks", headers=JSON).json()["weeks"]
    assert [(week["starts"], week["said"], week["kept"]) for week in weeks] == [(str(MONDAY), "found on the desk", 1)]
    assert f'href="{HERE}"' in browser_p.get("/clients/P/weeks").text


def test_a_client_without_weeks_is_told_so(client_m: TestClient) -> None:
    assert "No week is kept yet" in client_m.get("/clients/M/weeks").text
    assert client_m.get("/clients/M/weeks", headers=JSON).json()["weeks"] == []


def test_a_week_shows_sessions_lines_and_muscles(browser_p: TestClient) -> None:
    text = browser_p.get(HERE).text
    assert "27 of 30 min" in text and "4 x 8-12" in text and "in turn with Chest-supported dumbbell row" in text
    assert "Where the minutes of each session go" in text
    assert "Chest" in text and "Given up" in text


def test_any_day_of_the_week_names_it(browser_p: TestClient) -> None:
    thursday = browser_p.get("/clients/P/weeks/2026-12-03", headers=JSON).json()
    assert thursday == browser_p.get(HERE, headers=JSON).json()


def test_the_document_is_the_week_with_what_it_breaks(browser_p: TestClient) -> None:
    document = browser_p.get(HERE, headers=JSON).json()
    assert document["schema"] == "setwright.week/1" and document["broken"] == [] and document["edit"] is None


@pytest.mark.parametrize(
    "address", [HERE, f"{HERE}/why", f"{HERE}/sheets", f"{HERE}/line?entry=mon:A", "/clients/P/weeks"]
)
def test_no_page_of_a_week_names_a_health_note(browser_p: TestClient, address: str) -> None:
    for headers in ({}, JSON):
        said = browser_p.get(address, headers=headers).text.lower()
        assert "wrist" not in said.replace("wrist curl", "") or "wrist" not in said


@pytest.mark.parametrize("address", ["/clients/P/weeks/2026-12-07", "/clients/P/weeks/monday", "/clients/Q/weeks"])
def test_what_there_is_not_is_refused(browser_p: TestClient, address: str) -> None:
    answer = browser_p.get(address)
    assert answer.status_code == 422 and "This cannot be shown" in answer.text and "To the clients" in answer.text


def test_why_gives_each_line_its_reason(browser_p: TestClient) -> None:
    document = browser_p.get(f"{HERE}/why", headers=JSON).json()
    assert document["schema"] == "setwright.why/1" and len(document["reasons"]) == 13
    assert "Dumbbell side raise" in browser_p.get(f"{HERE}/why").text


@pytest.mark.parametrize(
    ("question", "value", "place"),
    [
        ("what", "", "question"),
        ("without", "mon:Z", "entry"),
        ("with", "flying", "exercises"),
        ("minutes", "x", "minutes"),
    ],
)
def test_a_question_that_cannot_be_asked_is_refused(
    browser_p: TestClient, question: str, value: str, place: str
) -> None:
    answer = browser_p.post(f"{HERE}/ask", data={"question": question, "value": value}, headers=JSON)
    assert answer.status_code == 422 and answer.json()["faults"][0]["where"] == place
