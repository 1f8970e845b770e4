"""An invented client who does what the block asks as well as hidden strength allows, and writes it down."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field
from datetime import date, timedelta
from typing import Any

from setwright.catalogue.entries import Catalogue
from setwright.solver.brief.defaults import WEEKDAYS
from setwright.solver.log.values import LoggedSession, LoggedSet

TIRING = 0.4
"""Repetitions that each set takes from the next."""
SLOWER = 1.1
"""How much longer than planned a session takes."""


@dataclass
class SimulatedClient:
    """Hidden maxima in kg by lift, made when a lift is first met; each grows a little with each session of it."""

    catalogue: Catalogue
    gain: float = 0.008
    """The share by which a maximum grows with each session."""
    standing_still: frozenset[str] = frozenset()
    """Lifts that do not grow."""
    maxima: dict[str, float] = field(default_factory=dict)

    def session(
        self, week: Mapping[str, Any], day: int, targets: Mapping[tuple[int, str], Mapping[str, Any]]
    ) -> LoggedSession:
        """A session of a block document's week done by its next targets."""
        planned = week["days"][day]
        on = date.fromisoformat(week["starts"]) + timedelta(days=WEEKDAYS.index(planned["weekday"]))
        sets = [s for line in planned["entries"] for s in self._sets(line, targets[day, line["exercise"]])]
        minutes = round(SLOWER * planned["seconds"] / 60)
        return LoggedSession(on, tuple(sets), "kg", week["number"], day + 1, minutes=minutes)

    def _sets(self, line: Mapping[str, Any], target: Mapping[str, Any]) -> list[LoggedSet]:
        exercise = self.catalogue.exercises[line["exercise"]]
        loaded = exercise.load not in ("bodyweight", "band") and exercise.body_weight is None and not exercise.timed
        best = self.maxima.setdefault(exercise.id, self._first(exercise.load))
        load = self._load(best, line, target, 2 if exercise.load == "dumbbell" else 10) if loaded else None
        able = 30 * (best / load - 1) if load else 14.0
        aims = target["aims"]
        found = []
        for number in range(1, line["sets"] + 1):
            left = able - TIRING * (number - 1) - line["rir"]
            reps = max(1, min(int(left), aims[number - 1] if number <= len(aims) else aims[-1]))
            rir = max(0, min(9, int(able - TIRING * (number - 1)) - reps))
            found.append(LoggedSet(exercise.id, number, reps, load, rir))
        if exercise.id not in self.standing_still:
            self.maxima[exercise.id] = best * (1 + self.gain)
        return found

    @staticmethod
    def _load(best: float, line: Mapping[str, Any], target: Mapping[str, Any], step: float) -> float:
        """The load asked for, else one that is found: for the lower end with the reserve asked for, in whole steps."""
        if target["load"] is not None:
            return float(target["load"]["load"])
        able = line["reps"][0] + line["rir"] + 1
        return max(step, step * int(best / (1 + able / 30) / step))

    @staticmethod
    def _first(load: str) -> float:
        return {"barbell": 90.0, "dumbbell": 26.0, "stack": 70.0, "plates": 140.0}.get(load, 60.0)
