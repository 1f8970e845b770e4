"""Why a next load is what it is, as values."""

from __future__ import annotations

from dataclasses import dataclass
from datetime import date
from typing import Literal

Why = Literal[
    "never-done",
    "load-unsaid",
    "long-gap",
    "far-from-range",
    "far-too-easy",
    "under-range-twice",
    "under-range-once",
    "closer-to-failure",
    "two-for-two",
    "top-of-range",
    "big-step-earned",
    "step-too-big",
    "step-out-of-reach",
    "no-heavier",
    "harder-form",
    "fewer-sets",
    "technique-only",
    "more-reps",
    "as-planned",
    "lighter-week",
]
"""never-done: nothing logged, the load is to be found. load-unsaid: logged without its load.

long-gap: not done for weeks. far-from-range: so far under the range that the formulas give the load.
far-too-easy: so much left that the formulas give another load.
under-range-twice, under-range-once: most sets under the range. closer-to-failure: fewer repetitions left than asked.
two-for-two: two or more over the goal in the last set, two sessions running. top-of-range: all sets at the top with the
asked RIR. big-step-earned: enough repetitions beyond the range for a step of over 10 %. step-too-big: not yet enough.
step-out-of-reach: more would be needed than are asked for. no-heavier: nothing heavier can be built. harder-form: body
weight or a band at the top. fewer-sets: at the top, but not in all planned sets. technique-only: the only set
has drops or pauses. more-reps: repetitions first, inside the range. as-planned: nothing logged, the
block's own load. lighter-week: a share of the load last used, in a lighter week or a return.
"""


@dataclass(frozen=True)
class Reason:
    """One reason, with the sessions that it rests on and its amounts."""

    why: Why
    sessions: tuple[date, ...] = ()
    """The dates of the sessions that decided, oldest first."""
    by_reps_alone: bool = False
    """Whether a set that decided does not say how many repetitions were left."""
    step: float | None = None
    """The share by which the load changes, or the next load is heavier where it is not yet taken."""
    reps_needed: int | None = None
    """Repetitions in all sets from which a step of over 10 % is taken, or the most asked for without it."""
    nothing_lighter: bool = False
    """Whether a lighter load is due and none can be built."""
    days: int | None = None
    """Days since the lift was done."""
