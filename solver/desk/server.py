"""The desk served: a free port found, the address told as soon as requests are answered, one desk a book."""

from __future__ import annotations

import asyncio
import signal
import socket
import threading
from collections.abc import Callable, Iterator
from contextlib import ExitStack, contextmanager, suppress
from typing import Final

import uvicorn

from setwright.catalogue.faults import Fault, SetwrightError
from setwright.solver.desk.application import application
from setwright.solver.desk.desk import Desk
from setwright.solver.desk.entry.access import Access
from setwright.solver.desk.entry.guard import TOKEN
from setwright.solver.desk.open_desks import noted

USUAL_PORT: Final = 7348
TRIED: Final = 20
"""Ports that are tried, from the one that was asked for on."""
LAST_PORT: Final = 65_535
Ready = Callable[[str, int], None]
"""Told the address with its token and the port, as soon as requests are answered."""


def serve(desk: Desk, access: Access, port: int | None, ready: Ready) -> None:
    """Serve a desk until it is told to end; raises SetwrightError where no port is free or the address is not here."""
    with _listener(access, port or USUAL_PORT) as listener, ExitStack() as held:
        taken: int = listener.getsockname()[1]
        address = f"{access.address(taken)}?{TOKEN}={desk.keys.token}"

        def answering() -> None:
            held.enter_context(noted(desk.place, address))
            ready(address, taken)

        app = application(desk, access.hosts(taken))
        config = uvicorn.Config(
            app,
            log_level="warning",
            access_log=False,
            server_header=False,
            timeout_graceful_shutdown=1,
            ssl_certfile=access.certificate,
            ssl_keyfile=access.key,
        )
        server = _Server(config, answering)
        app.state.ending = lambda: server.should_exit
        with _closed_by_signals():
            asyncio.run(server.serve([listener]))


@contextmanager
def _closed_by_signals() -> Iterator[None]:
    """Ctrl-C and a request to end are how a desk is closed: what uvicorn raises again after it closed ends here."""
    own = threading.current_thread() is threading.main_thread()
    before = signal.signal(signal.SIGTERM, signal.default_int_handler) if own else None
    try:
        with suppress(KeyboardInterrupt):
            yield
    finally:
        if own:
            signal.signal(signal.SIGTERM, before)


class _Server(uvicorn.Server):
    """A uvicorn server that says when it answers."""

    def __init__(self, config: uvicorn.Config, answering: Callable[[], None]) -> None:
        super().__init__(config)
        self._answering = answering

    async def startup(self, sockets: list[socket.socket] | None = None) -> None:
        """As uvicorn has it, then a word to whoever waits."""
        await super().startup(sockets)
        self._answering()


def _listener(access: Access, first: int) -> socket.socket:
    """A socket on the first free port from one on; raises SetwrightError."""
    last = min(first + TRIED - 1, LAST_PORT)
    try:
        family = socket.getaddrinfo(access.host, first, type=socket.SOCK_STREAM)[0][0]
    except OSError:
        said = f"got {access.host!r}, which is no address of this machine"
        raise SetwrightError(Fault("--host", said, "name this machine's own address")) from None
    for port in range(first, last + 1):
        listener = socket.socket(family, socket.SOCK_STREAM)
        listener.setsockopt(socket.SOL_SOCKET, socket.SO_REUSEADDR, 1)
        try:
            listener.bind((access.host, port))
        except OSError as error:
            listener.close()
            if isinstance(error, PermissionError):
                raise SetwrightError(Fault("--port", f"{port} may not be used", "name one above 1023")) from None
            continue
        return listener
    raise SetwrightError(Fault("--port", f"{first} to {last} are all in use", "name another"))
