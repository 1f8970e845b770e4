"""A desk on an empty book, answered in this process; its searches run in processes of their own."""

from __future__ import annotations

from collections.abc import Iterator
from pathlib import Path
from typing import Any

import pytest
from starlette.testclient import TestClient

from setwright.catalogue.load import load_catalogue
from setwright.solver.desk.application import application
from setwright.solver.desk.desk import Desk
from setwright.solver.desk.guard import TOKEN, Keys
from setwright.solver.desk.searches.crew import Crew

HOST = "127.0.0.1:7000"
ORIGIN = {"Origin": f"http://{HOST}"}
JSON = {"Accept": "application/json"}
PHRASE = "1 day x 20 min, home dumbbells, novice"


@pytest.fixture
def desk(tmp_path: Path) -> Desk:
    return Desk(tmp_path / "book.db", load_catalogue(), Crew(1), Keys())


@pytest.fixture
def outsider(desk: Desk) -> Iterator[TestClient]:
    """A browser that was not let in."""
    with TestClient(application(desk, frozenset({HOST})), base_url=f"http://{HOST}", follow_redirects=False) as client:
        yield client


@pytest.fixture
def browser(desk: Desk, outsider: TestClient) -> TestClient:
    """A browser that came in by the token."""
    outsider.get(f"/?{TOKEN}={desk.keys.token}")
    outsider.headers.update(ORIGIN)
    return outsider


@pytest.fixture
def client_m(browser: TestClient) -> TestClient:
    """The same with a client M of one short day in the book."""
    browser.post("/clients", data={"code": "M", "phrase": PHRASE})
    return browser


def ended(browser: TestClient, address: str) -> dict[str, Any]:
    """How a search stands once it has ended."""
    search = address.rsplit("/", 1)[-1]
    crew = browser.app.state.desk.crew  # type: ignore[attr-defined]
    found = crew.search(search)
    while not found.told.ended:
        crew.after(found, found.told.count, 120)
    standing: dict[str, Any] = browser.get(address, headers=JSON).json()
    return standing
