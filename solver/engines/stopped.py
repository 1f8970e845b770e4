"""The user's wish to stop a search, as every search asks for it; this file knows no engine."""

from __future__ import annotations

from collections.abc import Callable

Stopped = Callable[[], bool]
"""Whether the user has stopped the search."""


class StoppedRun(Exception):
    """The user stopped the search before it had anything."""


def unstopped() -> bool:
    """No user to stop anything."""
    return False


def check(stopped: Stopped) -> None:
    """Raise StoppedRun once the user has stopped the search."""
    if stopped():
        raise StoppedRun
