"""Relaxations of time: longer sessions, a further day, other weekdays, shorter rests, pairs."""

from __future__ import annotations

from collections.abc import Iterator

from setwright.solver.brief.defaults import LIMITS, SPREAD, WEEKDAYS
from setwright.solver.brief.schema import Brief, DayAsk
from setwright.solver.uses.relax.brief_changes import AddDay, AllowPairs, ChangeGoal, LengthenSessions, MoveDays
from setwright.solver.uses.relax.clashing_brief import ClashingBrief
from setwright.solver.uses.relax.relaxation import Relaxation, least

MOST_MINUTES = 60
"""Minutes more a session beyond which more time is not offered (convention)."""
HALF_HOUR = 30


def time_relaxations(clashing: ClashingBrief) -> Iterator[Relaxation]:
    """Every relaxation of time that frees the brief; none where one wish alone clashes with its kit or its lift."""
    if len(clashing.conflicts) < 2:
        return
    if clashing.about("day-minutes"):
        yield from longer_sessions(clashing)
        yield from _in_less_time(clashing)
    yield from _another_day(clashing)
    yield from _other_weekdays(clashing)


def longer_sessions(clashing: ClashingBrief) -> Iterator[Relaxation]:
    """The fewest minutes more for every session that free the brief."""
    found = least(lambda minutes: _lengthened(clashing, minutes), MOST_MINUTES, clashing.possible)
    if found:
        yield from _longer_by(clashing, found)


def more_time(clashing: ClashingBrief) -> Iterator[Relaxation]:
    """More time to give together with something else, enough or not: half an hour a session, or a further day."""
    yield from _longer_by(clashing, HALF_HOUR)
    yield from _a_day_more(clashing)


def _longer_by(clashing: ClashingBrief, minutes: int) -> Iterator[Relaxation]:
    """So many minutes more for every session, whether or not that is enough."""
    brief, sessions = _lengthened(clashing, minutes), len(clashing.brief.days)
    if brief is not None:
        yield Relaxation("minutes", (LengthenSessions(minutes, sessions),), brief, minutes * sessions)


def _lengthened(clashing: ClashingBrief, minutes: int) -> Brief | None:
    """The brief with so many minutes more for every session."""
    most = int(LIMITS["minutes"][1])
    days = tuple(d.model_copy(update={"minutes": min(most, d.minutes + minutes)}) for d in clashing.brief.days)
    return clashing.changed(days=days)


def _in_less_time(clashing: ClashingBrief) -> Iterator[Relaxation]:
    """The same work in less time: pairs, or the rests of another goal."""
    resolved = clashing.resolved
    if not resolved.pairs:
        brief = clashing.changed(pairs=True)
        if brief is not None and clashing.possible(brief):
            yield Relaxation("pairs", (AllowPairs(),), brief)
    shorter = {"growth": ("balanced", "efficiency"), "balanced": ("efficiency",)}
    for goal in shorter.get(resolved.goal, ()):
        brief = clashing.changed(goal=goal)
        if brief is not None and clashing.possible(brief):
            yield Relaxation("goal", (ChangeGoal(goal, resolved.goal),), brief)
            return


def _another_day(clashing: ClashingBrief) -> Iterator[Relaxation]:
    """One day more, where it frees the brief."""
    yield from (relaxation for relaxation in _a_day_more(clashing) if clashing.possible(relaxation.brief))


def _a_day_more(clashing: ClashingBrief) -> Iterator[Relaxation]:
    """One day more, on the weekday furthest from the others, as long as the longest day."""
    days = clashing.brief.days
    if len(days) >= len(WEEKDAYS):
        return
    like = max(days, key=lambda day: day.minutes)
    weekday = None if clashing.brief.any_order else _furthest([d.weekday for d in days])
    day = like.model_copy(update={"weekday": weekday, "focus": None})
    brief = clashing.changed(days=(*days, day))
    if brief is not None:
        yield Relaxation("day", (AddDay(len(days) + 1, weekday, day.minutes),), brief, day.minutes)


def _furthest(taken: list[str | None]) -> str:
    """The free weekday with the most days to its nearest training day; the earliest of equals."""
    places = [WEEKDAYS.index(day) for day in taken if day]

    def away(day: int) -> int:
        return min(min((day - p) % 7, (p - day) % 7) for p in places)

    free = [day for day in range(7) if day not in places]
    return WEEKDAYS[max(free, key=lambda day: (away(day), -day))]


def _other_weekdays(clashing: ClashingBrief) -> Iterator[Relaxation]:
    """The days spread over the week, where consecutive days are part of the clash."""
    days = clashing.brief.days
    spread = SPREAD[len(days)]
    if clashing.brief.any_order or not clashing.resolved.adjacent or tuple(d.weekday for d in days) == spread:
        return
    moved: tuple[DayAsk, ...] = tuple(d.model_copy(update={"weekday": w}) for d, w in zip(days, spread, strict=True))
    brief = clashing.changed(days=moved)
    if brief is not None and clashing.possible(brief):
        before = tuple(str(d.weekday) for d in days if d.weekday)
        yield Relaxation("weekdays", (MoveDays(spread, before),), brief)
