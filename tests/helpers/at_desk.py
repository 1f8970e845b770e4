"""What the tests of the desk share: how its requests are led, and a search waited for."""

from __future__ import annotations

import time
from collections.abc import Callable
from typing import Any

from starlette.testclient import TestClient

from setwright.solver.desk.searches.crew import Crew

HOST = "127.0.0.1:7000"
ORIGIN = {"Origin": f"http://{HOST}"}
JSON = {"Accept": "application/json"}
PATIENCE = 120.0
PHRASE = "1 day x 20 min, home dumbbells, novice"


class OnDemand(Crew):
    """Searches whose processes are started when the first is asked for: most tests ask for none."""

    def start(self) -> None:
        """Nothing is kept ready."""


def until(holds: Callable[[], bool]) -> None:
    """Wait until something holds; fails after two minutes."""
    patience = time.monotonic() + PATIENCE
    while not holds():
        assert time.monotonic() < patience, "nothing came of it in two minutes"
        time.sleep(0.01)


def ended(browser: TestClient, address: str) -> dict[str, Any]:
    """How a search stands once it has ended."""
    crew = browser.app.state.desk.crew  # type: ignore[attr-defined]
    found = crew.search(address.rsplit("/", 1)[-1])
    until(lambda: found.told.ended)
    standing: dict[str, Any] = browser.get(address, headers=JSON).json()
    return standing
