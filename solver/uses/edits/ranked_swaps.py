"""Each line's swaps, and where these are few what was refused."""

from __future__ import annotations

from dataclasses import dataclass
from itertools import islice

from setwright.solver.auditing import Audit
from setwright.solver.evaluation.evaluated_week import Line
from setwright.solver.uses.edits.substitutes import candidates
from setwright.solver.uses.edits.swaps import Swap, refused, swaps

ENOUGH = 2
"""Swaps of one line with which nothing refused is told."""
MOST_OF_ONE = 5
"""Swaps where one line alone is asked about."""
MOST_REFUSED = 3


@dataclass(frozen=True)
class RankedSwaps:
    """A line with its swaps, the best first, and what was refused where there are few."""

    line: Line
    swaps: tuple[Swap, ...]
    refused: tuple[Swap, ...]
    """Each done in the way that breaks least."""


def ranked_swaps_of(audited: Audit, lines: tuple[Line, ...]) -> tuple[RankedSwaps, ...]:
    """The swaps of some lines: up to two for each of several, more where one line is asked about."""
    most = ENOUGH if len(lines) > 1 else MOST_OF_ONE
    return tuple(_of_line(audited, line, most) for line in lines)


def _of_line(audited: Audit, line: Line, most: int) -> RankedSwaps:
    able = swaps(audited, line, most)
    if len(able) >= ENOUGH:
        return RankedSwaps(line, able, ())
    names = {swap.exercise.id for swap in able}
    others = [e for kind in candidates(audited.evaluated, line) for e in kind if e.id not in names]
    return RankedSwaps(line, able, tuple(islice(refused(audited, line, others), MOST_REFUSED)))
