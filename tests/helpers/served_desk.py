"""A desk served from a thread of this process, so that a test can lay searches into its memory."""

from __future__ import annotations

import socket
import threading
import time
from collections.abc import Iterator
from contextlib import contextmanager

import uvicorn

from setwright.solver.desk.application import application
from setwright.solver.desk.desk import Desk
from setwright.solver.desk.entry.guard import TOKEN


@contextmanager
def served(desk: Desk) -> Iterator[tuple[str, str]]:
    """(the origin of a desk that answers, the address by which a browser comes in)."""
    with socket.socket() as listener:
        listener.bind(("127.0.0.1", 0))
        host = f"127.0.0.1:{listener.getsockname()[1]}"
        app = application(desk, frozenset({host}))
        server = uvicorn.Server(uvicorn.Config(app, log_level="warning", timeout_graceful_shutdown=1))
        app.state.ending = lambda: server.should_exit
        thread = threading.Thread(target=server.run, args=([listener],), daemon=True)
        thread.start()
        while not server.started:
            assert thread.is_alive(), "the desk did not start"
            time.sleep(0.01)
        yield f"http://{host}", f"http://{host}/?{TOKEN}={desk.keys.token}"
        server.should_exit = True
        thread.join()
