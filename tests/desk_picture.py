"""Draws the desk's picture of docs/gallery: `python -m tests.desk_picture`; it needs chromium and playwright.

The week is one of tests/sheets/weeks, never solved anew, in a scratch book.
"""

from __future__ import annotations

import json
import shutil
import sys
import tempfile
from datetime import date
from pathlib import Path

ROOT = Path(__file__).parents[1]
sys.path[:0] = [str(ROOT / ".names"), str(ROOT / "tests" / "helpers")]
MONDAY = date(2026, 1, 5)
WIDTH, HEIGHT = 1120, 900


def draw(target: Path) -> None:
    """A week of the desk as a picture."""
    from playwright.sync_api import sync_playwright
    from running_desk import running_desk

    with tempfile.TemporaryDirectory() as folder:
        book = Path(folder) / "book.db"
        write_week(book)
        with running_desk(book) as desk, sync_playwright() as driver:
            opened = driver.chromium.launch(executable_path=shutil.which("chromium"), args=["--no-sandbox"])
            page = opened.new_page(viewport={"width": WIDTH, "height": HEIGHT})
            page.goto(desk.address)
            page.goto(f"{desk.origin}/clients/M/weeks/{MONDAY}")
            page.screenshot(path=target)
            opened.close()


def write_week(place: Path) -> None:
    """A client M with a stored week in a new book."""
    from setwright.solver.book.clients import add_client
    from setwright.solver.book.opened import open_book
    from setwright.solver.book.planned import keep_week

    stored = ROOT / "tests" / "sheets" / "weeks" / "three-40.json"
    document = json.loads(stored.read_text(encoding="utf-8"))
    brief = {**document["brief"], "client": {**document["brief"]["client"], "code": "M"}}
    with open_book(place) as book:
        keep_week(book, add_client(book, "M", brief), MONDAY, {**document, "brief": brief}, "found on the desk")


if __name__ == "__main__":
    draw(ROOT / "docs" / "gallery" / "desk-week.png")
