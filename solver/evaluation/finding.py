"""What a check of a rule finds, and what a brief wishes, as values; the sheets put them in words."""

from __future__ import annotations

from dataclasses import dataclass, replace
from typing import Literal

UNITS = 10_000
"""Score units in one index point: all costs and scores are whole numbers of these."""
Kind = Literal["hard", "scored", "data"]
"""hard: never broken; scored: a breach costs; data: set by the reckoning, mended with a pencil."""
Amount = float | tuple[int, ...]
"""One number, or several: a range of repetitions, a list of rests in seconds."""


Place = tuple[str, str, str, tuple[int, ...], str, tuple[str, ...]]
"""Rule, case, subject, days, exercise and others of a finding."""


@dataclass(frozen=True)
class Finding:
    """One breach of a rule: what stands, what should, and where; `cost` in score units (0 for a hard or data rule)."""

    rule: str
    cost: int = 0
    case: str = ""
    """Which of the rule's breaches it is, where the rule has several."""
    subject: str = ""
    """The id of a muscle, movement or region that the breach is about."""
    amount: Amount | None = None
    """What stands in the week, in the unit of the rule's sentence."""
    limit: Amount | None = None
    """What the rule asks for, in the same unit."""
    days: tuple[int, ...] = ()
    """Places of the days among the week's sessions."""
    exercise: str = ""
    """The exercise's id, where the breach is about a line of the first of `days` or about an exercise."""
    others: tuple[str, ...] = ()
    """Ids of further exercises or muscles that the breach names."""

    @property
    def breach(self) -> Finding:
        """The same breach, whatever it costs."""
        return replace(self, cost=0)

    @property
    def place(self) -> Place:
        """What the breach is about, however wide it is: equal for two breaches of the same thing."""
        return self.rule, self.case, self.subject, self.days, self.exercise, self.others

    @property
    def width(self) -> float:
        """How far what stands is from what the rule asks for, 0 where it is no matter of one number."""
        if isinstance(self.amount, int | float) and isinstance(self.limit, int | float):
            return abs(self.amount - self.limit)
        return 0.0


@dataclass(frozen=True, order=True)
class Wish:
    """Something that the brief asks for outright, which a week must meet; one member of a clash where it cannot."""

    rule: str
    subject: str
    """The id of a muscle, a movement or a pinned exercise."""
    amount: float = 0.0
    """Weekly sets, days or sets of a pin; 0 where the wish names no number."""
    day: str = ""
    """The weekday of a pin, mon to sun; empty for any."""
    partner: str = ""
    """The id of the exercise that a pin is paired with; empty where it is not."""


@dataclass(frozen=True)
class ClashMember:
    """One member of a clash: a rule, or a wish of the brief under the rule that asks for it."""

    rule: str
    wish: Wish | None = None
