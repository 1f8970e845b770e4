"""The search for a season: reference weeks for its kits and days, the blocks, and a brief for each block."""

from __future__ import annotations

from collections import Counter
from collections.abc import Callable, Mapping, Sequence
from dataclasses import dataclass, replace
from typing import Final

from setwright.catalogue.entries import Catalogue
from setwright.catalogue.faults import Fault, SetwrightError, UsageFault
from setwright.solver.brief.contradictions import contradictions
from setwright.solver.brief.parsed_brief import ParsedBrief
from setwright.solver.brief.schema import Brief, DayAsk, Emphasis
from setwright.solver.engines.season.problem import ChosenBlock, SeasonProblem
from setwright.solver.engines.season.solve import solve_season
from setwright.solver.engines.stopped import check
from setwright.solver.rulebook import resolve
from setwright.solver.search.solve_options import SolveOptions
from setwright.solver.uses.season.block_spans import BlockSpan, checked_spans
from setwright.solver.uses.season.calibration import calibrated
from setwright.solver.uses.season.emphases import OPEN, neutral, with_days, with_emphases
from setwright.solver.uses.season.reference_week import ReferenceWeek, reference_of
from setwright.solver.uses.season.season import Season, SeasonBlock
from setwright.solver.uses.season.season_problem import problem_of
from setwright.solver.uses.season.season_weeks import SeasonWeek

MOST_REFERENCES: Final = 4
"""Reference weeks that are solved for the commonest days and minutes; each kit has one whatever their number."""
NEAR: Final = 0.25
"""Weeks on as many days within this share of a reference week's minutes go by it (convention)."""
Tell = Callable[[int, int], None]
"""Told before each reference week: its minutes and its number of days."""


class NoReferenceWeek(SetwrightError):
    """No week of the season's days could be planned, so that nothing is known of what a set takes."""


def season_of(
    parsed: ParsedBrief,
    weeks: Sequence[SeasonWeek],
    turns: Mapping[str, int],
    block_weeks: tuple[int, int],
    catalogue: Catalogue,
    options: SolveOptions | None = None,
    tell: Tell | None = None,
) -> Season:
    """The season of a brief over its weeks; the same input gives the same season.

    Raises UsageFault where no block fits between the days off, or where the brief contradicts itself on a calendar's
    days, and NoReferenceWeek where no week could be planned. Stopped by the options, it gives the best season so far,
    or raises StoppedRun where there is none.
    """
    options = options or SolveOptions()
    spans = checked_spans(weeks, block_weeks, catalogue.defaults.block.lighter_sets)
    base = neutral(parsed.brief, turns, catalogue)
    _check_days(base, weeks, spans)
    search = _References(base, catalogue, options, tell or (lambda *_: None))
    rooms = search.of_weeks(weeks, spans)
    if not rooms:
        raise NoReferenceWeek(
            Fault(
                "season",
                "no week of it could be planned",
                "`setwright week` on the brief says why",
                on_page="find a week on the client's page: it says why",
            )
        )
    asked = problem_of(resolve(base, catalogue), turns, search.found, rooms, weeks, spans)
    problem = calibrated(asked, search.found, options.stopped)
    solution = solve_season(problem, options.stopped)
    blocks = tuple(
        _block(number, chosen, problem, weeks, parsed, catalogue, spans)
        for number, chosen in enumerate(solution.blocks, 1)
    )
    return Season(parsed, catalogue, turns, block_weeks, tuple(weeks), blocks, tuple(search.found), problem, solution)


def _check_days(brief: Brief, weeks: Sequence[SeasonWeek], spans: Sequence[BlockSpan]) -> None:
    """Raise UsageFault with what the brief contradicts itself in on the days of some week."""
    faults = {
        fault.at(f"week of {weeks[i].first}: {fault.where}")
        for days, i in {weeks[span.leanest].days: span.leanest for span in reversed(spans)}.items()
        for fault in contradictions(with_days(brief, days))
    }
    if faults:
        raise UsageFault(sorted(faults, key=str))


@dataclass
class _References:
    """The reference weeks so far, the commonest days first."""

    brief: Brief
    catalogue: Catalogue
    options: SolveOptions
    tell: Tell

    def __post_init__(self) -> None:
        self.found: list[ReferenceWeek] = []
        self.failed: set[tuple[DayAsk, ...]] = set()

    def of_weeks(self, weeks: Sequence[SeasonWeek], spans: Sequence[BlockSpan]) -> dict[int, int]:
        """Leanest week of a span -> the place of its reference; weeks that cannot be planned are left out."""
        counted = Counter(weeks[span.leanest].days for span in spans)
        order = sorted(counted, key=lambda days: (-counted[days], -_minutes(days), str(days)))
        place_of = {days: self._place(days) for days in order}
        leanest = {span.leanest for span in spans}
        return {week: place for week in sorted(leanest) if (place := place_of[weeks[week].days]) is not None}

    def _place(self, days: tuple[DayAsk, ...]) -> int | None:
        """The place of the reference of these days, solved where none is near."""
        same_kit = [i for i, r in enumerate(self.found) if _kit(r.days) == _kit(days)]
        near = [i for i in same_kit if len(self.found[i].days) == len(days) and _near(self.found[i].days, days)]
        if not near and (not same_kit or len(self.found) < MOST_REFERENCES):
            self.tell(_minutes(days), len(days))
            resolved = resolve(with_days(self.brief, days), self.catalogue)
            solved = reference_of(days, resolved, self.options)
            check(self.options.stopped)
            if solved is not None:
                self.found.append(solved)
                return len(self.found) - 1
        able = near or same_kit
        return min(able, key=lambda i: abs(_minutes(self.found[i].days) - _minutes(days))) if able else None


def _emphasis(said: str) -> Emphasis:
    """An emphasis of the problem as the brief's own word."""
    return next(word for word in OPEN if word == said)


def _minutes(days: tuple[DayAsk, ...]) -> int:
    return sum(day.minutes for day in days)


def _kit(days: tuple[DayAsk, ...]) -> frozenset[object]:
    return frozenset(day.equipment for day in days)


def _near(one: tuple[DayAsk, ...], other: tuple[DayAsk, ...]) -> bool:
    return abs(_minutes(one) - _minutes(other)) <= NEAR * _minutes(one)


def _block(
    number: int,
    chosen: ChosenBlock,
    problem: SeasonProblem,
    weeks: Sequence[SeasonWeek],
    parsed: ParsedBrief,
    catalogue: Catalogue,
    spans: Sequence[BlockSpan],
) -> SeasonBlock:
    """A chosen block with its dates, sets by muscle and brief."""
    candidate = chosen.candidate
    span = next(s for s in spans if (s.first, s.weeks) == (candidate.first, candidate.weeks))
    names = [muscle.name for muscle in problem.muscles]
    emphases = {name: _emphasis(said) for name, said in zip(names, chosen.week.emphases, strict=True)}
    days = weeks[span.leanest].days
    brief = with_days(with_emphases(parsed.brief, emphases, catalogue), days)
    *full, last = ({name: half / 2 for name, half in zip(names, sets, strict=True)} for sets in chosen.ramp)
    share = catalogue.defaults.block.lighter_sets
    lighter = {name: round(2 * share * sets) / 2 for name, sets in last.items()}
    return SeasonBlock(
        number=number,
        weeks=tuple(weeks[span.first : span.first + span.weeks]),
        first_week=span.first,
        days=days,
        emphases=emphases,
        sets={name: half / 2 for name, half in zip(names, chosen.week.half_sets, strict=True)},
        by_week=(*full, lighter),
        brief=replace(parsed, brief=brief),
    )
