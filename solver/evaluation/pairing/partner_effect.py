"""What the other exercise of a pair takes from one: a share of its credit, and time where the two places are apart."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from typing import Any

from setwright.solver.evaluation.resolved_brief import ResolvedBrief


@dataclass(frozen=True, order=True)
class PartnerEffect:
    """How two exercises done in turn get in each other's way; each count is the same for both."""

    shared_muscles: int = 0
    """Muscles that both train indirectly."""
    grip: bool = False
    """Whether grip limits one of them and the other uses the forearms too."""
    large_lifts: int = 0
    """0, 1 where both are multi-joint lifts, 2 where one of these tires much."""
    apart: bool = False
    """Whether they are done at two places with a walk between."""

    def loss(self, numbers: Mapping[str, Any]) -> Any:
        """The share of each set's credit that is lost; numbers may be single values or draws."""
        return (
            self.shared_muscles * numbers["pair-loss-shared"]
            + (numbers["pair-loss-grip"] if self.grip else 0.0)
            + self.large_lifts * numbers["pair-loss-large"]
        )


NO_EFFECT = PartnerEffect()
PAIR_LOSSES = ("pair-loss-shared", "pair-loss-grip", "pair-loss-large")
"""The ids of the numbers that a loss is made of."""


def pair_change_seconds(resolved: ResolvedBrief, apart: bool) -> int:
    """The seconds from the first exercise of a pair to the second."""
    change = round(resolved.number("pair-change-seconds"))
    return change + round(resolved.number("pair-walk-seconds")) if apart else change


def pair_rest_seen(resolved: ResolvedBrief, rest: int, apart: bool) -> int:
    """The rest in seconds that each exercise of a pair sees: the pair's rest, the change and the partner's set."""
    return rest + pair_change_seconds(resolved, apart) + round(resolved.number("pair-seen-extra-seconds"))
