"""What a log's file says that no session holds."""

from __future__ import annotations

from dataclasses import dataclass


@dataclass(frozen=True)
class UnreadRow:
    """A part of a file that was understood as no set: where it stands, what it says, and why it was left."""

    place: str
    text: str
    why: str
