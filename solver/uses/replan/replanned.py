"""A week replanned after what happened: what is done to the letter, the rest with as few changed lines as can be."""

from __future__ import annotations

from dataclasses import dataclass, replace

from setwright.solver.auditing import Audit, audit
from setwright.solver.brief.parsed_brief import ParsedBrief
from setwright.solver.brief.schema import Pin
from setwright.solver.evaluation.evaluated_week import WHOLE
from setwright.solver.evaluation.finding import UNITS
from setwright.solver.evaluation.line_changes import LineChange, changed_lines, line_changes
from setwright.solver.evaluation.resolved_brief import ResolvedBrief
from setwright.solver.evaluation.week import Week
from setwright.solver.planning import Clash, OutOfTime, RestOfWeek, StandingWeek, plan_rest
from setwright.solver.rulebook import resolve
from setwright.solver.search.solve_options import SolveOptions
from setwright.solver.uses.replan.changed_brief import brief_after, pins_dropped
from setwright.solver.uses.replan.happened import Happened


@dataclass(frozen=True)
class BelowBand:
    """A muscle that ends below its band, in weekly fractional sets."""

    muscle: str
    sets: float
    low: float
    planned: float
    """Sets of the week as it was planned."""


@dataclass(frozen=True)
class Replanned:
    """The week as it is now, beside the one that was planned."""

    happened: Happened
    parsed: ParsedBrief
    """With the brief as it is now."""
    before: Audit
    after: Audit
    best_units: int
    """The best score found for what is left, in score units; fewer changes may cost a share of it."""
    share: float
    """The share of the best week's stimulus that was kept for fewer changes."""
    pins_dropped: tuple[Pin, ...]

    @property
    def left(self) -> tuple[int, ...]:
        """The days that were planned again."""
        return self.happened.left(len(self.after.evaluated.on))

    @property
    def changes(self) -> tuple[LineChange, ...]:
        """The lines of those days that differ."""
        return line_changes(self.before.evaluated.week, self.after.evaluated.week, self.left)

    @property
    def changed_lines(self) -> int:
        """How many lines differ, a line out and a new one on its day counted once; missed sessions left aside."""
        return changed_lines(self.changes)

    @property
    def given_up(self) -> float:
        """Index points of score given up for fewer changes."""
        return max(0, self.best_units - self.after.score_units) / UNITS

    @property
    def below_band(self) -> tuple[BelowBand, ...]:
        """The sought muscles that end below their band, in the catalogue's order."""
        old, new = self.before.evaluated, self.after.evaluated
        return tuple(
            BelowBand(m.id, new.weekly_sets(m.id) / WHOLE, m.low, old.weekly_sets(m.id) / WHOLE) for m in new.below_band
        )


def replanned(
    parsed: ParsedBrief, before: Audit, happened: Happened, options: SolveOptions
) -> Replanned | Clash | OutOfTime:
    """The week after what happened: done sessions to the letter, missed ones empty, the others planned again.

    After a missed session none of the others gets more sets than were planned for it, unless it has more minutes now.
    """
    resolved = before.evaluated.resolved
    brief = brief_after(resolved.brief, happened, resolved.catalogue)
    now, after = replace(parsed, brief=brief), resolve(brief, resolved.catalogue)
    standing = _standing(before, happened, after)
    share = kept_share(after)
    dropped = pins_dropped(resolved.brief, happened)
    if not standing.free:
        alone = audit(after, standing.week)
        return Replanned(happened, now, before, alone, alone.score_units, share, dropped)
    found = plan_rest(now, after, standing, share, options)
    if not isinstance(found, RestOfWeek):
        return found
    return Replanned(happened, now, before, found.audit, found.best_units, share, dropped)


def kept_share(resolved: ResolvedBrief) -> float:
    """The share of the best stimulus that is kept: the default, or the brief's own where minutes were cut by it."""
    default = resolved.catalogue.defaults.replan_share
    return min(default, resolved.keep_share) if resolved.goal == "efficiency" else default


def _standing(before: Audit, happened: Happened, after: ResolvedBrief) -> StandingWeek:
    """The week without its missed sessions, and how many sets each of those left may have."""
    week, days = before.evaluated.week, before.evaluated.resolved.days
    held = Week(tuple(() if day in happened.missed else entries for day, entries in enumerate(week.days)))
    free = happened.left(len(days))
    capped = [d for d in free if held.days[d] and after.days[d].minutes <= days[d].minutes] if happened.missed else []
    most = {day: sum(entry.sets for entry in held.days[day]) for day in capped}
    shorter = {day: after.days[day].minutes < days[day].minutes for day in free}
    return StandingWeek(held, happened.done, free, most, shorter, before)
