"""Efficiency's second step: the fewest minutes that keep a share of the stimulus."""

from __future__ import annotations

import math
from dataclasses import dataclass

from setwright.solver.model.limits import Limits
from setwright.solver.model.search.climb import Climb, Stopped
from setwright.solver.model.search.neighbourhoods import neighbourhoods
from setwright.solver.reckoning.audit import Audit, audit
from setwright.solver.reckoning.rule import UNITS
from setwright.solver.reckoning.terms import Terms

MARGIN = 300
"""Score units by which the model's tangents may lie above the true curve."""


@dataclass(frozen=True)
class Shortened:
    """The shortest week found, the best score before, and the floor that was kept (score units)."""

    audit: Audit
    best_units: int
    floor: int
    seconds: int

    @property
    def best_score(self) -> float:
        """The score before the minutes were cut, in index points."""
        return self.best_units / UNITS


def shorten(climb: Climb, terms: Terms, limits: Limits) -> Shortened:
    """From the climb's best week, the fewest seconds with score >= best - (1 - share) * stimulus."""
    best = climb.best
    if best is None:
        raise AssertionError("shortening starts from a week")
    floor = math.ceil(best.score_units - (1.0 - terms.keep_share) * best.stimulus_units)
    current, columns = best, climb.chosen
    todo = neighbourhoods(len(terms.days), limits.columns)
    try:
        for _ in range(limits.rounds // 2):
            climb.check()
            place = next(todo)
            climb.chosen = columns
            program = climb.program(place)
            program.hint(columns)
            program.minimise_half_seconds(floor + MARGIN)
            seen: list[frozenset[int]] = []
            program.solve(limits.work, limits.seconds, seen.append)
            for found in reversed(seen):
                trial = audit(terms, climb.week(found))
                if not trial.broken and trial.score_units >= floor and total(trial) < total(current):
                    current, columns = trial, found
                    break
    except Stopped:
        pass
    return Shortened(current, best.score_units, floor, total(current))


def total(found: Audit) -> int:
    """The week's seconds."""
    return sum(found.view.seconds(day.index) for day in found.view.terms.days)
