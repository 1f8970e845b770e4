"""The page in a real browser: Debian's chromium through playwright, its roles and contrast judged by axe-core.

`.ci/browser` fetches what these tests need and sets SETWRIGHT_BROWSER=1, under which nothing is skipped.
"""

from __future__ import annotations

import os
import re
import shutil
from collections.abc import Iterator
from dataclasses import replace
from pathlib import Path
from typing import Any

import pytest
from handed import PAIRS, THREE, handed
from unruly import LONG, MARKUP, TURNED, spoilt

from setwright.solver.sheets.handout.coach import Coach
from setwright.solver.sheets.handout.handout import Handout
from setwright.solver.sheets.html.page import Plots, html_bytes

pytestmark = pytest.mark.slow
NEEDED = os.environ.get("SETWRIGHT_BROWSER") == "1"
CHROMIUM = shutil.which("chromium")
AXE = Path(os.environ.get("SETWRIGHT_AXE", ""))
WIDTHS, SCHEMES = (360, 1280), ("light", "dark")
PLOTS = Plots(((60.0, 48.0), (120.0, 70.0)), ((43.0, 53.0), (63.0, 77.0)), 120.0, (("Chest", (4.0, 6.0)),), ("a", "b"))
LETTERHEAD = Coach(name="Tern Street Strength", lines=("12 Tern Street", "by appointment"))


def absent(what: str) -> None:
    """Skip, or fail where the browser is asked for."""
    (pytest.fail if NEEDED else pytest.skip)(f"{what} is not here; .ci/browser fetches it")


def full(handout: Handout) -> Handout:
    """The fullest week there is: seven days of eight lines of four sets."""
    lines = [line for session in handout.sessions for line in session.lines]
    eight = tuple(replace(line, label="ABCDEFGH"[place], sets=4) for place, line in enumerate(lines[:8]))
    first = handout.sessions[0]
    days = tuple(replace(first, number=n, title=f"Session {n}", lines=eight) for n in range(1, 8))
    return replace(handout, sessions=days)


def handouts() -> dict[str, Handout]:
    return {
        "three": handed(THREE, LETTERHEAD),
        "pairs": handed(PAIRS, Coach(paper="letter")),
        "full": full(handed(THREE, LETTERHEAD)),
        "full-letter": full(handed(THREE, LETTERHEAD.model_copy(update={"paper": "letter"}))),
        "right": replace(handed(PAIRS), coach=Coach(language="ar")),
        "long": spoilt(handed(THREE), LONG),
        "markup": spoilt(handed(PAIRS), MARKUP),
        "turned": spoilt(handed(PAIRS), TURNED),
    }


@pytest.fixture(scope="module")
def files(tmp_path_factory: pytest.TempPathFactory) -> dict[str, str]:
    """Each page as a file on the disk, as an address."""
    folder = tmp_path_factory.mktemp("pages")
    for name, handout in handouts().items():
        (folder / f"{name}.html").write_bytes(html_bytes(handout, PLOTS if name == "three" else None))
    return {path.stem: path.as_uri() for path in folder.iterdir()}


@pytest.fixture(scope="module")
def browser() -> Iterator[Any]:
    if CHROMIUM is None:
        absent("chromium")
    try:
        from playwright.sync_api import sync_playwright
    except ModuleNotFoundError:
        absent("playwright")
    with sync_playwright() as driver:
        opened = driver.chromium.launch(executable_path=CHROMIUM, args=["--no-sandbox"])
        yield opened
        opened.close()


class Seen:
    """What a page said and asked for while it was open."""

    def __init__(self, browser: Any, url: str, **more: Any) -> None:
        self.context = browser.new_context(**more)
        self.page = self.context.new_page()
        self.said: list[str] = []
        self.asked: list[str] = []
        self.page.on("console", lambda message: self.said.append(message.text))
        self.page.on("pageerror", lambda error: self.said.append(str(error)))
        self.page.on("dialog", lambda dialog: self.said.append(dialog.message))
        self.page.on("request", lambda request: self.asked.append(request.url))
        self.page.goto(url)

    def __enter__(self) -> Seen:
        return self

    def __exit__(self, *_: object) -> None:
        self.context.close()


OUTSIDE = """() => [...document.body.querySelectorAll('*')]
  .filter(e => !e.closest('.hidden, .skip, defs') && e.getClientRects().length)
  .filter(e => { const b = e.getBoundingClientRect(); return b.right > innerWidth + 1 || b.left < -1; })
  .map(e => e.outerHTML.slice(0, 120))"""
CUT = """() => [...document.querySelectorAll('svg')].flatMap(svg => [...svg.querySelectorAll('text')]
  .filter(t => { const b = t.getBBox(), v = svg.viewBox.baseVal;
    return b.x < -1 || b.y < -1 || b.x + b.width > v.width + 1 || b.y + b.height > v.height + 1; })
  .map(t => t.textContent))"""
"""Text of a chart that its picture would cut off, in the browser's own fonts."""


