"""Concessions of time: longer sessions, a further day, other weekdays, shorter rests, pairs."""

from __future__ import annotations

from collections.abc import Iterator

from setwright.solver.brief.defaults import LIMITS, SPREAD, WEEKDAY_NAMES, WEEKDAYS
from setwright.solver.brief.schema import Brief, DayAsk
from setwright.solver.uses.relax.relaxation import Case, Mend, least

MOST_MINUTES = 60
"""Minutes more a session beyond which more time is not offered (convention)."""
HALF_HOUR = 30
ORDINALS = ("first", "second", "third", "fourth", "fifth", "sixth", "seventh")


def time_mends(case: Case) -> Iterator[Mend]:
    """Every concession of time that frees the brief; none where a wish clashes with nothing but the kit or its lift."""
    if len(case.conflicts) < 2:
        return
    if case.about("day-minutes"):
        yield from longer(case)
        yield from in_less_time(case)
    yield from another_day(case)
    yield from other_weekdays(case)


def longer(case: Case) -> Iterator[Mend]:
    """The fewest minutes more for every session."""
    found = least(lambda minutes: all_longer(case, minutes), MOST_MINUTES, case.possible)
    if found:
        yield from given(case, found)


def all_longer(case: Case, minutes: int) -> Brief | None:
    """The brief with so many minutes more for every session."""
    most = int(LIMITS["minutes"][1])
    days = tuple(d.model_copy(update={"minutes": min(most, d.minutes + minutes)}) for d in case.brief.days)
    return case.changed(days=days)


def given(case: Case, minutes: int) -> Iterator[Mend]:
    """So many minutes more for every session, whether or not that is enough."""
    brief, count = all_longer(case, minutes), len(case.brief.days)
    if brief is not None:
        which = "each session" if count > 1 else "the session"
        yield Mend("minutes", f"give {which} {counted(minutes, 'minute')} more", brief, minutes * count)


def more_times(case: Case) -> Iterator[Mend]:
    """Time to give together with something else: half an hour a session, or a further day."""
    yield from given(case, HALF_HOUR)
    yield from a_day(case)


def in_less_time(case: Case) -> Iterator[Mend]:
    """The same work in less time: pairs, or the rests of another goal."""
    resolved = case.resolved
    if not resolved.pairs:
        brief = case.changed(pairs=True)
        if brief is not None and case.possible(brief):
            yield Mend("pairs", "do exercises in pairs", brief)
    shorter = {"growth": ("balanced", "efficiency"), "balanced": ("efficiency",)}
    for goal in shorter.get(resolved.goal, ()):
        brief = case.changed(goal=goal)
        if brief is not None and case.possible(brief):
            yield Mend("goal", f"take the goal {goal}, with shorter rests, instead of {resolved.goal}", brief)
            return


def another_day(case: Case) -> Iterator[Mend]:
    """One day more, where it frees the brief."""
    yield from (mend for mend in a_day(case) if case.possible(mend.brief))


def a_day(case: Case) -> Iterator[Mend]:
    """One day more, on the weekday furthest from the others, as long as the longest day."""
    days = case.brief.days
    if len(days) >= len(WEEKDAYS):
        return
    like = max(days, key=lambda day: day.minutes)
    weekday = None if case.brief.any_order else furthest([d.weekday for d in days])
    day = like.model_copy(update={"weekday": weekday, "focus": None})
    brief = case.changed(days=(*days, day))
    if brief is not None:
        on = f" on {name_of(weekday)}" if weekday else ""
        yield Mend("day", f"add a {ORDINALS[len(days)]} day{on}, {day.minutes} minutes", brief, day.minutes)


def furthest(taken: list[str | None]) -> str:
    """The free weekday with the most days to its nearest training day; the earliest of equals."""
    places = [WEEKDAYS.index(day) for day in taken if day]

    def away(day: int) -> int:
        return min(min((day - p) % 7, (p - day) % 7) for p in places)

    free = [day for day in range(7) if day not in places]
    return WEEKDAYS[max(free, key=lambda day: (away(day), -day))]


def other_weekdays(case: Case) -> Iterator[Mend]:
    """The days spread over the week, where consecutive days are part of the clash."""
    days = case.brief.days
    spread = SPREAD[len(days)]
    if case.brief.any_order or not case.resolved.adjacent or tuple(d.weekday for d in days) == spread:
        return
    moved: tuple[DayAsk, ...] = tuple(d.model_copy(update={"weekday": w}) for d, w in zip(days, spread, strict=True))
    brief = case.changed(days=moved)
    if brief is not None and case.possible(brief):
        before = [name_of(d.weekday) for d in days if d.weekday]
        words = f"train on {listed([name_of(w) for w in spread])} instead of {listed(before)}"
        yield Mend("weekdays", words, brief)


def name_of(weekday: str | None) -> str:
    return WEEKDAY_NAMES[WEEKDAYS.index(weekday)].capitalize() if weekday else ""


def listed(words: list[str]) -> str:
    """Words as a list in a sentence."""
    return " and ".join(filter(None, [", ".join(words[:-1]), words[-1]])) if words else ""


def counted(number: int, noun: str) -> str:
    return f"{number} {noun}" + ("" if number == 1 else "s")
