"""The curves of the evaluation, each number read from the catalogue's evidence file."""

from __future__ import annotations

import math
from collections.abc import Mapping
from dataclasses import dataclass

from setwright.catalogue.entries import Catalogue, Fatigue


@dataclass(frozen=True)
class Curves:
    """Rest, effort, session and week curves over the numbers given (evidence ids to values)."""

    numbers: Mapping[str, float]

    @staticmethod
    def of(catalogue: Catalogue) -> Curves:
        """The curves over the catalogue's own numbers."""
        return Curves({key: number.value for key, number in catalogue.evidence.items()})

    def rest_quality(self, seconds: float, fatigue: Fatigue) -> float:
        """The growth credit q of a set that follows a rest of so many seconds (Singer et al. 2024, read as a curve)."""
        loss, tau = self.numbers[f"rest-loss-{fatigue}"], self.numbers[f"rest-tau-{fatigue}"]
        return 1.0 - loss * math.exp(-seconds / tau)

    def effort(self, rir: float) -> float:
        """The credit of a set stopped with so many repetitions in reserve (Robinson et al. 2024, refit)."""
        return 1.0 - self.numbers["rir-slope"] * rir

    def session(self, sets: float) -> float:
        """The part of one session's sets that counts for the week: all up to the knee, less and less above."""
        knee, scale = self.numbers["session-knee"], self.numbers["session-scale"]
        return sets if sets <= knee else knee + scale * (1.0 - math.exp(-(sets - knee) / scale))

    def index(self, weekly: float) -> float:
        """The index of so many good weekly sets: 100 at ten (Pelland et al. 2024, square-root form)."""
        good: float = max(weekly, 0.0) / self.numbers["index-reference"]
        return float(100.0 * good ** self.numbers["week-exponent"])

    def credited(self, sets: int, technique: str = "straight", drops: int = 0) -> float:
        """The sets an entry counts as: n, or n - 1 + t where a technique ends the last one."""
        if technique == "drop":
            last = min(1.0 + self.numbers["drop-credit"] * drops, self.numbers["drop-credit-most"])
            return sets - 1 + last
        if technique == "rest-pause":
            return sets - 1 + self.numbers["rest-pause-credit"]
        return float(sets)

    def effective(self, credited: float, rest_seen: float, fatigue: Fatigue, rir: float) -> float:
        """The good sets of one exercise on one day: e(RIR) * (1 + q(rest seen) * (credited - 1))."""
        if credited <= 0:
            return 0.0
        return self.effort(rir) * (1.0 + self.rest_quality(rest_seen, fatigue) * (credited - 1.0))
