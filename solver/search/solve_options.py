"""What a caller may say about a search, in one value: how much work, how many workers, when to stop, who watches."""

from __future__ import annotations

import time
from collections.abc import Callable
from dataclasses import dataclass, replace
from typing import TYPE_CHECKING, Literal

from setwright.solver.engines.stopped import Stopped, unstopped
from setwright.solver.search.limits import DEFAULT, SEARCHES, WALL_CLOCK_LIMITS, Limits
from setwright.solver.search.stopping import StopSignal

if TYPE_CHECKING:
    from setwright.solver.auditing import Audit


@dataclass(frozen=True)
class Progress:
    """What a watcher is told: the best score and the bound, in score units, and the seconds so far."""

    score: float
    """-inf before the first week."""
    bound: float
    """inf before anything is proven."""
    seconds: float
    best: Audit | None = None
    """The best week so far."""


Watch = Callable[[Progress], None]


@dataclass(frozen=True)
class SolveOptions:
    """How to search; the defaults are those of the normal search. Only `limits` has a part in which week is found."""

    limits: Limits = SEARCHES[DEFAULT]
    """How much work: one of SEARCHES, or one with amounts of your own."""
    workers: Literal[1, 2] = 2
    """Two threads beside each other, or one that does the same work in turn: the week is the same."""
    wall_clock_limit: float | None = None
    """Seconds after which all work ends whatever is left of it; None takes those of the named search."""
    begun: float | None = None
    """The reading of `time.monotonic` from which the limit counts; None counts it from the start of each call."""
    watch: Watch | None = None
    """Told of each better week and each lower bound, from either thread."""
    stopped: Stopped = unstopped
    """Asked again and again; the search ends with what it has once it says True."""
    pairs_note: bool = True
    """Whether `plan` also bounds the score of the best week without pairs, where the week found has some."""

    @property
    def limit(self) -> float:
        """The wall-clock limit in seconds."""
        if self.wall_clock_limit is not None:
            return self.wall_clock_limit
        return WALL_CLOCK_LIMITS.get(self.limits.name, WALL_CLOCK_LIMITS[DEFAULT])

    @property
    def seconds(self) -> float:
        """The seconds that are left until the limit, at least a tenth of one."""
        return self.signal().seconds_left()

    def signal(self) -> StopSignal:
        """The signal that ends what is done by these options."""
        return StopSignal(self.limit, self.stopped, self.begun)

    def is_over(self) -> bool:
        """Whether the user stopped what is done by these options, or their time, counted from `begun`, is over."""
        late = self.begun is not None and time.monotonic() > self.begun + self.limit
        return late or self.stopped()

    def started(self) -> SolveOptions:
        """The same with the limit counted from now on, if it is not counted from an earlier moment already."""
        return self if self.begun is not None else replace(self, begun=time.monotonic())
