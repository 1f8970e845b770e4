"""The curves of the evaluation, each number read from the catalogue's evidence file."""

from __future__ import annotations

import math
from collections.abc import Mapping
from dataclasses import dataclass

from setwright.catalogue.entries import Catalogue, Fatigue


@dataclass(frozen=True)
class SetConditions:
    """What an exercise's sets on one day are credited by: rests in seconds, repetitions in reserve, a technique."""

    sets: int
    first_rest: float
    """The rest that the first set sees: the change-over from the exercise before, or that exercise's last rest."""
    rest: float
    """The rest that each further set sees."""
    rir: float
    usual_rir: float
    """The repetitions in reserve of this kind of lift, at which effort is credited in full."""
    extra: float = 0.0
    """Sets that a technique adds to the last one."""
    partner_loss: float = 0.0
    """The share of every set that is lost because the other exercise of a pair tires the same things."""


@dataclass(frozen=True)
class Curves:
    """Rest, effort, session and week curves over the numbers given (evidence ids to values)."""

    numbers: Mapping[str, float]

    @staticmethod
    def of(catalogue: Catalogue) -> Curves:
        """The curves over the catalogue's own numbers."""
        return Curves({key: number.value for key, number in catalogue.evidence.items()})

    def rest_quality(self, seconds: float, fatigue: Fatigue) -> float:
        """The credit q, 0 to 1 set, of a set that follows a rest of so many seconds (Singer et al. 2024)."""
        loss, tau = self.numbers[f"rest-loss-{fatigue}"], self.numbers[f"rest-tau-{fatigue}"]
        return max(0.0, 1.0 - loss * math.exp(-seconds / tau))

    def effort(self, rir: float, usual: float) -> float:
        """The credit of a set stopped with so many repetitions in reserve, 1 at the number usual for its kind of lift.

        Robinson et al. 2024, refit, on the scale of sets.
        """
        return 1.0 - self.numbers["rir-slope"] * (rir - usual)

    def session(self, sets: float) -> float:
        """The part of one session's sets that counts for the week: all up to the knee, less and less above."""
        knee, scale = self.numbers["session-knee"], self.numbers["session-scale"]
        return sets if sets <= knee else knee + scale * (1.0 - math.exp(-(sets - knee) / scale))

    def index(self, weekly: float) -> float:
        """The index of so many good weekly sets: 100 at ten (Pelland et al. 2024, square-root form)."""
        good: float = max(weekly, 0.0) / self.numbers["index-reference"]
        return float(100.0 * good ** self.numbers["week-exponent"])

    def extra(self, technique: str = "straight", drops: int = 0) -> float:
        """The sets that a technique adds to the last one: a drop set's drops, or the parts of a rest-pause set."""
        if technique == "drop":
            return min(self.numbers["drop-credit"] * drops, self.numbers["drop-credit-most"] - 1.0)
        if technique == "rest-pause":
            return self.numbers["rest-pause-credit"] - 1.0
        return 0.0

    def effective(self, done: SetConditions, fatigue: Fatigue) -> float:
        """The good sets of one exercise on one day: each set by the rest before it, times the effort of all.

        The first set is credited for the rest that it sees too, and what a technique adds asks for no rest.
        """
        if done.sets <= 0:
            return 0.0
        first = self.rest_quality(done.first_rest, fatigue)
        others = self.rest_quality(done.rest, fatigue) * (done.sets - 1)
        whole = first + others + done.extra
        return self.effort(done.rir, done.usual_rir) * (1.0 - done.partner_loss) * whole

    def credited(self, sets: int, technique: str = "straight", drops: int = 0) -> float:
        """The sets an entry counts as in a band: n, and what a technique adds to the last one."""
        return sets + self.extra(technique, drops)
