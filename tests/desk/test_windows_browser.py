"""Several windows of a real browser on one desk: streams of those out of sight, a week that is changed in two, a line
dragged to another day."""

from __future__ import annotations

from collections.abc import Iterator
from pathlib import Path
from typing import Any

import pytest
from chromium import a_chromium, opened
from kept_week import HERE, MONDAY, keep_week_of_p
from served_desk import served

from setwright.catalogue.load import load_catalogue
from setwright.solver.book.clients import client_of
from setwright.solver.book.planned import week_starting
from setwright.solver.desk.desk import Desk
from setwright.solver.desk.entry.guard import Keys
from setwright.solver.desk.searches.crew import Crew, Search
from setwright.solver.desk.searches.task import Task, Told

pytestmark = pytest.mark.slow
CONNECTIONS = 6
"""Connections that Chromium opens to one host at most (RFC 9112, 9.4, names no number)."""
SIGHT = """(hidden) => {
  Object.defineProperty(document, "hidden", { configurable: true, get: () => hidden });
  document.dispatchEvent(new Event("visibilitychange"));
}"""


@pytest.fixture(scope="module")
def chromium() -> Iterator[Any]:
    with a_chromium() as found:
        yield found


@pytest.fixture
def desk(tmp_path: Path) -> Desk:
    keep_week_of_p(tmp_path / "book.db")
    return Desk(tmp_path / "book.db", load_catalogue(), Crew(1), Keys())


@pytest.fixture
def window(chromium: Any, desk: Desk) -> Iterator[tuple[Any, str]]:
    """A window that came in, and the desk's origin."""
    with served(desk) as (origin, address):
        page = opened(chromium, address, viewport={"width": 1280, "height": 2600})
        yield page, origin
        page.context.close()


def running(desk: Desk) -> Search:
    """A search that goes on for as long as the test does."""
    search = Search("going-on", "P", Task("week", {"search": "quick"}), Told("running", seconds=1.0, count=1))
    desk.crew._searches[search.id] = search
    return search


def lines_of(desk: Desk, day: int) -> list[str]:
    with desk.book() as book:
        kept = week_starting(book, client_of(book, "P"), MONDAY)
    assert kept is not None
    return [line["exercise"] for line in kept.document["days"][day]["entries"]]


def test_windows_out_of_sight_hold_no_connection(window: tuple[Any, str], desk: Desk) -> None:
    first, origin = window
    search = running(desk)
    pages = [first, *(first.context.new_page() for _ in range(CONNECTIONS - 1))]
    for page in pages:
        page.goto(f"{origin}/searches/{search.id}", timeout=10_000)
        page.wait_for_selector("text=Searching.")
        page.evaluate(SIGHT, True)
    last = first.context.new_page()
    last.goto(f"{origin}/clients/P", timeout=10_000)
    assert last.get_by_role("heading", level=1).inner_text().startswith("@P")
    assert desk.is_waited_for(search.id)


def test_a_window_that_comes_back_into_sight_shows_how_its_search_ended(window: tuple[Any, str], desk: Desk) -> None:
    page, origin = window
    search = running(desk)
    page.goto(f"{origin}/searches/{search.id}")
    page.wait_for_selector("text=Searching.")
    page.evaluate(SIGHT, True)
    search.told = Told("stopped", count=2)
    page.wait_for_timeout(400)
    assert "Searching." in page.inner_text("main")
    page.evaluate(SIGHT, False)
    page.wait_for_selector("text=stopped before it had found")
    page.evaluate(SIGHT, True)
    page.evaluate(SIGHT, False)
    assert page.complaints == []


def test_a_line_that_two_windows_change_is_changed_by_the_second_only_knowingly(
    window: tuple[Any, str], desk: Desk
) -> None:
    first, origin = window
    second = first.context.new_page()
    for page in (first, second):
        page.goto(origin + HERE)
    first.locator("#fewer-thu-heel-raised-goblet-squat").click()
    first.get_by_role("button", name="Take back: week of 30 Nov 2026, Heel-raised goblet squat at 3").wait_for()
    second.locator("#change-mon-dumbbell-curl").click()
    second.get_by_role("button", name="Take it out on Monday").click()
    second.get_by_role("button", name="Write mine all the same").wait_for()
    assert "dumbbell-curl" in lines_of(desk, 0)
    second.get_by_role("button", name="Write mine all the same").click()
    second.wait_for_selector("#week .edit-said")
    assert "dumbbell-curl" not in lines_of(desk, 0) and second.locator("#faults .conflict").count() == 0
    second.locator("#fewer-thu-heel-raised-goblet-squat").click()
    second.wait_for_selector("text=Heel-raised goblet squat at 2 sets")
    second.get_by_role("button", name="Take back").click()
    second.get_by_role("button", name="Do again").wait_for()
    assert second.url == origin + HERE


def test_a_line_is_dragged_to_another_day(window: tuple[Any, str], desk: Desk) -> None:
    page, origin = window
    page.goto(origin + HERE)
    lift = "thu:dumbbell-overhead-extension"
    name = page.locator(f"#change-{lift.replace(':', '-')}").locator("xpath=ancestor::li//strong")
    name.drag_to(page.locator('[data-day="thu"] h2'))
    assert "dumbbell-overhead-extension" in lines_of(desk, 1), "put down on its own day it stays"
    name.drag_to(page.locator('[data-day="mon"] h2'))
    page.wait_for_selector("text=Dumbbell overhead extension moved from Thursday to Monday")
    assert "dumbbell-overhead-extension" in lines_of(desk, 0)
    assert page.evaluate("document.activeElement.id") == "change-mon-dumbbell-overhead-extension"
    assert page.complaints == []


def test_only_the_name_of_a_line_is_carried(window: tuple[Any, str], desk: Desk) -> None:
    page, origin = window
    page.goto(origin + HERE)
    before = lines_of(desk, 0), lines_of(desk, 1)
    page.locator("#change-thu-dumbbell-overhead-extension").drag_to(page.locator('[data-day="mon"] h2'))
    page.wait_for_timeout(300)
    assert (lines_of(desk, 0), lines_of(desk, 1)) == before and not page.is_visible("#week .edit-said")


def test_a_line_is_dragged_under_the_stamp_of_what_is_shown(window: tuple[Any, str], desk: Desk) -> None:
    first, origin = window
    second = first.context.new_page()
    for page in (first, second):
        page.goto(origin + HERE)
    first.locator("#fewer-thu-heel-raised-goblet-squat").click()
    first.wait_for_selector("#week .edit-said")
    name = second.get_by_text("Dumbbell overhead extension", exact=True)
    name.drag_to(second.locator('[data-day="mon"] h2'))
    second.get_by_role("button", name="Write mine all the same").wait_for()
    assert "dumbbell-overhead-extension" in lines_of(desk, 1)


def test_a_line_that_may_not_stand_on_a_day_stays_where_it_was(window: tuple[Any, str], desk: Desk) -> None:
    page, origin = window
    page.goto(origin + HERE)
    before = lines_of(desk, 0)
    page.get_by_text("Chest-supported dumbbell row", exact=True).drag_to(page.locator('[data-day="thu"] h2'))
    page.wait_for_selector("#faults >> text=Not done")
    assert lines_of(desk, 0) == before
