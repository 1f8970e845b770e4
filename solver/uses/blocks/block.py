"""A block as a value: its weeks, each with its brief, its audit and what its lines are planned at."""

from __future__ import annotations

from dataclasses import dataclass
from datetime import date

from setwright.solver.auditing import Audit
from setwright.solver.brief.parsed_brief import ParsedBrief
from setwright.solver.evaluation.evaluated_week import EvaluatedWeek
from setwright.solver.evaluation.week import Week
from setwright.solver.planning import Clash, OutOfTime
from setwright.solver.uses.blocks.ask import BlockAsk
from setwright.solver.uses.blocks.calendar import CalendarWeek, Kind
from setwright.solver.uses.blocks.targets import Target


@dataclass(frozen=True)
class BlockWeek:
    """One week of a block; a week off has no brief, no audit and no targets."""

    place: CalendarWeek
    parsed: ParsedBrief | None = None
    audit: Audit | None = None
    targets: tuple[tuple[Target, ...], ...] = ()
    """Day by day, line by line, as the audit's week has them."""
    wishes_left: bool = False
    """Whether the brief's pins, movements, exact lower ends or hard rules are left out in this week."""

    @property
    def number(self) -> int:
        """From 1."""
        return self.place.number

    @property
    def starts(self) -> date | None:
        """Its Monday; None where the weeks are only numbered."""
        return self.place.starts

    @property
    def kind(self) -> Kind:
        """build, lighter, return, minimum, travel, short or off."""
        return self.place.kind

    @property
    def evaluated(self) -> EvaluatedWeek | None:
        """The week evaluated against its own brief; None in a week off."""
        return None if self.audit is None else self.audit.evaluated

    @property
    def sets(self) -> int:
        """The working sets printed in the week."""
        return sum(line.sets for line in self.evaluated.lines) if self.evaluated else 0

    @property
    def seconds(self) -> tuple[int, ...]:
        """The seconds of each session that has lines."""
        found = self.evaluated
        return tuple(found.seconds(d.index) for d in found.resolved.days if found.on[d.index]) if found else ()

    @property
    def rirs(self) -> tuple[int, ...]:
        """The repetitions in reserve that its lines have, each once, the fewest first."""
        return tuple(sorted({line.entry.rir for line in self.evaluated.lines})) if self.evaluated else ()


@dataclass(frozen=True)
class Block:
    """Several weeks out of one: what was asked, the week it was made of, and the weeks in order."""

    ask: BlockAsk
    """With names as ids."""
    parsed: ParsedBrief
    base: Audit
    """The solved week, to which the build weeks climb."""
    weeks: tuple[BlockWeek, ...]

    @property
    def base_week(self) -> Week:
        """The solved week."""
        return self.base.evaluated.week

    def below(self, week: BlockWeek) -> int:
        """The working sets that a week is below the solved one."""
        return sum(entry.sets for entry in self.base_week.entries) - week.sets

    @property
    def below_base(self) -> bool:
        """Whether the last build week still has fewer sets than the solved week, because so few are done now."""
        build = [week for week in self.weeks if week.kind == "build"]
        return bool(build) and self.below(build[-1]) > 0


@dataclass(frozen=True)
class NoBlock:
    """A block of which one week has no week: why, and which it was (None: the base week)."""

    end: Clash | OutOfTime
    number: int | None = None
