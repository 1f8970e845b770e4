"""Many requests at once: an act that waits for its turn keeps no page waiting, and no page opens the book anew."""

from __future__ import annotations

from concurrent.futures import ThreadPoolExecutor

from at_desk import JSON
from starlette.testclient import TestClient

from setwright.solver.book.pool import MOST_IDLE
from setwright.solver.desk.application import PAGES_AT_ONCE
from setwright.solver.desk.desk import Desk


def test_acts_that_wait_for_their_turn_keep_no_page_waiting(client_m: TestClient, desk: Desk) -> None:
    with ThreadPoolExecutor(2 * PAGES_AT_ONCE + 1) as many:
        with desk.turn("M"):
            acts = [
                many.submit(client_m.post, "/clients/M/name", data={"name": f"N{n}"}, headers=JSON)
                for n in range(2 * PAGES_AT_ONCE)
            ]
            assert many.submit(client_m.get, "/").result(30).status_code == 200
            assert not any(act.done() for act in acts)
        assert all(act.result(30).status_code == 200 for act in acts)


def test_the_book_is_opened_anew_for_no_page(client_m: TestClient, desk: Desk) -> None:
    with desk.book() as before:
        pass
    for address in ("/", "/clients/M", "/clients/M/brief"):
        assert client_m.get(address).status_code == 200
    with desk.book() as after:
        assert after is before
    assert len(desk._books._idle) <= MOST_IDLE
