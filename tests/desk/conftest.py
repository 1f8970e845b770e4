"""A desk on an empty book, answered in this process; its searches run in processes of their own."""

from __future__ import annotations

from collections.abc import Iterator
from pathlib import Path

import pytest
from at_desk import HOST, ORIGIN, PHRASE, OnDemand
from starlette.testclient import TestClient

from setwright.catalogue.load import load_catalogue
from setwright.solver.desk.application import application
from setwright.solver.desk.desk import Desk
from setwright.solver.desk.entry.guard import TOKEN, Keys


@pytest.fixture
def desk(tmp_path: Path) -> Desk:
    return Desk(tmp_path / "book.db", load_catalogue(), OnDemand(1), Keys())


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
