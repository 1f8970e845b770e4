"""What is sent to a worker and how a variant may end."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from dataclasses import dataclass
from typing import Any


@dataclass(frozen=True)
class VariantTask:
    """One variant to solve, complete in itself: it can be sent to a process on any machine."""

    name: str
    values: Mapping[str, str]
    brief: str
    """The raw brief as JSON."""
    key: str
    share: float | None
    stamp: Mapping[str, Any]
    overlay: tuple[str, bytes] | None
    """Name and bytes of the catalogue file laid over the shipped one."""
    extends: str | None
    """The name of the shorter variant."""
    previous: bytes | None
    """The result of the nearest shorter variant that has a week; None where the variant stands alone."""


Work = Callable[[VariantTask], bytes]
"""Solves one task; the same task gives the same bytes on any machine with the same stamp."""


@dataclass(frozen=True)
class Ending:
    """What is read of a stored result to know how the variant ended."""

    end: str
    said: str
    """Why it has no week, in a line."""


SOLVED, CLASH, NO_WEEK = "solved", "clash", "no week"
UNFINISHED, SET_ASIDE = "unfinished", "set aside"
FINAL = (SOLVED, CLASH, NO_WEEK)
"""Ends that a re-run leaves as they are."""
