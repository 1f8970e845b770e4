"""What more time buys, as a value: the best week found for each amount of time, and where the gains become small."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Literal

from setwright.solver.brief.parsed_brief import ParsedBrief
from setwright.solver.planning import Solved
from setwright.solver.search.limits import Limits
from setwright.solver.search.stopping import EndedBy
from setwright.solver.uses.time_budget.knee import knee_of

Kind = Literal["minutes", "weekly", "days"]
"""minutes: minutes a session; weekly: minutes a week; days: days a week of the brief's own minutes."""
HALF_HOUR = 30.0


@dataclass(frozen=True)
class CurvePoint:
    """One amount of time with its week."""

    amount: int
    given: int
    """Minutes a week that the amount gives."""
    solved: Solved | None
    """None where no week was found."""
    week_of: int | None
    """The amount that the week was found for."""

    @property
    def score(self) -> float | None:
        """The week's score in index points; None without a week."""
        return None if self.solved is None else self.solved.score

    @property
    def index(self) -> float:
        """The week index; 0 without a week."""
        return 0.0 if self.solved is None else self.solved.stimulus


@dataclass(frozen=True)
class TimeCurve:
    """Points by rising amount; their scores never fall, though an index may where a longer week gives up less."""

    kind: Kind
    parsed: ParsedBrief
    limits: Limits
    points: tuple[CurvePoint, ...]
    searches: int
    """How many searches the points took."""
    ended_by: EndedBy
    wall_clock_limit: float
    """Seconds after which a search of one amount was ended."""
    """work limit | time limit | stopped"""

    @property
    def solved_points(self) -> tuple[CurvePoint, ...]:
        """The points that have a week."""
        return tuple(point for point in self.points if point.solved is not None)

    @property
    def knee(self) -> int | None:
        """The place among the points of the one after which further time buys much less; None where there is none."""
        places = [i for i, point in enumerate(self.points) if point.solved is not None]
        place = knee_of([(float(self.points[i].given), self.points[i].index) for i in places])
        return None if place is None else places[place]

    def gain(self, place: int) -> float | None:
        """Index points for each further half hour a week since the point before; None where either has no week."""
        point, before = self.points[place], self.points[place - 1] if place else None
        if before is None or point.solved is None or before.solved is None:
            return None
        return (point.index - before.index) * HALF_HOUR / (point.given - before.given)
