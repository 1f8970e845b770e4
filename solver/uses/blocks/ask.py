"""What is asked of a block: how many weeks, from when, and which days of them are not as usual."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from datetime import date, timedelta

MOST_WEEKS = 52
WEEK = timedelta(weeks=1)


@dataclass(frozen=True)
class Span:
    """Days from the first to the last, both included."""

    first: date
    last: date

    def holds(self, day: date) -> bool:
        """Whether a day is one of them."""
        return self.first <= day <= self.last


@dataclass(frozen=True)
class Sessions:
    """So many sessions a week of so many minutes each."""

    count: int
    minutes: int


@dataclass(frozen=True)
class Travel(Span):
    """Days away, with a kit or items by id or name; the sessions as usual where nothing else is said."""

    kit: tuple[str, ...] = ()
    sessions: Sessions | None = None


@dataclass(frozen=True)
class Short(Span):
    """Whole weeks with other sessions than usual, at the usual place."""

    sessions: Sessions = Sessions(2, 30)


@dataclass(frozen=True)
class BlockAsk:
    """A block as asked for; spans can be said only where the block has a first day."""

    weeks: int
    """Calendar weeks; with `shifted` those that are neither off, away, short nor at the minimum dose."""
    starts: date | None = None
    """A Monday; None where the weeks are only numbered."""
    lighter_every: int | None = None
    """Every so many weeks one is lighter, 0 for none; None takes the default."""
    off: tuple[Span, ...] = ()
    travel: tuple[Travel, ...] = ()
    short: tuple[Short, ...] = ()
    minimum: tuple[Span, ...] = ()
    break_weeks_before: int = 0
    """Weeks without training before the block."""
    now: tuple[tuple[str, float], ...] = ()
    """(muscle or group, weekly sets at present)."""
    shifted: bool = False
    """Whether weeks that are not as usual push the others back; else the calendar goes on."""

    def spans(self) -> Iterator[tuple[str, Span]]:
        """(kind, span) of all days that are not as usual: off, travel, short or minimum."""
        for kind in ("off", "travel", "short", "minimum"):
            for span in getattr(self, kind):
                yield kind, span
