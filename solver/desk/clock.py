"""The time as the desk reads it: the day at hand, and seconds to reckon how long something lasts."""

from __future__ import annotations

import time
from datetime import date


def today() -> date:
    """The day at hand, by this computer's clock."""
    return date.today()


def seconds() -> float:
    """Seconds since some moment: the difference of two readings is what went by, whatever is done to the clock."""
    return time.monotonic()
