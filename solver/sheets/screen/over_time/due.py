"""What is due for a client, as a value."""

from __future__ import annotations

from dataclasses import dataclass
from datetime import date


@dataclass(frozen=True)
class PlannedSession:
    """A session that stands on a day: its number in the week, and its minutes."""

    on: date
    number: int
    minutes: int


@dataclass(frozen=True)
class StandingStill:
    """A lift of the week at hand whose estimated maximum does not rise, and since when."""

    exercise: str
    name: str
    since: date


@dataclass(frozen=True)
class Due:
    """What is due for a client on a day."""

    next: PlannedSession | None
    """The next session from today on, of this week and the next; None where none stands on a weekday."""
    planned: bool
    """Whether any week or block is kept."""
    behind: int
    """Sessions of this week and the last that were planned before today and are not logged."""
    days_since_last: int | None
    """Days since the last session that was logged."""
    block_ends: date | None
    """The last day of the block where it is seven days away or less, or over, and no block follows."""
    review: bool
    """Whether that block is over, so that it is time to look back and plan the next."""
    stalls: tuple[StandingStill, ...] = ()
    """The lifts of the block's week at hand that stand still, in its order."""
