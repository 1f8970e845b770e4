"""Two windows on one week: an act on a line that was shown before another's change is refused, and so is what a search
found for a week that was changed since it was asked for; what can be taken back is told after each act."""

from __future__ import annotations

import re
from typing import Any

import pytest
from at_desk import JSON
from block_in_book import block_in_book
from kept_week import HERE, MONDAY, act, keep_week_of_p
from starlette.testclient import TestClient

from setwright.solver.book.clients import client_of
from setwright.solver.book.planned import kept_weeks
from setwright.solver.desk.desk import Desk

SQUAT = "thu:heel-raised-goblet-squat"
CURL = "mon:dumbbell-curl"
HTMX = {"HX-Request": "true"}


@pytest.fixture
def browser_p(desk: Desk, browser: TestClient) -> TestClient:
    keep_week_of_p(desk.place)
    return browser


def stamps(page: str) -> set[str]:
    return set(re.findall(r'name="stamp" value="([^"]+)"', page))


def sent(entry: str, name: str, value: str, stamp: str, **more: str) -> dict[str, str]:
    return {"entry": entry, "act": name, "value": value, "stamp": stamp, **more}


def reasons(desk: Desk) -> list[str]:
    with desk.book() as book:
        return [kept.why for kept in kept_weeks(book, client_of(book, "P"))]


def test_a_line_of_a_week_that_was_changed_elsewhere_is_not_changed_unseen(desk: Desk, browser_p: TestClient) -> None:
    (shown,) = set(
        re.findall(r'hx-target="#week"><input type="hidden" name="stamp" value="(.+?)"', browser_p.get(HERE).text)
    )
    act(browser_p, CURL, "sets", "2")
    answer = browser_p.post(f"{HERE}/line", data=sent(SQUAT, "sets", "3", shown))
    assert answer.status_code == 409 and "Dumbbell curl at 2 sets" in answer.text
    assert len(reasons(desk)) == 2
    again = browser_p.post(f"{HERE}/line", data=sent(SQUAT, "sets", "3", stamps(answer.text).pop()))
    assert again.status_code == 303 and len(reasons(desk)) == 3


def test_the_choices_of_a_line_act_as_the_page_that_they_were_opened_on(desk: Desk, browser_p: TestClient) -> None:
    page = browser_p.get(HERE).text
    (shown,) = stamps(page)
    assert f'id="shown" name="stamp" value="{shown}"' in page and page.count('hx-include="#shown"') > 3
    act(browser_p, CURL, "sets", "2")
    choices = browser_p.get(f"{HERE}/line?entry={SQUAT}&stamp={shown}", headers=HTMX).text
    assert stamps(choices) == {shown}
    assert browser_p.post(f"{HERE}/line", data=sent(SQUAT, "out", "", shown)).status_code == 409
    alone = browser_p.get(f"{HERE}/line?entry={SQUAT}").text
    assert stamps(alone) == stamps(browser_p.get(HERE).text) != {shown}


def test_a_conflict_is_overruled_into_the_part_of_the_page_that_acted(browser_p: TestClient) -> None:
    (shown,) = stamps(browser_p.get(HERE).text)
    act(browser_p, CURL, "sets", "2")
    asked = HTMX | {"HX-Target": "week", "HX-Current-URL": f"http://x{HERE}"}
    part = browser_p.post(f"{HERE}/line", data=sent(SQUAT, "sets", "3", shown), headers=asked).text
    assert 'hx-target="#week"' in part and f'href="{HERE}"' in part


def test_what_is_made_to_fit_is_kept_only_on_the_week_for_which_it_was_asked(desk: Desk, browser_p: TestClient) -> None:
    (shown,) = stamps(browser_p.get(HERE).text)
    refused = browser_p.post(f"{HERE}/line", data=sent(SQUAT, "sets", "5", shown), headers=HTMX)
    assert refused.status_code == 422 and stamps(refused.text) == {shown}
    address = browser_p.post(f"{HERE}/line", data=sent(SQUAT, "sets", "3", shown, settle="yes"), headers=JSON).json()[
        "address"
    ]
    found = ended_by_hand(desk, address, browser_p.get(HERE, headers=JSON).json())
    act(browser_p, CURL, "sets", "2")
    page = browser_p.get(address).text
    assert f'name="stamp" value="{shown}"' in page
    kept = browser_p.post("/clients/P/keep", data={"found": found, "starts": str(MONDAY), "stamp": shown})
    assert kept.status_code == 409 and len(reasons(desk)) == 2


def ended_by_hand(desk: Desk, address: str, week: dict[str, Any]) -> str:
    """The id of a search that has ended with a week, whatever its process does."""
    from dataclasses import replace

    search = desk.crew.search(address.rsplit("/", 1)[-1])
    assert search is not None
    desk.crew.stop(search)
    edit = {"said": "x", "sentences": [], "misses": []}
    search.told = replace(search.told, state="done", document={**week, "edit": edit})
    return search.id


def test_what_was_planned_again_is_kept_only_on_the_week_for_which_it_was_asked(
    browser: TestClient, desk: Desk
) -> None:
    block_in_book(desk)
    address = "/clients/M/replan?on=2026-01-14"
    (shown,) = stamps(browser.get(address).text)
    form = {"done": "mon", "minutes-thu": "20", "search": "quick", "stamp": shown}
    search = browser.post(address, data=form, headers=JSON).json()["address"]
    about = browser.get(search, headers=JSON).json()["about"]
    assert about["stamp"] == shown
    browser.post("/clients/M/name", data={"name": "Em"})
    assert browser.post(address, data=form).status_code == 409
    kept = browser.post("/clients/M/replan/keep", data={"found": search.rsplit("/", 1)[-1], "stamp": about["stamp"]})
    assert kept.status_code == 409


def test_what_can_be_taken_back_is_told_after_an_act_that_leaves_its_window_on_the_page(
    desk: Desk, browser_p: TestClient
) -> None:
    asked = HTMX | {"HX-Target": "week", "HX-Current-URL": f"http://x{HERE}"}
    answer = act(browser_p, SQUAT, "sets", "3", **asked)
    band = answer.text.partition('<div id="turns"')[2]
    assert 'hx-swap-oob="true"' in band and "Take back: week of 30 Nov 2026, Heel-raised goblet squat at 3" in band
    assert f'name="page" value="{HERE}"' in band
    assert len(stamps(answer.text)) == 1 and stamps(answer.text).pop() in answer.headers["hx-trigger-after-settle"]
    back = browser_p.post("/clients/P/back", data={"page": HERE, "stamp": stamps(answer.text).pop()})
    assert back.headers["location"] == HERE, "the week stands still, and is shown again"
    page = browser_p.get(HERE).text
    assert page.count('id="turns"') == 1 and "hx-swap-oob" not in page and "Do again: week of" in page
    assert "turns" not in act(browser_p, SQUAT, "sets", "3", **JSON).text


def test_a_file_of_a_log_that_is_read_in_place_can_be_taken_back_at_once(browser_p: TestClient) -> None:
    table = b"date,exercise,set,load,reps\n2026-01-05,Dumbbell curl,1,10,8\n"
    files = {"file": ("log.csv", table, "text/csv")}
    answer = browser_p.post("/clients/P/log/import", data={"act": "write"}, files=files, headers=HTMX)
    assert answer.status_code == 200 and "Take back: session of 5 Jan 2026" in answer.text
