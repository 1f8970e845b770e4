"""A writer killed at random points: every row it was told is written stands, no session stands by half."""

from __future__ import annotations

import os
import random
import select
import signal
from datetime import date, timedelta
from pathlib import Path

import pytest

from setwright.solver.book.care import check
from setwright.solver.book.clients import add_client, client_of
from setwright.solver.book.opened import open_book
from setwright.solver.book.planned import blocks, keep_block
from setwright.solver.book.sessions import log_sessions, sessions_of, unread_of
from setwright.solver.log.unread import UnreadRow
from setwright.solver.log.values import LoggedSession, LoggedSet
from tests.book.conftest import RAW

FIRST = date(2026, 1, 5)
POINTS = 200
SETS = 12


def _session(n: int) -> LoggedSession:
    sets = tuple(LoggedSet("barbell-back-squat", k, 8, load=80.0 + n, rir=2) for k in range(1, SETS + 1))
    return LoggedSession(FIRST + timedelta(days=n), sets, "kg", session=1)


def _write_on(place: Path, kind: str, begun: int, told: int) -> None:
    """Write the next rows of one kind for ever, and tell each number once its write has come back."""
    with open_book(place) as book:
        client = client_of(book, "M")
        for n in range(begun, begun + 10_000):
            day = FIRST + timedelta(days=n)
            if kind == "add":
                log_sessions(book, client, [_session(n)])
            elif kind == "import":
                log_sessions(book, client, [_session(n)], [UnreadRow(str(n), "words", "")], str(n).encode())
            else:
                keep_block(book, client, day, day, {"n": n, "filler": "x" * 20_000})
            os.write(told, n.to_bytes(4, "big"))


@pytest.mark.skipif(not hasattr(os, "fork"), reason="needs fork")
@pytest.mark.parametrize("kind", ["add", "import", "block"])
def test_no_acknowledged_row_is_lost_to_kill_9(place: Path, kind: str) -> None:
    chance = random.Random(kind)
    with open_book(place) as book:
        add_client(book, "M", RAW)
    acknowledged = begun = 0
    for _ in range(POINTS // 3 + 1):
        read, write = os.pipe()
        child = os.fork()
        if child == 0:  # pragma: no cover
            os.close(read)
            try:
                _write_on(place, kind, begun, write)
            finally:
                os._exit(1)
        os.close(write)
        select.select([read], [], [], 10)
        chance_of_more = chance.random() * 0.02
        select.select([], [], [], chance_of_more)
        os.kill(child, signal.SIGKILL)
        os.waitpid(child, 0)
        heard = b""
        while part := os.read(read, 1 << 16):
            heard += part
        os.close(read)
        acknowledged += len(heard) // 4
        with open_book(place) as book:
            client = client_of(book, "M")
            held = blocks(book, client) if kind == "block" else sessions_of(book, client)
            # One more may be written than was told: the kill came between the two.
            assert acknowledged <= len(held) <= acknowledged + 1
            acknowledged = begun = len(held)
            if kind != "block":
                assert held == tuple(_session(n) for n in range(len(held))), "whole, and in order"
            if kind == "import":
                assert len(unread_of(book, client)) == len(held)
    with open_book(place) as book:
        assert not check(book)
    assert acknowledged > POINTS // 3
