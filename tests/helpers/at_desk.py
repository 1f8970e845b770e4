"""What the tests of the desk share: how its requests are led, and a search waited for."""

from __future__ import annotations

from typing import Any

from starlette.testclient import TestClient

HOST = "127.0.0.1:7000"
ORIGIN = {"Origin": f"http://{HOST}"}
JSON = {"Accept": "application/json"}
PHRASE = "1 day x 20 min, home dumbbells, novice"


def ended(browser: TestClient, address: str) -> dict[str, Any]:
    """How a search stands once it has ended."""
    search = address.rsplit("/", 1)[-1]
    crew = browser.app.state.desk.crew  # type: ignore[attr-defined]
    found = crew.search(search)
    while not found.told.ended:
        crew.after(found, found.told.count, 120)
    standing: dict[str, Any] = browser.get(address, headers=JSON).json()
    return standing
