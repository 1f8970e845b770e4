"""The sheets of a kept week: each format, the page under its own policy, and what holds them back."""

from __future__ import annotations

import json

import pytest
from at_desk import JSON
from kept_week import HERE, MONDAY, keep_week_of_p
from starlette.testclient import TestClient

from setwright.solver.desk.desk import Desk
from setwright.solver.desk.weeks.sheets import OWN_POLICY
from setwright.solver.sheets.formats import FORMATS

BEGINS = {"pdf": b"%PDF-", "xlsx": b"PK", "ics": b"BEGIN:VCALENDAR", "html": b"<!DOCTYPE html>", "json": b"{"}


@pytest.fixture
def browser_p(desk: Desk, browser: TestClient) -> TestClient:
    keep_week_of_p(desk.place)
    return browser


def test_the_page_of_sheets_links_every_format(browser_p: TestClient) -> None:
    text = browser_p.get(f"{HERE}/sheets").text
    assert all(f"{HERE}/sheet.{name}?start={MONDAY}&amp;paper=a4&amp;weeks=1" in text for name in FORMATS)
    assert '<iframe class="sheet" sandbox' in text
    document = browser_p.get(f"{HERE}/sheets?paper=letter&start=2026-12-07&weeks=4", headers=JSON).json()
    assert (document["paper"], document["start"], document["weeks"]) == ("letter", "2026-12-07", 4)


@pytest.mark.parametrize("name", FORMATS)
def test_every_format_is_a_file_named_by_code_and_week(browser_p: TestClient, name: str) -> None:
    answer = browser_p.get(f"{HERE}/sheet.{name}")
    assert answer.status_code == 200 and answer.content.startswith(BEGINS.get(name, b""))
    assert answer.headers["content-disposition"] == f'attachment; filename="P-week-1.{FORMATS[name].ending}"'
    assert b"wrist" not in answer.content.lower()


def test_the_clients_page_may_load_its_own_style_alone(browser_p: TestClient) -> None:
    answer = browser_p.get(f"{HERE}/page")
    assert answer.headers["content-security-policy"] == OWN_POLICY and "script-src" not in OWN_POLICY
    assert "default-src 'none'" in OWN_POLICY and answer.headers["content-type"].startswith("text/html")


def test_the_coachs_letterhead_lies_beside_the_book(desk: Desk, browser_p: TestClient) -> None:
    (desk.place.parent / "coach.toml").write_text('name = "Hill Street Strength"\npaper = "letter"\n')
    assert "Hill Street Strength" in browser_p.get(f"{HERE}/page").text
    assert browser_p.get(f"{HERE}/sheets", headers=JSON).json()["paper"] == "letter"
    (desk.place.parent / "coach.toml").write_text("papers = 1\n")
    answer = browser_p.get(f"{HERE}/sheets", headers=JSON)
    assert answer.status_code == 422 and "coach.toml" in answer.json()["faults"][0]["where"]


def test_every_fault_of_what_is_asked_is_named(browser_p: TestClient) -> None:
    answer = browser_p.get(f"{HERE}/sheet.pdf?paper=a5&weeks=99&start=soon", headers=JSON)
    assert answer.status_code == 422
    assert [fault["where"] for fault in answer.json()["faults"]] == ["paper", "weeks", "start"]
    assert browser_p.get(f"{HERE}/sheet.doc").status_code == 422


def test_a_missing_clearance_holds_every_sheet_back_but_not_the_coachs_own_page(
    desk: Desk, browser: TestClient
) -> None:
    keep_week_of_p(desk.place, cautions=[{"tag": "wrist"}, {"tag": NEEDS}])
    document = browser.get(f"{HERE}/sheets", headers=JSON).json()
    assert "clearance" in document["faults"][0]["said"]
    assert 'href="/clients/P/brief"' in browser.get(f"{HERE}/sheets").text
    for address in (*(f"{HERE}/sheet.{name}" for name in FORMATS), f"{HERE}/page"):
        answer = browser.get(address, headers=JSON)
        assert answer.status_code == 422 and NEEDS not in json.dumps(answer.json()).lower()
    assert browser.get(HERE).status_code == 200


NEEDS = "hernia"
"""A caution that calls for a clearance."""
