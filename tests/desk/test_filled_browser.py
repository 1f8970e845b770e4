"""Every page of the desk with something on it, by axe, in both schemes, as wide as a phone and as a desk."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Any

import pytest
from chromium import AXE, a_chromium, lacks, opened, unsound
from filled_desk import Filled, filled_desk
from served_desk import served

pytestmark = pytest.mark.slow
LEAST_PAGES = 30


@pytest.fixture(scope="module")
def filled(tmp_path_factory: pytest.TempPathFactory) -> Filled:
    return filled_desk(tmp_path_factory.mktemp("filled"))


@pytest.fixture(scope="module")
def window(filled: Filled) -> Iterator[tuple[Any, str]]:
    """A window that came in, into which axe may be laid, and the desk's origin."""
    with a_chromium() as chromium, served(filled.desk) as (origin, address):
        page = opened(chromium, address, bypass_csp=True)
        yield page, origin
        page.context.close()


def test_every_filled_page_is_sound_for_those_who_hear_it_or_see_little(
    window: tuple[Any, str], filled: Filled
) -> None:
    if not AXE.is_file():
        lacks("axe-core")
    (page, origin), script, broken = window, AXE.read_text(), []
    for name, address in filled.pages.items():
        answer = page.goto(origin + address)
        assert answer.status == (404 if name == "nowhere" else 200), (name, answer.status)
        broken += [(name, *one) for one in unsound(page, script)]
    assert len(filled.pages) > LEAST_PAGES and broken == []


def test_the_parts_that_a_page_opens_are_sound_too(window: tuple[Any, str], filled: Filled) -> None:
    """A line's choices, a refusal, a conflict, and a week that was checked."""
    if not AXE.is_file():
        lacks("axe-core")
    (page, origin), script = window, AXE.read_text()
    page.goto(origin + filled.pages["week"])
    page.locator("#change-thu-heel-raised-goblet-squat").click()
    page.wait_for_selector(".panel")
    page.locator("#more-thu-heel-raised-goblet-squat").click()
    page.wait_for_selector("#faults >> text=Not done")
    broken = [("a line and a refusal", *one) for one in unsound(page, script)]
    other = page.context.new_page()
    other.goto(origin + filled.pages["week"])
    other.locator("#fewer-mon-dumbbell-side-raise").click()
    other.wait_for_selector("#week .edit-said")
    page.get_by_role("button", name="Leave it as it is").click()
    page.locator("#fewer-thu-heel-raised-goblet-squat").click()
    page.get_by_role("button", name="Write mine all the same").wait_for()
    broken += [("a conflict", *one) for one in unsound(page, script)]
    page.goto(origin + filled.pages["check"])
    page.fill("#paste", "day,exercise,sets\nmon,Barbell bench press,4\nthu,Barbell back squat,4\n")
    page.get_by_role("button", name="Check it").click()
    page.wait_for_selector("text=Week index")
    broken += [("checked", *one) for one in unsound(page, script)]
    assert broken == []
