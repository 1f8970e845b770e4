"""A season as a value: its blocks with their briefs, the weeks between them, and what was proven of it."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from datetime import date, timedelta
from functools import cached_property

from setwright.catalogue.entries import Catalogue
from setwright.solver.brief.parsed_brief import ParsedBrief
from setwright.solver.brief.schema import DayAsk
from setwright.solver.engines.season.problem import HELD, SPECIALISED, SeasonProblem, SeasonSolution
from setwright.solver.evaluation.finding import UNITS
from setwright.solver.uses.season.reference_week import ReferenceWeek
from setwright.solver.uses.season.season_weeks import SeasonWeek


@dataclass(frozen=True)
class SeasonBlock:
    """Weeks in a row that are planned by one brief; the last of them is the lighter one."""

    number: int
    """Its place in the season, from 1."""
    weeks: tuple[SeasonWeek, ...]
    first_week: int
    """The place of its first week in the season, from 0."""
    days: tuple[DayAsk, ...]
    """The sessions of its leanest week, by which it is planned."""
    emphases: Mapping[str, str]
    """Muscle -> priority, normal or hold."""
    sets: Mapping[str, float]
    """Muscle -> weekly sets of a full week."""
    by_week: tuple[Mapping[str, float], ...]
    """The same for each of its weeks: the first ones rise to the full week, the last is the lighter one."""
    brief: ParsedBrief

    @property
    def first(self) -> date:
        """Its first day."""
        return self.weeks[0].first

    @property
    def last(self) -> date:
        """Its last day."""
        return self.weeks[-1].last

    @property
    def lighter(self) -> date:
        """The first day of its lighter week."""
        return self.weeks[-1].first

    @property
    def minutes(self) -> int:
        """Minutes a week that it is planned for."""
        return sum(day.minutes for day in self.days)

    def at(self, emphasis: str) -> tuple[str, ...]:
        """The muscles at an emphasis, in the catalogue's order."""
        return tuple(muscle for muscle, found in self.emphases.items() if found == emphasis)

    @property
    def specialised(self) -> tuple[str, ...]:
        """The muscles that come first."""
        return self.at(SPECIALISED)

    @property
    def held(self) -> tuple[str, ...]:
        """The muscles that are held."""
        return self.at(HELD)


@dataclass(frozen=True)
class Season:
    """A span of weeks in blocks."""

    parsed: ParsedBrief
    catalogue: Catalogue
    turns: Mapping[str, int]
    """Muscle to be specialised -> its place among those wanted, equal for equals."""
    block_weeks: tuple[int, int]
    weeks: tuple[SeasonWeek, ...]
    blocks: tuple[SeasonBlock, ...]
    references: tuple[ReferenceWeek, ...]
    problem: SeasonProblem
    solution: SeasonSolution

    @property
    def start(self) -> date:
        """Its first day."""
        return self.weeks[0].first

    @property
    def end(self) -> date:
        """Its last day."""
        return self.weeks[-1].first + timedelta(days=6)

    @cached_property
    def between(self) -> tuple[int, ...]:
        """The places of the weeks that belong to no block."""
        inside = {block.first_week + i for block in self.blocks for i in range(len(block.weeks))}
        return tuple(i for i in range(len(self.weeks)) if i not in inside)

    @property
    def missed(self) -> tuple[str, ...]:
        """Muscles to be specialised that are so in no block."""
        given = {muscle for block in self.blocks for muscle in block.specialised}
        return tuple(muscle for muscle in self.turns if muscle not in given)

    @property
    def worth(self) -> float:
        """Weighted index points times weeks, less what muscles without their turn cost."""
        return self.solution.worth / UNITS

    @property
    def bound(self) -> float:
        """The same that no season of the problem can pass."""
        return self.solution.bound / UNITS

    @property
    def gap_share(self) -> float:
        """What is between the two as a share of the bound of the blocks alone."""
        missed = len(self.missed) * self.problem.missed_cost / UNITS
        return (self.bound - self.worth) / (self.bound + missed) if self.bound + missed > 0 else 0.0

    def below_band(self, block: SeasonBlock) -> tuple[tuple[str, float, float], ...]:
        """(muscle, weekly sets, those its band begins with) of each muscle that a block's full week leaves below it."""
        lows = {m.name: m.emphases[block.emphases[m.name]].low / 2 for m in self.problem.muscles}
        return tuple((name, sets, lows[name]) for name, sets in block.sets.items() if sets < lows[name])

    def held_longest(self, muscle: str) -> int:
        """The most weeks of blocks running in which a muscle is held."""
        longest = running = 0
        for block in self.blocks:
            running = running + len(block.weeks) if block.emphases.get(muscle) == HELD else 0
            longest = max(longest, running)
        return longest
