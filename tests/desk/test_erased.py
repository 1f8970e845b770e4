"""A client who is erased while a page of theirs is open, or a search runs: said in clear words, nothing made anew."""

from __future__ import annotations

import json
import threading
from typing import Any

import pytest
from at_desk import JSON
from in_book import clients
from starlette.testclient import TestClient
from told import stood

from setwright.solver.book.care import erase
from setwright.solver.book.clients import client_of
from setwright.solver.desk.desk import Desk
from setwright.solver.desk.searches.search import Search
from setwright.solver.desk.searches.task import Task, Told

PAGE = "/clients/M"
LONG = "6 days x 90 min, growth, advanced, commercial gym"
ACTS = ("name", "rest", "erase", "back", "find", "keep", "brief", "block/plan", "block/keep", "replan", "log/add")


def erased_by_command(desk: Desk) -> None:
    with desk.book() as book:
        erase(book, client_of(book, "M"))


def in_the_book(desk: Desk) -> list[str]:
    with desk.book() as book:
        return [client.code for client in clients(book)]


@pytest.mark.parametrize("act", ACTS)
def test_an_act_from_a_page_that_was_open_says_that_the_client_is_gone(
    client_m: TestClient, desk: Desk, act: str
) -> None:
    erased_by_command(desk)
    for headers in ({}, {"HX-Request": "true"}, JSON):
        answer = client_m.post(f"{PAGE}/{act}", data={"stamp": "1.1.0.0.x", "name": "Em"}, headers=headers)
        assert answer.status_code == 422 and "erased" in answer.text and "setwright client" not in answer.text
    assert in_the_book(desk) == []


def test_an_open_window_is_told(client_m: TestClient, desk: Desk) -> None:
    with client_m.stream("GET", f"{PAGE}/changes") as answer:
        lines = answer.iter_lines()
        next(lines)
        erased_by_command(desk)
        assert "event: gone" in list(lines)


def test_the_searches_of_a_client_end_with_them(client_m: TestClient, desk: Desk) -> None:
    client_m.post("/clients", data={"code": "L", "phrase": LONG})
    address = client_m.post("/clients/L/find", data={"search": "thorough"}, headers=JSON).json()["address"]
    running = desk.crew.search(address.rsplit("/", 1)[-1])
    assert running is not None
    client_m.post("/clients/L/erase", data={"confirm": "L"})
    assert running.stopping and desk.crew.search(running.id) is None
    answer = client_m.get(address)
    assert answer.status_code == 422 and "over and forgotten" in answer.text
    client_m.post("/clients", data={"code": "L", "phrase": LONG})
    kept = client_m.post("/clients/L/keep", data={"found": running.id}, headers=JSON)
    assert kept.status_code == 422 and "forgotten" in kept.text


def test_a_comparison_of_another_client_that_holds_their_brief_goes_too(client_m: TestClient, desk: Desk) -> None:
    """A brief that is compared holds what is noted of its client's health."""
    task = Task("compare", {"others": [{"client": {"code": "m", "cautions": ["knee"]}}], "goals": []})
    search = Search("beside", "L", task, Told("done"))
    desk.crew._searches[search.id] = search
    client_m.post("/clients/M/erase", data={"confirm": "M"})
    assert desk.crew.search("beside") is None


def test_the_page_of_a_search_is_told_that_its_client_is_gone(client_m: TestClient, desk: Desk) -> None:
    search = Search("here", "M", Task("week", {"brief": {}, "search": "quick"}), Told("stopped", document=week_like()))
    desk.crew._searches[search.id] = search
    erased_by_command(desk)
    with client_m.stream("GET", f"/searches/{search.id}/news") as answer:
        event, data, *_ = answer.iter_lines()
    assert event == "event: end" and "was erased" in json.loads(data.removeprefix("data: "))
    assert desk.crew.search(search.id) is None


def week_like() -> dict[str, Any]:
    """As much of a week's document as its page reads before it asks for the client's stamp."""
    return {"schema": "setwright.week/1", "stimulus": 50.0, "interval": [40, 60], "gap": 0.5, "ended_by": "proved"}


@pytest.mark.parametrize(
    ("task", "said"),
    [
        ("week", "before it had found a first week"),
        ("others", "before there was another week"),
        ("settle", "the week is as it was"),
        ("block", "before there was a block"),
        ("replan", "before there was a week"),
        ("compare", "before anything was found"),
        ("curve", "before anything was found"),
        ("season", "before anything was found"),
    ],
)
def test_a_stopped_search_without_a_week_says_so_and_names_no_fault(
    client_m: TestClient, desk: Desk, task: str, said: str
) -> None:
    arguments = {"search": "quick", "starts": "2026-11-30", "why": "a change", "count": 3}
    desk.crew._searches["s"] = Search("s", "M", Task(task, arguments), Told("stopped"))
    text = client_m.get("/searches/s").text
    assert said in text and 'class="faults"' not in text


def test_the_news_of_a_search_are_made_beside_the_loop(client_m: TestClient, monkeypatch: pytest.MonkeyPatch) -> None:
    """Where a page is made on the loop's own thread, every other request waits for it."""
    from setwright.solver.desk.searches import addresses

    made_on: list[threading.Thread] = []
    before = addresses.standing

    def noted(search: Search) -> dict[str, object]:
        made_on.append(threading.current_thread())
        return before(search)

    monkeypatch.setattr(addresses, "standing", noted)
    with client_m.stream("GET", f"{stood(client_m, 'replan', None, state='stopped')}/news") as answer:
        assert "event: end" in list(answer.iter_lines())
    loop = client_m.portal.call(threading.current_thread)  # type: ignore[union-attr]
    assert made_on and loop not in made_on
