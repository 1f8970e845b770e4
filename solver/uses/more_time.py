"""Concessions of time: longer sessions, a further day, other weekdays, shorter rests, pairs."""

from __future__ import annotations

from collections.abc import Iterator

from setwright.solver.brief.defaults import LIMITS, SPREAD, WEEKDAY_NAMES, WEEKDAYS
from setwright.solver.brief.schema import Brief, DayAsk
from setwright.solver.uses.mend import Case, Mend, least

MOST_MINUTES = 60
"""Minutes more a session beyond which more time is not offered (convention)."""
ORDINALS = ("first", "second", "third", "fourth", "fifth", "sixth", "seventh")


def time_mends(case: Case) -> Iterator[Mend]:
    """Every concession of time that frees the brief."""
    if case.about("day-minutes"):
        yield from longer(case)
        yield from in_less_time(case)
    yield from another_day(case)
    yield from other_weekdays(case)


def longer(case: Case) -> Iterator[Mend]:
    """The fewest minutes more for every session; on weeks of several days also for the longest one alone."""
    days = case.brief.days

    def all_longer(minutes: int) -> Brief | None:
        most = int(LIMITS["minutes"][1])
        changed = tuple(d.model_copy(update={"minutes": min(most, d.minutes + minutes)}) for d in days)
        return case.changed(days=changed)

    found = least(all_longer, MOST_MINUTES, case.possible)
    brief = all_longer(found) if found else None
    if found and brief is not None:
        which = "each session" if len(days) > 1 else "the session"
        yield Mend("minutes", f"give {which} {counted(found, 'minute')} more", brief, found * len(days))


def in_less_time(case: Case) -> Iterator[Mend]:
    """The same work in less time: pairs, or the rests of another goal."""
    terms = case.terms
    if not terms.pairs:
        brief = case.changed(pairs=True)
        if brief is not None and case.possible(brief):
            yield Mend("pairs", "do exercises in pairs", brief)
    shorter = {"growth": ("balanced", "efficiency"), "balanced": ("efficiency",)}
    for goal in shorter.get(terms.goal, ()):
        brief = case.changed(goal=goal)
        if brief is not None and case.possible(brief):
            yield Mend("goal", f"take the goal {goal}, with shorter rests, instead of {terms.goal}", brief)
            return


def another_day(case: Case) -> Iterator[Mend]:
    """One day more, on the weekday furthest from the others, as long as the longest day."""
    days = case.brief.days
    if len(days) >= len(WEEKDAYS):
        return
    like = max(days, key=lambda day: day.minutes)
    weekday = None if case.brief.any_order else furthest([d.weekday for d in days])
    day = like.model_copy(update={"weekday": weekday, "focus": None})
    brief = case.changed(days=(*days, day))
    if brief is not None and case.possible(brief):
        on = f" on {name_of(weekday)}" if weekday else ""
        words = f"add a {ORDINALS[len(days)]} day{on}, {day.minutes} minutes"
        yield Mend("day", words, brief, day.minutes)


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
    if case.brief.any_order or not case.terms.adjacent or tuple(d.weekday for d in days) == spread:
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
