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
    """What axe finds on a page, and whether it is wider than its window."""
    page.evaluate(script)
    found = page.evaluate("() => axe.run()")["violations"]
    broken: list[Any] = [(v["id"], [n["html"][:80] for n in v["nodes"][:2]]) for v in found]
    wide = page.evaluate("() => document.documentElement.scrollWidth - innerWidth")
    return [*broken, ("wider than the window", wide)] if wide > 0 else broken
