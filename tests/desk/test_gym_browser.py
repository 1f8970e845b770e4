"""A session in the gym in a real browser: the connection drops, what is typed is kept, sent once, then forgotten."""

from __future__ import annotations

from collections.abc import Callable, Iterator
from pathlib import Path
from typing import Any

import pytest
from block_in_book import block_in_book
from chromium import a_chromium
from running_desk import running_desk

from setwright.catalogue.load import load_catalogue
from setwright.solver.book.clients import client_of
from setwright.solver.book.opened import open_book
from setwright.solver.book.sessions import sessions_of
from setwright.solver.desk.desk import Desk
from setwright.solver.desk.entry.guard import Keys
from setwright.solver.desk.searches.crew import Crew
from setwright.solver.log.values import LoggedSession

pytestmark = pytest.mark.slow
MONDAY = "clients/M/log/2026-01-05"
LEAST_HIGH = 44
"""Pixels that a thing to tap is high at least (WCAG 2.2, 2.5.5 Target Size)."""
LOW = """(least) => [...document.querySelectorAll("#session button, #session .done, #session input, .choices a")]
  .filter((e) => e.type !== "hidden" && e.type !== "checkbox" && e.getClientRects().length)
  .filter((e) => e.getBoundingClientRect().height < least).map((e) => e.outerHTML.slice(0, 90))"""


@pytest.fixture
def phone(tmp_path: Path) -> Iterator[tuple[Any, str, Path]]:
    """A phone's page that was let in at a desk with M's block: (page, the desk's address, the book)."""
    place = tmp_path / "book.db"
    block_in_book(Desk(place, load_catalogue(), Crew(1), Keys()))
    with a_chromium() as chromium, running_desk(place) as desk:
        page = chromium.new_context(viewport={"width": 360, "height": 780}, has_touch=True).new_page()
        page.desk = desk
        page.goto(desk.address)
        yield page, desk.address.split("?")[0], place


def written(place: Path) -> tuple[LoggedSession, ...]:
    with open_book(place) as book:
        return sessions_of(book, client_of(book, "M"))


def do(page: Any, number: int, reps: str) -> None:
    page.fill(f'[name="load-0-{number}"]', "60")
    page.fill(f'[name="reps-0-{number}"]', reps)
    page.check(f'[name="done-0-{number}"]')


def test_a_session_outlasts_a_reload_and_a_lost_connection_and_is_written_once(phone: tuple[Any, str, Path]) -> None:
    page, address, place = phone
    said: list[str] = []
    page.on("pageerror", lambda error: said.append(str(error)))
    page.goto(address + MONDAY)
    assert page.evaluate(LOW, LEAST_HIGH) == []
    do(page, 1, "8")
    do(page, 2, "7")
    page.reload()
    assert page.input_value('[name="reps-0-2"]') == "7" and page.is_checked('[name="done-0-2"]')
    page.context.set_offline(True)
    page.click("#send")
    page.wait_for_selector("text=2 sets kept here, no connection")
    assert written(place) == ()
    page.context.set_offline(False)
    page.wait_for_selector("text=in the book, 2 sets")
    (session,) = written(place)
    assert [s.reps for s in session.sets] == [8, 7] and all(s.ended for s in session.sets)
    assert page.evaluate("localStorage.length") == 0
    assert said == []


def test_a_session_that_meets_another_is_kept_until_the_coach_decides(phone: tuple[Any, str, Path]) -> None:
    page, address, place = phone
    for reps in ("8", "6"):
        page.goto(address + MONDAY)
        do(page, 1, reps)
        page.click("#send")
        page.wait_for_selector("text=in the book, 1 set" if reps == "8" else "text=Nothing was written")
    assert [s.reps for s in written(place)[0].sets] == [8]
    page.reload()
    page.click("text=Add these sets to it")
    page.wait_for_selector("text=in the book, 1 set")
    assert [s.reps for s in written(place)[0].sets] == [8, 6]
    assert page.evaluate("localStorage.length") == 0


def test_a_lift_that_is_not_known_comes_back_with_what_was_typed(phone: tuple[Any, str, Path]) -> None:
    page, address, place = phone
    page.goto(address + MONDAY)
    page.click("#add-line")
    page.fill('[name="lift-2"]', "barbel curl")
    page.fill('[name="reps-2-1"]', "12")
    page.fill('[name="load-2-1"]', "20")
    page.check('[name="done-2-1"]')
    page.click("#send")
    page.click("text=Back to what was typed")
    page.fill('[name="lift-2"]', "Barbell curl")
    page.click("#send")
    page.wait_for_selector("text=in the book, 1 set")
    assert [(s.exercise, s.load, s.reps) for s in written(place)[0].sets] == [("barbell-curl", 20.0, 12)]


