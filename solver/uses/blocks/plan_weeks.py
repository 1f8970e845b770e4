"""The weeks of a block made one after another: build weeks as they climb, reduced weeks, weeks away solved anew."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import replace
from itertools import groupby

from setwright.catalogue.defaults import BlockDefaults
from setwright.solver.auditing import Audit, audit
from setwright.solver.brief.groups import expand_muscles
from setwright.solver.brief.parsed_brief import ParsedBrief
from setwright.solver.brief.schema import Brief, MuscleAsk
from setwright.solver.evaluation.evaluated_week import EvaluatedWeek
from setwright.solver.evaluation.prescriptions import rir_of
from setwright.solver.evaluation.resolved_brief import ResolvedBrief
from setwright.solver.evaluation.week import Week
from setwright.solver.planning import Solved, plan_near
from setwright.solver.rulebook import resolve
from setwright.solver.search.solve_options import SolveOptions
from setwright.solver.uses.blocks.ask import BlockAsk
from setwright.solver.uses.blocks.away import away_brief, nearby_days
from setwright.solver.uses.blocks.block import BlockWeek, NoBlock
from setwright.solver.uses.blocks.calendar import CalendarWeek
from setwright.solver.uses.blocks.climb import climb
from setwright.solver.uses.blocks.reduced import reduced_week
from setwright.solver.uses.blocks.set_steps import weekly_sets


def planned_weeks(
    parsed: ParsedBrief, base: Audit, ask: BlockAsk, calendar: Sequence[CalendarWeek], options: SolveOptions
) -> tuple[BlockWeek, ...] | NoBlock:
    """The weeks of the calendar without targets; the first week that has no week ends it."""
    planner = _Planner(parsed, base, dict(ask.now), options)
    build = {week.place.number: week for run in _runs(calendar) for week in planner.build_weeks(run)}
    found: list[BlockWeek] = []
    for place in calendar:
        week = build.get(place.number) or planner.other_week(place, found)
        if isinstance(week, NoBlock):
            return week
        found.append(week)
    return tuple(found)


def _runs(calendar: Sequence[CalendarWeek]) -> Iterator[tuple[CalendarWeek, ...]]:
    """The build weeks in runs that climb together: a long break begins a new one."""
    run = 0
    placed = []
    for week in calendar:
        if week.kind == "build":
            run += week.resumes
            placed.append((run, week))
    for _, weeks in groupby(placed, key=lambda row: row[0]):
        yield tuple(week for _, week in weeks)


class _Planner:
    """What all weeks of one block are made of; each different week away is solved once."""

    def __init__(self, parsed: ParsedBrief, base: Audit, now: Mapping[str, float], options: SolveOptions) -> None:
        self._parsed, self._base, self._now, self._options = parsed, base.evaluated, now, options
        self._numbers: BlockDefaults = self._base.resolved.catalogue.defaults.block
        self._solved: dict[tuple[str, Week], Audit | NoBlock] = {}

    def build_weeks(self, run: Sequence[CalendarWeek]) -> Iterator[BlockWeek]:
        """The build weeks of one run, the sets done at present kept to in the first run alone."""
        now, self._now = self._now, {}
        for at, (place, week) in enumerate(zip(run, climb(self._base, len(run), now, self._numbers), strict=True)):
            brief = build_brief(self._base.resolved, week, self._rir_more(at, len(run)))
            resolved = resolve(brief, self._base.resolved.catalogue)
            found = audit(resolved, with_due_rir(resolved, week))
            yield BlockWeek(place, ParsedBrief(brief, self._parsed.assumed), found)

    def other_week(self, place: CalendarWeek, before: Sequence[BlockWeek]) -> BlockWeek | NoBlock:
        """A week of any other kind, after the weeks before it."""
        if place.kind == "off":
            return BlockWeek(place)
        if place.kind in ("travel", "short"):
            return self._away(place, before)
        numbers, last, usual = self._numbers, _last_build(before), self._parsed.brief.rir_more or 0
        source = last if last and place.kind == "lighter" else self._base
        share, reserve = numbers.lighter_sets, usual + numbers.lighter_rir
        if place.kind == "minimum":
            share, reserve = numbers.minimum_sets, (last.resolved.brief.rir_more or 0) if last else usual
        parsed, found = reduced_week(source, self._parsed, share, reserve)
        return BlockWeek(place, parsed, found, wishes_left=asks_outright(self._parsed.brief))

    def _away(self, place: CalendarWeek, before: Sequence[BlockWeek]) -> BlockWeek | NoBlock:
        """A week on other days or in another place, near the base week where that can be."""
        catalogue = self._base.resolved.catalogue
        last = _last_build(before)
        more = last.resolved.brief.rir_more if last else self._parsed.brief.rir_more
        parsed = away_brief(self._parsed, place, more or 0, catalogue)
        near = nearby_days(self._parsed.brief, (last or self._base).week, parsed.brief)
        key = (parsed.brief.model_dump_json(), near)
        if key not in self._solved:
            end, _ = plan_near(parsed, catalogue, near, self._numbers.away_share, self._options)
            self._solved[key] = end.audit if isinstance(end, Solved) else NoBlock(end, place.number)
        found = self._solved[key]
        if isinstance(found, NoBlock):
            return found
        return BlockWeek(place, parsed, found, wishes_left=asks_outright(self._parsed.brief))

    def _rir_more(self, at: int, count: int) -> int:
        """Repetitions in reserve on top in the build week of this place: none in the last one."""
        listed = self._numbers.rir_more[self._base.resolved.experience]
        return min(listed[at], count - 1 - at) if at < len(listed) else 0


def _last_build(before: Sequence[BlockWeek]) -> EvaluatedWeek | None:
    """The last build week so far; None before the first."""
    build = [week.evaluated for week in before if week.kind == "build"]
    return build[-1] if build else None


def build_brief(resolved: ResolvedBrief, week: Week, rir_more: int) -> Brief:
    """The base brief with the reserve of a build week; an exact lower end that it has yet to climb to is lowered."""
    brief, sets = resolved.brief, weekly_sets(resolved, week)
    update: dict[str, object] = {"rir_more": (brief.rir_more or 0) + rir_more or None}
    short = [m.id for m in resolved.muscles.values() if m.exact_low and sets[m.id] < m.low]
    if short:
        asked = expand_muscles(brief, resolved.catalogue)
        lowered: dict[str, MuscleAsk] = {m: asked[m].model_copy(update={"at_least": sets[m]}) for m in short}
        update["muscles"] = {**brief.muscles, **lowered}
    return brief.model_copy(update=update)


def with_due_rir(resolved: ResolvedBrief, week: Week) -> Week:
    """The week with the repetitions in reserve that a brief asks for."""
    exercises = resolved.catalogue.exercises
    return Week(
        tuple(
            tuple(replace(entry, rir=rir_of(resolved, exercises[entry.exercise])) for entry in day) for day in week.days
        )
    )


def asks_outright(brief: Brief) -> bool:
    """Whether the brief asks for something outright that only usual weeks are held to."""
    exact = any(ask.at_least is not None for ask in brief.muscles.values())
    return bool(brief.pins or brief.must or exact or "hard" in brief.rules.values())
