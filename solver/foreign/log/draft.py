"""One session while its rows are gathered: its sets in order, and what its rows say of the session itself."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from dataclasses import dataclass, field
from datetime import date, time
from typing import Any

from setwright.solver.log.values import LoggedSession, LoggedSet, Side


@dataclass(frozen=True)
class ReadSession:
    """A session as read, its place in the file, and the place of each of its sets."""

    session: LoggedSession
    place: str
    set_place: Callable[[int], str]


@dataclass
class Draft:
    """A session's rows so far; `rows` holds the line of each set, `numbers` the number it was given, 0 for none."""

    on: date
    first: int
    sets: list[LoggedSet] = field(default_factory=list)
    rows: list[int] = field(default_factory=list)
    said: dict[str, tuple[Any, int]] = field(default_factory=dict)
    """Field -> value and line, of what the rows say of the session."""
    notes: list[tuple[str, str]] = field(default_factory=list)
    """(lift or nothing, words)."""
    counted: dict[tuple[str, Side | None], int] = field(default_factory=dict)
    times: dict[time, int] = field(default_factory=dict)
    """Times that stand with the date, and the first line of each."""
    runs: list[int] = field(default_factory=list)
    """Where, among the sets, rows of this session begin again after rows of another."""

    def add(self, done: LoggedSet, line: int) -> None:
        """Keep a set; number 0 stands for the next of its lift and side."""
        key = (done.exercise, done.side)
        number = done.number or self.counted.get(key, 0) + 1
        self.counted[key] = number
        if number != done.number:
            done = LoggedSet(done.exercise, number, done.reps, done.load, done.rir, done.side, done.ended)
        self.sets.append(done)
        self.rows.append(line)

    def in_order(self) -> tuple[list[LoggedSet], list[int]]:
        """The sets with their lines as they were done: by their ends where all say them, else each lift's by number."""
        pairs = list(zip(self.sets, self.rows, strict=True))
        if pairs and all(done.ended for done, _ in pairs):
            pairs.sort(key=lambda pair: (pair[0].ended, pair[0].number))
        else:
            pairs = _by_number(pairs)
        return [done for done, _ in pairs], [line for _, line in pairs]


def _by_number(pairs: Sequence[tuple[LoggedSet, int]]) -> list[tuple[LoggedSet, int]]:
    """The places of each lift's sets stay, the sets on them are in the order of their numbers."""
    places: dict[str, list[int]] = {}
    for place, (done, _) in enumerate(pairs):
        places.setdefault(done.exercise, []).append(place)
    found = list(pairs)
    for held in places.values():
        for place, pair in zip(held, sorted((pairs[p] for p in held), key=lambda p: p[0].number), strict=True):
            found[place] = pair
    return found
