"""What a change of a week does, by exact reckoning: two audits and what differs between them."""

from __future__ import annotations

from collections import Counter
from dataclasses import dataclass
from functools import cached_property

from setwright.solver.reckoning.audit import Audit, audit
from setwright.solver.reckoning.rule import UNITS, Finding
from setwright.solver.reckoning.view import WHOLE
from setwright.solver.reckoning.week import Week

TIME = "day-minutes"


@dataclass(frozen=True)
class Effect:
    """A week before and after; every difference is after less before."""

    before: Audit
    after: Audit

    @property
    def score(self) -> float:
        """Index points, to the whole score unit."""
        return (self.after.score_units - self.before.score_units) / UNITS

    @property
    def stimulus(self) -> float:
        """Points of the week index."""
        return (self.after.stimulus_units - self.before.stimulus_units) / UNITS

    @property
    def seconds(self) -> int:
        """Seconds of all sessions; a day without lines takes none."""
        return total_seconds(self.after) - total_seconds(self.before)

    @cached_property
    def costs(self) -> tuple[tuple[str, float], ...]:
        """Rules whose cost differs, with the index points by which it does, what comes up first."""
        old, new = self.before.costs(), self.after.costs()
        rules = [*new, *(rule for rule in old if rule not in new)]
        found = [(rule, (new.get(rule, 0) - old.get(rule, 0)) / UNITS) for rule in rules]
        return tuple(sorted(((r, c) for r, c in found if c), key=lambda pair: (-pair[1], pair[0])))

    @cached_property
    def came_up(self) -> tuple[Finding, ...]:
        """Scored findings that stand only in the week after, dearest first."""
        old = {(f.rule, f.text) for f in self.before.charged}
        rose = {rule for rule, cost in self.costs if cost > 0}
        found = [f for f in self.after.charged if f.rule in rose and (f.rule, f.text) not in old and f.cost > 0]
        return tuple(sorted(found, key=lambda f: (-f.cost, f.rule, f.text)))

    @cached_property
    def went(self) -> tuple[Finding, ...]:
        """Scored findings that stand only in the week before, dearest first."""
        return Effect(self.after, self.before).came_up

    @cached_property
    def broken(self) -> tuple[Finding, ...]:
        """Hard findings that are new: of rules broken more often than before, and of a full day made longer."""
        old = Counter(f.rule for f in self.before.broken)
        new = Counter(f.rule for f in self.after.broken)
        said = {(f.rule, f.text) for f in self.before.broken}
        found = [f for f in self.after.broken if new[f.rule] > old[f.rule] and (f.rule, f.text) not in said]
        if self.overfilled and TIME not in {f.rule for f in found}:
            found += [f for f in self.after.broken if f.rule == TIME and (f.rule, f.text) not in said]
        return tuple(found)

    @cached_property
    def overfilled(self) -> bool:
        """Whether a day is beyond its minutes and longer than before."""
        old, new = self.before.view, self.after.view
        return any(new.seconds(d.index) > max(d.limit, old.seconds(d.index)) for d in new.terms.days)

    @cached_property
    def sets(self) -> tuple[tuple[str, float, float], ...]:
        """(muscle, weekly sets before, after) where they differ."""
        old, new = self.before.view, self.after.view
        pairs = [(m, old.weekly_sets(m) / WHOLE, new.weekly_sets(m) / WHOLE) for m in old.terms.muscles]
        return tuple(row for row in pairs if row[1] != row[2])

    def index(self, muscle: str) -> float:
        """The points by which a muscle's index differs."""
        return self.after.view.index(muscle) - self.before.view.index(muscle)

    def moved(self, muscle: str) -> float:
        """The points by which a muscle moves the week index."""
        terms = self.before.view.terms
        return terms.muscles[muscle].weight * self.index(muscle) / terms.weight_sum


def effect(before: Audit, week: Week) -> Effect:
    """What it does to put another week in the place of an audited one."""
    return Effect(before, audit(before.view.terms, week))


def total_seconds(found: Audit) -> int:
    """The seconds of a week's sessions; a day without lines takes none."""
    view = found.view
    return sum(view.seconds(day.index) for day in view.terms.days if view.on[day.index])
