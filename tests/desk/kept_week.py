"""A client whose week of two days in pairs is in the book, written there from a stored document without a search."""

from __future__ import annotations

import json
from datetime import date
from pathlib import Path
from typing import Any

from starlette.testclient import TestClient

from setwright.catalogue.load import load_catalogue
from setwright.solver.auditing import audit
from setwright.solver.book.clients import add_client
from setwright.solver.book.opened import open_book
from setwright.solver.book.planned import keep_week
from setwright.solver.brief.parsed_brief import raw_of
from setwright.solver.rulebook import resolve
from setwright.solver.sheets.document.changed_week import changed_week_document
from setwright.solver.sheets.document.week_reader import read_week

STORED = Path(__file__).parents[1] / "sheets" / "weeks" / "pairs-private.json"
MONDAY = date(2026, 11, 30)
HERE = f"/clients/P/weeks/{MONDAY}"


def keep_week_of_p(path: Path, **client: Any) -> None:
    """Client P, of whom a caution is known, with the week of a Monday as the book keeps weeks: without that."""
    catalogue, stored = load_catalogue(), json.loads(STORED.read_bytes())
    raw = {**stored["brief"], "client": {**stored["brief"]["client"], "code": "P", **client}}
    parsed, week = read_week({**stored, "brief": raw}, catalogue)
    document = changed_week_document({}, parsed, audit(resolve(parsed.brief, catalogue), week))
    with open_book(path) as book:
        keep_week(book, add_client(book, "P", raw_of(parsed.brief)), MONDAY, document, "found on the desk")


def act(browser: TestClient, entry: str, name: str, value: str = "", **headers: str) -> Any:
    """The answer to an act on a line."""
    return browser.post(f"{HERE}/line", data={"entry": entry, "act": name, "value": value}, headers=headers)


def lines_on(document: dict[str, Any], day: int) -> dict[str, Any]:
    """Exercise -> line of a day of a week's document."""
    return {line["exercise"]: line for line in document["days"][day]["entries"]}
