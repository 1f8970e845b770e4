"""A brief that no week can meet, as a value that can be changed and tried again."""

from __future__ import annotations

from dataclasses import dataclass, field, replace
from typing import Any

from setwright.catalogue.entries import Catalogue
from setwright.catalogue.faults import UsageFault
from setwright.solver.brief.parsed_brief import parse_brief, raw_of
from setwright.solver.brief.schema import Brief
from setwright.solver.evaluation.finding import ClashMember, Wish
from setwright.solver.evaluation.resolved_brief import ResolvedBrief
from setwright.solver.linear.instance import Instance, instance_of
from setwright.solver.rulebook import RULES, resolve
from setwright.solver.search.feasibility import Possible, possible


@dataclass(frozen=True)
class ClashingBrief:
    """A brief that clashes, resolved, with what clashes in it."""

    resolved: ResolvedBrief
    conflicts: tuple[ClashMember, ...]
    tried: dict[str, Possible] = field(default_factory=dict, repr=False, compare=False)
    """The brief as JSON -> what was found of it, so that no changed brief is solved twice."""

    @property
    def brief(self) -> Brief:
        """The brief as it was asked."""
        return self.resolved.brief

    @property
    def catalogue(self) -> Catalogue:
        """The catalogue that the brief is resolved against."""
        return self.resolved.catalogue

    def about(self, rule: str) -> bool:
        """Whether a rule is part of the clash."""
        return any(conflict.rule == rule for conflict in self.conflicts)

    def wishes(self, rule: str) -> tuple[Wish, ...]:
        """The wishes under a rule that clash."""
        return tuple(c.wish for c in self.conflicts if c.rule == rule and c.wish)

    def changed(self, **changes: Any) -> Brief | None:
        """The brief with some of its fields changed, or None where that is no sound brief."""
        raw = raw_of(self.brief.model_copy(update=changes))
        try:
            return parse_brief(raw, self.catalogue, "", tuple(RULES)).brief
        except UsageFault:
            return None

    def instance(self, brief: Brief) -> Instance:
        """The search's instance of a changed brief."""
        return instance_of(resolve(brief, self.catalogue))

    def possible(self, brief: Brief | None) -> bool:
        """Whether a changed brief has a week, by solving it."""
        return brief is not None and bool(self.outcome(brief).able)

    def outcome(self, brief: Brief) -> Possible:
        """What was found of a changed brief, by solving it once."""
        key = brief.model_dump_json()
        if key not in self.tried:
            self.tried[key] = possible(self.instance(brief))
        return self.tried[key]

    def after(self, brief: Brief) -> ClashingBrief:
        """The same clash with another brief to change further."""
        return replace(self, resolved=resolve(brief, self.catalogue))
