"""What a change of a week does: two audits and what differs between them."""

from __future__ import annotations

from collections import Counter
from collections.abc import Mapping
from dataclasses import dataclass
from functools import cached_property

from setwright.solver.auditing import Audit, audit
from setwright.solver.evaluation.evaluated_week import WHOLE
from setwright.solver.evaluation.finding import UNITS, Finding, Place
from setwright.solver.evaluation.week import Week

TIME = "day-minutes"
"""The rule that a session fits its day's minutes."""


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
        return self.after.evaluated.week_seconds - self.before.evaluated.week_seconds

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
        old = {f.breach for f in self.before.charged}
        rose = {rule for rule, cost in self.costs if cost > 0}
        found = [f for f in self.after.charged if f.rule in rose and f.breach not in old and f.cost > 0]
        return tuple(sorted(found, key=lambda f: (-f.cost, f.place)))

    @cached_property
    def went(self) -> tuple[Finding, ...]:
        """Scored findings that stand only in the week before, dearest first."""
        return Effect(self.after, self.before).came_up

    @cached_property
    def broken(self) -> tuple[Finding, ...]:
        """Hard findings that are new: of rules broken more often than before, or broken there already and now worse."""
        old = Counter(f.rule for f in self.before.broken)
        new = Counter(f.rule for f in self.after.broken)
        widths = {f.place: f.width for f in self.before.broken}
        return tuple(f for f in self.after.broken if _is_new(f, widths, new[f.rule] > old[f.rule]))

    @cached_property
    def no_longer_broken(self) -> tuple[str, ...]:
        """The rules broken less often than before."""
        old = Counter(f.rule for f in self.before.broken)
        new = Counter(f.rule for f in self.after.broken)
        return tuple(rule for rule in old if new[rule] < old[rule])

    @cached_property
    def sets(self) -> tuple[tuple[str, float, float], ...]:
        """(muscle, weekly sets before, after) where they differ."""
        old, new = self.before.evaluated, self.after.evaluated
        pairs = [(m, old.weekly_sets(m) / WHOLE, new.weekly_sets(m) / WHOLE) for m in old.resolved.muscles]
        return tuple(row for row in pairs if row[1] != row[2])

    def index(self, muscle: str) -> float:
        """The points by which a muscle's index differs."""
        return self.after.evaluated.index(muscle) - self.before.evaluated.index(muscle)

    def moved(self, muscle: str) -> float:
        """The points by which a muscle moves the week index."""
        resolved = self.before.evaluated.resolved
        return resolved.muscles[muscle].weight * self.index(muscle) / resolved.weight_sum


def _is_new(finding: Finding, widths: Mapping[Place, float], more: bool) -> bool:
    """Whether a breach is new: one that stood before only if it is wider now, any other if its rule is broken more."""
    was = widths.get(finding.place)
    return more if was is None else finding.width > was


def effect(before: Audit, week: Week) -> Effect:
    """What it does to put another week in the place of an audited one."""
    return Effect(before, audit(before.evaluated.resolved, week))
