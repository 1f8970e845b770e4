"""Lines of weeks on the desk: a lift that is held says seconds, and sessions in any order keep their numbers."""

from __future__ import annotations

from typing import Any

import pytest
from starlette.testclient import TestClient
from told import stood

HELD = {"exercise": "plank", "name": "Plank", "sets": 2, "reps": [8, 12], "rir": 2, "rest_seconds": 60}
CURL = {"exercise": "dumbbell-curl", "name": "Dumbbell curl", "sets": 3, "reps": [8, 12], "rir": 1, "rest_seconds": 60}
DAYS = [{"weekday": None, "minutes": 20, "seconds": 900, "entries": entries} for entries in ([HELD], [], [CURL])]
BLOCK = {"weeks": [{"number": 1, "starts": "2026-11-30", "ends": "2026-12-06", "kind": "build", "sets": 5, "note": ""}]}
REPLAN = {"done": ["session 1"], "words": {"happened": "Something.", "title": "Changes:", "changes": [], "ends": []}}
WEEK = {"stimulus": 1.0, "interval": [0, 2], "score": 1.0, "gap": None, "muscles": [], "days": DAYS}
ROW = {
    "amount": 20,
    "week_of": 20,
    "stimulus": 1.0,
    "interval": [0, 2],
    "score": 1.0,
    "gap": None,
    "minutes_used": 20,
    "minutes_given": 20,
    "gain_per_half_hour": None,
    "week": WEEK,
}
SHOWN: dict[str, dict[str, Any]] = {
    "block": {"schema": "setwright.block/1", **BLOCK, "base": DAYS},
    "replan": {"schema": "setwright.week/1", "days": DAYS, "replan": REPLAN},
    "curve": {"schema": "setwright.curve/1", "by": "minutes", "bend": None, "words": [], "rows": [ROW]},
}


@pytest.mark.parametrize("kind", SHOWN)
def test_a_hold_is_seconds_and_a_session_keeps_its_number(client_m: TestClient, kind: str) -> None:
    page = client_m.get(stood(client_m, kind, SHOWN[kind]))
    assert page.status_code == 200
    assert "2 x 25-35 s<" in page.text and "3 x 8-12<" in page.text
    assert "Session 1 <" in page.text and "Session 3 <" in page.text


def test_the_session_that_is_done_is_told_by_its_number(client_m: TestClient) -> None:
    page = client_m.get(stood(client_m, "replan", SHOWN["replan"])).text
    assert page.count(", done") == 1 and page.index("Session 1 <") < page.index(", done") < page.index("Session 3 <")
