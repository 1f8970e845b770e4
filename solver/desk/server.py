"""The desk served: a free port found, the address printed and opened, one desk a book."""

from __future__ import annotations

import asyncio
import socket
from collections.abc import Callable
from typing import Final

import uvicorn

from setwright.catalogue.faults import Fault, SetwrightError
from setwright.solver.desk.application import application
from setwright.solver.desk.desk import Desk
from setwright.solver.desk.guard import TOKEN

LOOPBACK: Final = "127.0.0.1"
USUAL_PORT: Final = 7348
TRIED: Final = 20
"""Ports that are tried after the one that was asked for."""


def serve(desk: Desk, port: int | None, ready: Callable[[str, str], None]) -> None:
    """Serve a desk on this machine alone until it is told to end.

    `ready` is told the address with its token, and a word on the port where another than the one asked for was taken,
    as soon as requests are answered. Raises SetwrightError where no port is free.
    """
    listener = _listener(port)
    taken = listener.getsockname()[1]
    hosts = frozenset(f"{name}:{taken}" for name in (LOOPBACK, "localhost"))
    said = f"port {port} is in use; this is port {taken}" if port and taken != port else ""
    app = application(desk, hosts)
    config = uvicorn.Config(app, log_level="warning", access_log=False, lifespan="on")
    server = _Server(config, lambda: ready(f"http://{LOOPBACK}:{taken}/?{TOKEN}={desk.keys.token}", said))
    app.state.ending = lambda: server.should_exit
    asyncio.run(server.serve([listener]))


class _Server(uvicorn.Server):
    """A uvicorn server that says when it answers."""

    def __init__(self, config: uvicorn.Config, ready: Callable[[], None]) -> None:
        super().__init__(config)
        self._ready = ready

    async def startup(self, sockets: list[socket.socket] | None = None) -> None:
        """As uvicorn has it, then a word to whoever waits."""
        await super().startup(sockets)
        self._ready()


def _listener(port: int | None) -> socket.socket:
    """A listening socket on the port asked for or the next free one; raises SetwrightError."""
    first = port or USUAL_PORT
    for candidate in range(first, min(first + TRIED, 65_536)):
        listener = socket.socket(socket.AF_INET, socket.SOCK_STREAM)
        listener.setsockopt(socket.SOL_SOCKET, socket.SO_REUSEADDR, 1)
        try:
            listener.bind((LOOPBACK, candidate))
        except OSError:
            listener.close()
            continue
        return listener
    said = f"ports {first} to {first + TRIED - 1} are all in use"
    raise SetwrightError(Fault("--port", said, "name another with --port"))
