"""How two weeks of the same days differ, line by line."""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from dataclasses import dataclass, replace

from setwright.solver.evaluation.week import Entry, Week


@dataclass(frozen=True)
class LineChange:
    """A line out (`after` is None), a new line (`before` is None), or one exercise done otherwise on its day."""

    day: int
    before: Entry | None
    after: Entry | None


def line_changes(before: Week, after: Week, days: Iterable[int]) -> tuple[LineChange, ...]:
    """The lines that differ on some days, in the order of the days: those out, those done otherwise, those new."""
    return tuple(change for day in days for change in _of_day(day, before.days[day], after.days[day]))


def _of_day(day: int, before: tuple[Entry, ...], after: tuple[Entry, ...]) -> Iterator[LineChange]:
    new = {entry.exercise: entry for entry in after}
    old = {entry.exercise: entry for entry in before}
    yield from (LineChange(day, entry, None) for entry in before if entry.exercise not in new)
    for entry in before:
        now = new.get(entry.exercise)
        if now is not None and not done_alike(entry, now):
            yield LineChange(day, entry, now)
    yield from (LineChange(day, None, entry) for entry in after if entry.exercise not in old)


def done_alike(one: Entry, other: Entry) -> bool:
    """Whether two lines are one exercise done in one way; with whom it is paired does not count, that it is does."""
    alike = (one.partner is None) == (other.partner is None)
    return alike and replace(one, partner=None) == replace(other, partner=None)


def changed_lines(changes: Iterable[LineChange]) -> int:
    """How many lines a coach has to write anew or strike: a line out and a new one on its day are one."""
    out: dict[int, int] = {}
    new: dict[int, int] = {}
    otherwise = 0
    for change in changes:
        if change.before is None:
            new[change.day] = new.get(change.day, 0) + 1
        elif change.after is None:
            out[change.day] = out.get(change.day, 0) + 1
        else:
            otherwise += 1
    return otherwise + sum(max(out.get(day, 0), new.get(day, 0)) for day in sorted({*out, *new}))
