"""Moments as the book writes them: UTC, whole seconds, in the order of the alphabet."""

from __future__ import annotations

from datetime import UTC, datetime


def moment(at: datetime | None = None) -> str:
    """A moment, now if none is given, as 2026-04-03T18:05:00Z."""
    return (at or datetime.now(UTC)).astimezone(UTC).strftime("%Y-%m-%dT%H:%M:%SZ")
