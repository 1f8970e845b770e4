"""The real desk in a process: answers while it searches, and what it acknowledged when it is killed."""

from __future__ import annotations

import random
import statistics
import threading
import time
from concurrent.futures import ThreadPoolExecutor
from contextlib import suppress
from pathlib import Path

import httpx2
import pytest
from in_book import clients
from running_desk import JSON, running_desk

from setwright.solver.book.care import check
from setwright.solver.book.opened import open_book

pytestmark = pytest.mark.slow
LONG = "6 days x 90 min, growth, advanced, commercial gym"
KILLS, ACTS = 5, 100
LONGEST_ACT = 0.05
"""Seconds after an act began within which the server is killed: about how long one takes."""


def test_fifty_requests_at_once_are_answered_while_two_searches_run(tmp_path: Path) -> None:
    with running_desk(tmp_path / "book.db") as desk, desk.browser() as browser:
        for code in ("A", "B"):
            browser.post("/clients", data={"code": code, "phrase": LONG})
            browser.post(f"/clients/{code}/find", data={"search": "thorough"})
        with ThreadPoolExecutor(50) as pool:
            started = time.monotonic()
            answers = list(pool.map(lambda _: _timed(browser, "/"), range(50)))
        assert [status for status, _ in answers] == [200] * 50
        print(f"50 in {time.monotonic() - started:.2f} s, median {statistics.median(s for _, s in answers):.3f} s")


def _timed(browser: httpx2.Client, address: str) -> tuple[int, float]:
    started = time.monotonic()
    status = browser.get(address).status_code
    return status, time.monotonic() - started


def test_nothing_that_was_acknowledged_is_lost_when_the_desk_is_killed(tmp_path: Path) -> None:
    """The server is killed at a random moment of one of every twenty acts, each of which writes a client down."""
    chance, book, acknowledged = random.Random(20261127), tmp_path / "book.db", set[str]()
    for round_ in range(KILLS):
        with running_desk(book) as desk, desk.browser() as browser:
            last = chance.randrange(ACTS // KILLS)
            killer = threading.Timer(chance.uniform(0.0, LONGEST_ACT), desk.kill)
            for number in range(ACTS // KILLS):
                if number == last:
                    killer.start()
                code = f"R{round_}N{number}"
                try:
                    answer = browser.post("/clients", data={"code": code, "phrase": "1 day x 20 min"}, headers=JSON)
                except httpx2.TransportError:
                    break
                assert answer.status_code == 200
                acknowledged.add(code)
            killer.join()
    with open_book(book) as opened:
        assert check(opened) == ()
        written = {client.code for client in clients(opened)}
    assert acknowledged <= written and len(written - acknowledged) <= KILLS
    assert acknowledged


def test_ctrl_c_closes_the_desk(tmp_path: Path) -> None:
    import signal

    with running_desk(tmp_path / "book.db") as desk:
        desk.process.send_signal(signal.SIGINT)
        assert desk.process.wait(30) == 0
    assert not list((tmp_path / "state").rglob("*.json"))


@pytest.mark.skipif(not Path("/proc/self/stat").is_file(), reason="processes are told from /proc")
def test_no_search_goes_on_when_the_desk_is_killed(tmp_path: Path) -> None:
    with running_desk(tmp_path / "book.db") as desk, desk.browser() as browser:
        browser.post("/clients", data={"code": "A", "phrase": LONG})
        browser.post("/clients/A/find", data={"search": "thorough"})
        children = _children(desk.process.pid)
        assert children
        desk.kill()
    patience = time.monotonic() + 30
    while any(_runs(pid) for pid in children):
        assert time.monotonic() < patience, "a search process outlived its desk"
        time.sleep(0.1)


def _children(pid: int) -> list[int]:
    """The processes whose parent is another."""
    found = []
    for path in Path("/proc").glob("[0-9]*/stat"):
        with suppress(OSError):
            if int(path.read_text().rpartition(") ")[2].split()[1]) == pid:
                found.append(int(path.parent.name))
    return found


def _runs(pid: int) -> bool:
    """Whether a process is there and no zombie."""
    try:
        return Path(f"/proc/{pid}/stat").read_text().rpartition(") ")[2].split()[0] != "Z"
    except OSError:
        return False
