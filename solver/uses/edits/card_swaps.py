"""The swaps that a card names for each line, so that a client whose station is taken has something to do."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from itertools import islice

from setwright.catalogue.entries import Exercise
from setwright.solver.auditing import Audit
from setwright.solver.evaluation.evaluated_week import Line
from setwright.solver.uses.edits.effects import TIME
from setwright.solver.uses.edits.substitutes import candidates
from setwright.solver.uses.edits.swaps import fitting, refused, rules_broken

CardSwaps = Mapping[tuple[int, int], tuple[Exercise, ...]]
"""(day, place of the line on the day) -> exercises that may stand in its place, the best first."""
MOST = 2
"""Swaps named for one line."""


def swaps_on_cards(audited: Audit, days: Iterable[int] | None = None) -> CardSwaps:
    """The swaps of every line of a week, or of some of its days; each line's by dozens of audits, so ask once."""
    wanted = range(len(audited.evaluated.on)) if days is None else days
    lines = [line for day in wanted for line in audited.evaluated.on[day]]
    return {(line.day.index, line.place): line_swaps(audited, line, MOST) for line in lines}


def line_swaps(audited: Audit, line: Line, most: int) -> tuple[Exercise, ...]:
    """Up to `most` swaps of a line: those that break nothing, then those that only run a full day over its minutes.

    Exercises of the line's movement come first, of each kind those that fit.
    """
    names: list[Exercise] = []
    for kind in candidates(audited.evaluated, line):
        exercises = [e for e in kind if not audited.evaluated.resolved.excluded_by(e, line.day)]
        names += [swap.exercise for swap in fitting(audited, line, exercises, most - len(names))]
        if len(names) < most:
            rest = [e for e in exercises if e not in names]
            over = (s.exercise for s in refused(audited, line, rest) if rules_broken(s) == (TIME,))
            names += islice(over, most - len(names))
        if len(names) >= most:
            break
    return tuple(names)
