"""A coach's morning in a real browser, from an empty book to a printed card, by keyboard alone and on a phone.

`.ci/browser` fetches what these tests need and sets SETWRIGHT_BROWSER=1, under which nothing is skipped.
"""

from __future__ import annotations

from collections.abc import Iterator
from pathlib import Path
from typing import Any

import pytest
from chromium import AXE, a_chromium, lacks, opened, unsound
from keyboard import Keyboard
from running_desk import RunningDesk, running_desk

pytestmark = pytest.mark.slow
PHRASE = "1 day x 20 min, home dumbbells, novice"
LONG = "6 days x 90 min, growth, advanced, commercial gym"
HOSTILE = '<img src=x onerror="document.title=1"><script>document.title=1</script>'
MOST_ACTS = 12
"""Acts from nothing to a printed card, starting the desk among them."""
PAGES = ("/", "/clients/M", "/clients/M/brief", "/clients/M/weeks", "/clients/M/compare", "/clients/M/minutes")
PAGES += ("/clients/M/season", "/clients/M/block", "/clients/M/log", "/clients/M/replan", "/clients/M/check")
PAGES += ("/templates", "/phone", "/nowhere")


@pytest.fixture(scope="module")
def chromium() -> Iterator[Any]:
    with a_chromium() as found:
        yield found


@pytest.fixture
def desk(tmp_path: Path) -> Iterator[RunningDesk]:
    with running_desk(tmp_path / "book.db") as found:
        yield found


def with_client(desk: RunningDesk, phrase: str = PHRASE) -> None:
    with desk.browser() as browser:
        browser.post("/clients", data={"code": "M", "phrase": phrase})


@pytest.mark.parametrize("width", [1280, 360])
def test_a_morning_from_an_empty_book_to_a_card_by_keyboard_alone(chromium: Any, desk: RunningDesk, width: int) -> None:
    page = opened(chromium, desk.address, viewport={"width": width, "height": 800}, accept_downloads=True)
    keys = Keyboard(page)
    keys.acts += 1  # the command itself
    keys.type("Code", "M")
    keys.type("What is asked", PHRASE)
    keys.press("Write down")
    page.wait_for_url("**/clients/M")
    keys.press("Find a week")
    page.wait_for_url("**/searches/*")
    page.get_by_role("button", name="Keep this week").wait_for(timeout=120_000)
    keys.press("Keep this week")
    page.wait_for_url("**/clients/M/weeks/*")
    keys.press("Sheets")
    page.wait_for_url("**/sheets*")
    frame = page.frame_locator("iframe")
    frame.get_by_role("heading", level=1).wait_for()
    with page.expect_download() as waited:
        keys.press("pdf: card")
    assert Path(waited.value.path()).read_bytes().startswith(b"%PDF")
    assert keys.acts + 1 <= MOST_ACTS  # and the printing
    assert page.complaints == []


def test_a_stop_in_the_middle_of_a_search_keeps_what_is_there(chromium: Any, desk: RunningDesk) -> None:
    with_client(desk, LONG)
    page = opened(chromium, desk.address)
    page.goto(f"{desk.origin}/clients/M")
    page.get_by_role("button", name="Find a week").first.click()
    page.get_by_text("points better").wait_for(timeout=120_000)
    page.get_by_role("button", name="Good enough, stop").click()
    page.get_by_role("button", name="Keep this week").wait_for(timeout=30_000)
    assert "stopped" in page.inner_text("main")


def test_two_windows_see_each_others_changes_and_lose_nothing(chromium: Any, desk: RunningDesk) -> None:
    with_client(desk)
    first, second = (opened(chromium, desk.address) for _ in range(2))
    for page in (first, second):
        page.goto(f"{desk.origin}/clients/M")
    first.get_by_label("Name").fill("Em")
    first.get_by_label("Name").press("Enter")
    second.get_by_text("Changed elsewhere").wait_for(timeout=30_000)
    second.get_by_label("Name").fill("Emm")
    second.get_by_label("Name").press("Enter")
    second.get_by_role("button", name="Write mine all the same").wait_for(timeout=30_000)
    with desk.browser() as browser:
        assert browser.get("/clients/M").json()["name"] == "Em"
    second.get_by_role("button", name="Write mine all the same").click()
    second.wait_for_url("**/clients/M")
    with desk.browser() as browser:
        assert browser.get("/clients/M").json()["name"] == "Emm"


def test_hostile_text_is_shown_as_text(chromium: Any, desk: RunningDesk) -> None:
    with_client(desk)
    with desk.browser() as browser:
        browser.post("/clients/M/name", data={"name": HOSTILE})
        browser.post("/clients", data={"code": HOSTILE, "phrase": HOSTILE})
        browser.post("/clients/M/log/add", data={"sets": "goblet squat 10x8", "note": HOSTILE, "on": "2026-01-05"})
    page = opened(chromium, desk.address)
    for address in PAGES:
        page.goto(desk.origin + address)
        page.wait_for_timeout(100)
        assert page.title() != "1"
        assert page.locator("img").count() == 0


def test_every_page_is_sound_while_there_is_nothing_on_it_yet(chromium: Any, desk: RunningDesk) -> None:
    if not AXE.is_file():
        lacks("axe-core")
    with_client(desk)
    page, script, broken = opened(chromium, desk.address, bypass_csp=True), AXE.read_text(), []
    for address in PAGES:
        page.goto(desk.origin + address)
        broken += [(address, *one) for one in unsound(page, script)]
    assert broken == []
