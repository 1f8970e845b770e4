"""Room made in a full day: the cut of one other line that lets a change fit at the least cost."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

from setwright.solver.auditing import Audit
from setwright.solver.evaluation.evaluated_week import Line
from setwright.solver.evaluation.prescriptions import make, set_span
from setwright.solver.evaluation.week import Week
from setwright.solver.uses.edits.editing import entry_as, exchanged, without
from setwright.solver.uses.edits.effects import Effect, effect


@dataclass(frozen=True)
class Cut:
    """A line and the sets it keeps, 0 where it is taken out."""

    line: Line
    sets: int


def room_for(before: Audit, crowded: Audit, day: int, kept: str) -> tuple[Cut, Effect] | None:
    """The cut of a line other than `kept`, an exercise's id, that makes a crowded day fit at the least cost.

    The effect is that of change and cut together, against `before`; None where every such cut breaks a rule.
    """
    found: list[tuple[Cut, Effect]] = []
    for line in crowded.evaluated.on[day]:
        if line.exercise.id != kept:
            for sets, week in _cuts(crowded, line):
                both = effect(before, week)
                if not both.broken:
                    found.append((Cut(line, sets), both))
                    break
    return min(found, key=lambda pair: (-pair[1].after.score_units, pair[0].line.place), default=None)


def _cuts(audited: Audit, line: Line) -> Iterator[tuple[int, Week]]:
    """A line with ever fewer sets, as far as its least, and then the week without it; pairs are only taken apart."""
    evaluated, entry = audited.evaluated, line.entry
    if entry.partner is None:
        for sets in range(line.sets - 1, set_span(evaluated.resolved, line.exercise)[0] - 1, -1):
            way = (sets, entry.rest, entry.technique, entry.drops, False)
            prescription = make(evaluated.resolved, line.exercise, line.day, *way)
            yield sets, exchanged(evaluated, line, entry_as(evaluated.resolved, line.exercise, line.day, prescription))
    yield 0, without(evaluated, line)
