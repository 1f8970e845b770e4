"""The real `setwright desk` in a process of its own, and a browser that was let in."""

from __future__ import annotations

import os
import signal
import subprocess
import sys
from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path
from urllib.parse import urlsplit

import httpx2

JSON = {"Accept": "application/json"}


class RunningDesk:
    """A desk that answers; killed when its context ends."""

    def __init__(self, process: subprocess.Popen[str], address: str) -> None:
        self.process, self.address = process, address
        parts = urlsplit(address)
        self.origin = f"{parts.scheme}://{parts.netloc}"

    @contextmanager
    def browser(self) -> Iterator[httpx2.Client]:
        """A browser without pages, let in by the token."""
        with httpx2.Client(base_url=self.origin, headers={"Origin": self.origin, **JSON}, timeout=60) as found:
            found.get(self.address)
            yield found

    def kill(self) -> None:
        """End the server at once, as a power cut would."""
        self.process.send_signal(signal.SIGKILL)
        self.process.wait()


@contextmanager
def running_desk(book: Path, *more: str) -> Iterator[RunningDesk]:
    """The desk of a book on a free port."""
    command = [sys.executable, "-m", "setwright", "desk", "--no-open", "--book", str(book), *more]
    state = {**os.environ, "XDG_STATE_HOME": str(book.parent / "state"), "PYTHONUNBUFFERED": "1"}
    process = subprocess.Popen(command, stdout=subprocess.PIPE, text=True, env=state)
    try:
        assert process.stdout is not None
        yield RunningDesk(process, next(line for line in process.stdout if "http" in line).split()[-1])
    finally:
        process.kill()
        process.wait()