KEPT = "Object.keys(localStorage).length"
HELD = """async () => { const found = [];
  for (const name of await caches.keys()) {
    for (const one of await (await caches.open(name)).keys()) found.push(new URL(one.url).pathname);
  }
  return found; }"""


def held(page: Any, wanted: Callable[[list[str]], bool]) -> list[str]:
    """The paths that the service worker keeps, as soon as they are as wanted."""
    for _ in range(200):
        found: list[str] = page.evaluate(HELD)
        if wanted(found):
            return found
        page.wait_for_timeout(50)
    raise AssertionError(f"the service worker keeps {found}")


def pages_of(paths: list[str]) -> list[str]:
    return [path for path in paths if not path.startswith("/static/")]


def test_two_sessions_of_a_day_are_kept_apart_and_each_is_found_again(phone: tuple[Any, str, Path]) -> None:
    page, address, _ = phone
    page.goto(f"{address}{MONDAY}?session=1")
    do(page, 1, "8")
    page.goto(f"{address}{MONDAY}?session=2")
    assert not page.is_checked('[name="done-0-1"]') and page.input_value('[name="load-0-1"]') != "60"
    page.click("text=session 1: typed here, not sent yet")
    page.wait_for_url("**/2026-01-05?session=1")
    assert page.input_value('[name="reps-0-1"]') == "8" and page.is_checked('[name="done-0-1"]')


def test_what_was_sent_is_forgotten_only_when_the_desk_has_acknowledged_it(phone: tuple[Any, str, Path]) -> None:
    page, address, place = phone
    page.goto(address + MONDAY)
    do(page, 1, "8")
    page.route(
        "**/log/2026-01-05", lambda route: route.abort() if route.request.method == "POST" else route.continue_()
    )
    page.click("#send")
    page.wait_for_selector("text=1 set kept here, no connection")
    assert page.evaluate(KEPT) == 2, "the draft and what is to be sent"
    page.reload()
    page.wait_for_selector("text=1 set kept here")
    assert page.is_hidden("#session"), "what is on its way is not typed a second time"
    page.unroute("**/log/2026-01-05")
    page.reload()
    page.wait_for_selector("text=in the book, 1 set")
    assert page.evaluate(KEPT) == 0 and len(written(place)) == 1


def test_a_page_that_is_loaded_anew_while_the_desk_is_away_has_the_kept_sets(phone: tuple[Any, str, Path]) -> None:
    page, address, _ = phone
    page.goto(address + MONDAY)
    assert pages_of(held(page, lambda paths: "/static/gym/outbox.js" in paths)) == ["/clients/M/log/2026-01-05"]
    do(page, 1, "8")
    page.desk.kill()
    page.reload()
    page.wait_for_selector("text=What was typed here before is back")
    assert page.input_value('[name="reps-0-1"]') == "8" and page.is_checked('[name="done-0-1"]')
    page.click("#send")
    page.wait_for_selector("text=1 set kept here, no connection")
    assert page.evaluate("fetch('/clients/M').then(() => 'there', () => 'away')") == "away"


def test_the_page_is_kept_no_longer_than_its_session(phone: tuple[Any, str, Path]) -> None:
    page, address, _ = phone
    page.goto(address + MONDAY)
    held(page, lambda paths: pages_of(paths) == ["/clients/M/log/2026-01-05"])
    page.goto(address + MONDAY.replace("05", "12"))
    held(page, lambda paths: pages_of(paths) == ["/clients/M/log/2026-01-12"])
    do(page, 1, "8")
    page.click("#send")
    page.wait_for_selector("text=in the book, 1 set")
    held(page, lambda paths: paths == [])
    assert page.evaluate("navigator.serviceWorker.getRegistrations().then((all) => all.length)") == 0


def test_the_page_of_a_code_with_other_letters_is_forgotten_too(phone: tuple[Any, str, Path]) -> None:
    """Addresses escape such letters and forms do not: before, the page stayed in the browser for ever."""
    page, address, place = phone
    block_in_book(Desk(place, load_catalogue(), Crew(1), Keys()), code="Zoë")
    page.goto(address + MONDAY.replace("/M/", "/Zoë/"))
    held(page, lambda paths: pages_of(paths) == ["/clients/Zo%C3%AB/log/2026-01-05"])
    do(page, 1, "8")
    page.click("#send")
    page.wait_for_selector("text=in the book, 1 set")
    held(page, lambda paths: paths == [])
