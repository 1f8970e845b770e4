"""A mend of a brief: what gives way, in words, and the brief that is left."""

from __future__ import annotations

from collections.abc import Callable, Iterable
from dataclasses import dataclass, field, replace
from typing import Any

from setwright.catalogue.entries import Catalogue
from setwright.catalogue.faults import UsageFault
from setwright.solver.brief.parsed_brief import parse_brief, raw_of
from setwright.solver.brief.schema import Brief
from setwright.solver.evaluation.finding import ClashMember, Wish
from setwright.solver.evaluation.resolved_brief import ResolvedBrief
from setwright.solver.linear.columns import Instance, instance_of
from setwright.solver.planning import Possible, possible
from setwright.solver.rulebook import RULES, resolve


@dataclass(frozen=True)
class Mend:
    """One way to give way: its kind, its words, the brief it leaves, and the minutes and weekly sets it takes."""

    kind: str
    words: str
    brief: Brief
    minutes: int = 0
    sets: float = 0.0


@dataclass(frozen=True)
class Case:
    """A brief that clashes, with its terms and what clashes."""

    resolved: ResolvedBrief
    conflicts: tuple[ClashMember, ...]
    seen: dict[str, Possible] = field(default_factory=dict, repr=False, compare=False)
    """What was found of each changed brief, for whoever asks again."""

    @property
    def brief(self) -> Brief:
        return self.resolved.brief

    @property
    def catalogue(self) -> Catalogue:
        return self.resolved.catalogue

    def about(self, rule: str) -> bool:
        """Whether a rule is part of the clash."""
        return any(conflict.rule == rule for conflict in self.conflicts)

    def wishes(self, rule: str) -> tuple[Wish, ...]:
        """The wishes under a rule that clash."""
        return tuple(c.wish for c in self.conflicts if c.rule == rule and c.wish)

    def changed(self, **changes: Any) -> Brief | None:
        """The brief with some fields changed, or None where that is no sound brief."""
        raw = raw_of(self.brief.model_copy(update=changes))
        try:
            return parse_brief(raw, self.catalogue, "", tuple(RULES)).brief
        except UsageFault:
            return None

    def instance(self, brief: Brief) -> Instance:
        return instance_of(resolve(brief, self.catalogue))

    def possible(self, brief: Brief | None) -> bool:
        """Whether a brief has a week, by solving it."""
        return brief is not None and bool(self.looked(brief).able)

    def looked(self, brief: Brief) -> Possible:
        """What was found of a brief, by solving it once."""
        words = brief.model_dump_json()
        if words not in self.seen:
            self.seen[words] = possible(self.instance(brief))
        return self.seen[words]

    def after(self, brief: Brief) -> Case:
        """The same clash with another brief to change further."""
        return replace(self, resolved=resolve(brief, self.catalogue))


def least(make: Callable[[int], Brief | None], most: int, able: Callable[[Brief | None], bool]) -> int | None:
    """The smallest amount from 1 to `most` whose brief has a week, by bisection; None where `most` has none."""
    if most < 1 or not able(make(most)):
        return None
    low, high = 0, most
    while high - low > 1:
        middle = (low + high) // 2
        low, high = (low, middle) if able(make(middle)) else (middle, high)
    return high


def first_able(mends: Iterable[Mend], able: Callable[[Brief | None], bool]) -> Mend | None:
    """The first mend whose brief has a week."""
    return next((mend for mend in mends if able(mend.brief)), None)
