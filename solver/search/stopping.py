"""How a search ends, and the signal that ends one before its work is done."""

from __future__ import annotations

import time
from enum import StrEnum

from setwright.solver.engines.stopped import Stopped, StoppedRun, unstopped

LEAST_SECONDS = 0.1
"""An engine that is about to start gets at least so many seconds."""


class EndedBy(StrEnum):
    """What ended a search; the values are the words that documents and messages use."""

    PROVED = "proved"
    """No week scores more than the one found, but for rounding."""
    WORK_LIMIT = "work limit"
    TIME_LIMIT = "time limit"
    """The wall-clock limit came before the work limit."""
    STOPPED = "stopped"
    """The user stopped it."""

    @property
    def interrupted(self) -> bool:
        """Whether the search ended before its work limit: that it found no week then says nothing of the brief."""
        return self in (EndedBy.TIME_LIMIT, EndedBy.STOPPED)


class Interrupted(Exception):
    """A search was stopped by the user or met its wall-clock limit."""

    def __init__(self, ended_by: EndedBy) -> None:
        super().__init__(ended_by.value)
        self.ended_by = ended_by


def check_not_stopped(ended_by: EndedBy) -> None:
    """Raise StoppedRun where a search that found nothing was ended by the user."""
    if ended_by is EndedBy.STOPPED:
        raise StoppedRun


class StopSignal:
    """Whether a search has to end early: the user's wish, or `seconds` of wall clock from now on."""

    def __init__(self, seconds: float, stopped: Stopped = unstopped, begun: float | None = None) -> None:
        """`begun` is a reading of `time.monotonic` from which the seconds count instead."""
        self.stopped = stopped
        self._until = (time.monotonic() if begun is None else begun) + seconds

    def seconds_left(self) -> float:
        """Seconds until the wall-clock limit, at least a tenth of one."""
        return max(LEAST_SECONDS, self._until - time.monotonic())

    def check(self) -> None:
        """Raise Interrupted if the user stopped the search or its seconds are over."""
        if self.stopped():
            raise Interrupted(EndedBy.STOPPED)
        if time.monotonic() > self._until:
            raise Interrupted(EndedBy.TIME_LIMIT)
