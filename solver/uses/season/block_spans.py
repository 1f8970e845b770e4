"""Which spans of weeks may be a block, and which week of each is the leanest, by which the whole block is planned."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from setwright.catalogue.faults import Fault, UsageFault
from setwright.solver.uses.season.season_weeks import SeasonWeek


@dataclass(frozen=True)
class BlockSpan:
    """Weeks in a row with sessions in the same kit; the last of them is the lighter one."""

    first: int
    weeks: int
    leanest: int
    """The week of the fewest minutes among its full weeks, the first of equals."""


def checked_spans(weeks: Sequence[SeasonWeek], lengths: tuple[int, int], lighter_share: float) -> tuple[BlockSpan, ...]:
    """Every block that may be, as `spans_of` finds them; raises UsageFault where there is none."""
    if found := spans_of(weeks, lengths, lighter_share):
        return found
    if not any(week.days for week in weeks):
        raise UsageFault(Fault("calendar", "leaves no training day in the season", "give days above 0 in some row"))
    if len(weeks) < lengths[0]:
        raise UsageFault(
            Fault(
                "weeks of a block",
                f"a block has at least {lengths[0]} weeks, and the season has {len(weeks)}",
                "allow shorter blocks, or a longer season",
            )
        )
    raise UsageFault(
        Fault(
            "calendar",
            f"leaves no {lengths[0]} weeks in a row to train in one kit",
            "allow shorter blocks, or fewer days off",
        )
    )


def spans_of(weeks: Sequence[SeasonWeek], lengths: tuple[int, int], lighter_share: float) -> tuple[BlockSpan, ...]:
    """Every block that may be, by its first week and then its length.

    No week without a session is in one. The lighter week needs `lighter_share` of the leanest week's minutes.
    """
    return tuple(span for first in range(len(weeks)) for span in _spans_from(weeks, first, lengths, lighter_share))


def _spans_from(weeks: Sequence[SeasonWeek], first: int, lengths: tuple[int, int], share: float) -> Iterator[BlockSpan]:
    for length in range(lengths[0], min(lengths[1], len(weeks) - first) + 1):
        inside = weeks[first : first + length]
        if not all(week.days for week in inside) or len({_kit_of(week) for week in inside}) > 1:
            continue
        leanest = min(range(first, first + length - 1), key=lambda w: (weeks[w].minutes, w))
        if inside[-1].minutes >= share * weeks[leanest].minutes:
            yield BlockSpan(first, length, leanest)


def _kit_of(week: SeasonWeek) -> frozenset[object]:
    """What its sessions are trained with."""
    return frozenset(day.equipment for day in week.days)