@pytest.mark.parametrize("width", WIDTHS)
@pytest.mark.parametrize("name", ["three", "pairs", "full", "right", "long", "markup", "turned"])
def test_nothing_overflows_speaks_or_leaves(browser: Any, files: dict[str, str], name: str, width: int) -> None:
    with Seen(browser, files[name], viewport={"width": width, "height": 800}) as seen:
        assert seen.page.evaluate("document.documentElement.scrollWidth") <= width
        assert seen.page.evaluate(OUTSIDE) == []
        if name in ("three", "pairs", "full", "right", "long"):
            assert seen.page.evaluate(CUT) == []
        assert seen.said == []
        assert seen.asked == [files[name]]


@pytest.mark.parametrize("scheme", SCHEMES)
@pytest.mark.parametrize(("name", "width"), [("three", 360), ("three", 1280), ("pairs", 360)])
def test_axe_finds_no_violation(browser: Any, files: dict[str, str], name: str, width: int, scheme: str) -> None:
    """All of axe-core's rules, WCAG 2.2 A and AA and its best practices; the page's own policy lets no script in."""
    if not AXE.is_file():
        absent("axe-core")
    size = {"width": width, "height": 800}
    with Seen(browser, files[name], viewport=size, color_scheme=scheme, bypass_csp=True) as seen:
        seen.page.evaluate("document.querySelectorAll('details').forEach(d => d.open = true)")
        seen.page.add_script_tag(path=AXE)
        found = seen.page.evaluate("axe.run()")
        said = [(rule["id"], node["html"][:160]) for rule in found["violations"] for node in rule["nodes"]]
        assert said == []
        passed = {rule["id"] for rule in found["passes"]}
        assert {"color-contrast", "label", "image-alt", "landmark-one-main", "svg-img-alt"} - passed <= {"image-alt"}


def test_the_two_schemes_differ_and_both_are_drawn_in_the_pages_ink(browser: Any, files: dict[str, str]) -> None:
    drawn = []
    for scheme in SCHEMES:
        with Seen(browser, files["three"], color_scheme=scheme) as seen:
            style = "e => [getComputedStyle(document.body).backgroundColor, getComputedStyle(e).fill]"
            drawn.append(seen.page.locator("svg rect.bar").first.evaluate(style))
    (paper, ink), (dark_paper, dark_ink) = drawn
    assert paper != dark_paper and ink != dark_ink and ink != paper and dark_ink != dark_paper


def test_the_keyboard_reaches_the_boxes(browser: Any, files: dict[str, str]) -> None:
    with Seen(browser, files["three"], viewport={"width": 360, "height": 800}) as seen:
        seen.page.keyboard.press("Tab")
        skip = seen.page.locator(".skip")
        box = skip.bounding_box()
        assert skip.evaluate("e => e === document.activeElement") and box and box["x"] >= 0 and box["y"] >= 0
        seen.page.keyboard.press("Enter")
        seen.page.keyboard.press("Tab")
        assert seen.page.evaluate("document.activeElement.name") == "s1-date"
        assert seen.page.evaluate("getComputedStyle(document.activeElement).outlineStyle") == "solid"
        for _ in range(2):
            seen.page.keyboard.press("Tab")
        seen.page.keyboard.type("62.5")
        assert seen.page.evaluate("[document.activeElement.name, document.activeElement.value]") == [
            "s1-A-1-load",
            "62.5",
        ]


SIZES = {"a4": (595.0, 842.0), "letter": (612.0, 792.0)}
"""Points: ISO 216 (210 x 297 mm) and ANSI/ASME Y14.1 (8.5 x 11 in)."""


@pytest.mark.parametrize("name", ["three", "pairs", "full", "full-letter"])
def test_it_prints_a_cover_and_one_session_a_page(browser: Any, files: dict[str, str], name: str) -> None:
    """Each session begins a page, and there are no more pages than that: so each has one of its own."""
    handout = handouts()[name]
    plots = 1 if name == "three" else 0
    with Seen(browser, files[name], color_scheme="dark") as seen:
        data = seen.page.pdf(prefer_css_page_size=True)
        seen.page.emulate_media(media="print")
        breaks = seen.page.evaluate(
            "[...document.querySelectorAll('.session')].map(e => getComputedStyle(e).breakBefore)"
        )
        edges = seen.page.evaluate(
            "[...document.querySelectorAll('.set input')].map(e => getComputedStyle(e).borderStyle)"
        )
        paper = seen.page.evaluate("getComputedStyle(document.body).backgroundColor")
    assert breaks == ["page"] * len(handout.sessions)
    assert len(re.findall(rb"/Type\s*/Page\b", data)) == 1 + plots + len(handout.sessions)
    assert set(edges) == {"solid"} and paper == "rgb(255, 255, 255)"
    boxes = re.findall(rb"/MediaBox\s*\[\s*0\s+0\s+([\d.]+)\s+([\d.]+)", data)
    wanted = SIZES[handout.coach.paper]
    assert boxes and all(abs(float(w) - wanted[0]) < 1 and abs(float(h) - wanted[1]) < 1 for w, h in boxes)
