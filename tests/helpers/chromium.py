"""A real browser for tests, which skip without it, or fail where `.ci/browser` said that it must be there."""

from __future__ import annotations

import os
import shutil
from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path
from typing import Any, Final

import pytest

NEEDED: Final = os.environ.get("SETWRIGHT_BROWSER") == "1"
AXE: Final = Path(os.environ.get("SETWRIGHT_AXE", ""))
QUICK: Final = {"resultTypes": ["violations"], "preload": False}
"""What axe leaves out: the nodes of rules that nothing breaks, and files that our rules do not read."""
SCHEMES, WIDTHS = ("light", "dark"), (360, 1280)


def lacks(what: str) -> None:
    """Skip, or fail where nothing may be skipped."""
    (pytest.fail if NEEDED else pytest.skip)(f"{what} is not here; .ci/browser fetches it")


@contextmanager
def a_chromium() -> Iterator[Any]:
    """A browser, until the context ends."""
    found = shutil.which("chromium")
    try:
        from playwright.sync_api import sync_playwright
    except ModuleNotFoundError:
        found = None
    if found is None:
        lacks("chromium or playwright")
    with sync_playwright() as driver:
        opened = driver.chromium.launch(executable_path=found, args=["--no-sandbox"])
        yield opened
        opened.close()


def opened(chromium: Any, address: str, **how: Any) -> Any:
    """A page of a new window that came in by an address; what the browser complains of is in its `complaints`."""
    page = chromium.new_context(**how).new_page()
    page.complaints = []
    page.on("console", lambda said: page.complaints.append(said.text) if said.type == "error" else None)
    page.on("pageerror", lambda error: page.complaints.append(str(error)))
    page.goto(address)
    return page


def unsound(page: Any, script: str) -> list[Any]:
    """What is amiss with the page that is shown, by axe and by its width, in both schemes and widths, not loaded anew.

    A scheme changes colours and nothing else, so that in the second one only the rules of colours are held against it.
    """
    page.evaluate(script)
    broken: list[Any] = []
    for scheme in SCHEMES:
        page.emulate_media(color_scheme=scheme)
        asked = QUICK if scheme == SCHEMES[0] else {**QUICK, "runOnly": {"type": "tag", "values": ["cat.color"]}}
        for width in WIDTHS:
            page.set_viewport_size({"width": width, "height": 800})
            found = page.evaluate("(asked) => axe.run(asked)", asked)["violations"]
            broken += [(scheme, width, v["id"], [n["html"][:80] for n in v["nodes"][:2]]) for v in found]
            wide = page.evaluate("() => document.documentElement.scrollWidth - innerWidth")
            broken += [(scheme, width, "wider than the window", wide)] if wide > 0 else []
    return broken
