"""What planning a brief ends in: a solved week, a clash, or no week before the limits."""

from __future__ import annotations

from dataclasses import dataclass

from setwright.solver.auditing import Audit
from setwright.solver.brief.parsed_brief import ParsedBrief
from setwright.solver.evaluation.finding import UNITS, ClashMember
from setwright.solver.evaluation.resolved_brief import ResolvedBrief
from setwright.solver.search.limits import Limits
from setwright.solver.search.secondary.fewest_minutes import ShortestWeek
from setwright.solver.search.stopping import EndedBy


@dataclass(frozen=True)
class Solved:
    """A week that the audit passes, with the bound that no week can pass."""

    parsed: ParsedBrief
    resolved: ResolvedBrief
    audit: Audit
    bound_units: float
    """Whole score units; inf where nothing was proven."""
    ended_by: EndedBy
    limits: Limits
    shortest: ShortestWeek | None = None
    """In efficiency: the best score before the minutes were cut, and what was proven of the minutes."""
    best_without_pairs: float | None = None
    """The score in index points that no week of the brief without pairs can pass, where this week has pairs."""

    @property
    def stimulus(self) -> float:
        """The week index, in index points."""
        return self.audit.stimulus

    @property
    def score(self) -> float:
        """The week index less its costs, in index points."""
        return self.audit.score

    @property
    def bound(self) -> float:
        """Index points that no week's score can pass; inf where nothing was proven."""
        return self.bound_units / UNITS

    @property
    def proven_units(self) -> int:
        """The score that the bound speaks of, in score units."""
        return self.audit.score_units if self.shortest is None else self.shortest.best_units

    @property
    def pairs_bring(self) -> float | None:
        """Index points of score that pairs bring at least; None where the week has none or it is not known."""
        without = self.best_without_pairs
        return None if without is None else max(0.0, self.proven_units / UNITS - without)

    @property
    def gap(self) -> float:
        """Index points between the bound and the score; in efficiency the score before the minutes were cut."""
        return (self.bound_units - self.proven_units) / UNITS

    @property
    def gap_share(self) -> float:
        """The gap as a share of the stimulus."""
        return self.gap / self.stimulus if self.stimulus > 0 else 0.0


@dataclass(frozen=True)
class Clash:
    """A brief that no week can meet: the smallest set of wishes and rules that clash."""

    parsed: ParsedBrief
    resolved: ResolvedBrief
    conflicts: tuple[ClashMember, ...]


@dataclass(frozen=True)
class OutOfTime:
    """No week was found before the limits ended the search."""

    parsed: ParsedBrief
    resolved: ResolvedBrief
    ended_by: EndedBy
    limits: Limits
    least_shortfall: Audit | None = None
    """A week that breaks nothing but lower ends of the brief's bands, by few sets; None where none was sought or found.
    """


End = Solved | Clash | OutOfTime
