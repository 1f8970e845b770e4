"""The weeks of a season by date: which sessions fall into each, by the brief's own days and a calendar."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from datetime import date, timedelta

from setwright.solver.brief.defaults import SPREAD, WEEKDAYS
from setwright.solver.brief.schema import Brief, DayAsk


@dataclass(frozen=True)
class CalendarRow:
    """What a calendar says of the dates from `first` to `last`, both included."""

    first: date
    last: date
    days: int
    """Training days a week; 0 for days off."""
    minutes: int
    """Minutes of a session."""
    kit: str | None = None
    """The id of the kit at hand; None leaves it to the brief."""


@dataclass(frozen=True)
class SeasonWeek:
    """Seven days of a season, with the sessions that fall into them in the order of their dates."""

    first: date
    days: tuple[DayAsk, ...]

    @property
    def last(self) -> date:
        """Its seventh day."""
        return self.first + timedelta(days=6)

    @property
    def minutes(self) -> int:
        """Minutes of all its sessions."""
        return sum(day.minutes for day in self.days)


def weeks_of(brief: Brief, start: date, count: int, rows: Sequence[CalendarRow] = ()) -> tuple[SeasonWeek, ...]:
    """So many weeks of seven days from a date on; where no row speaks of a date, the brief's own days hold."""
    return tuple(_week(brief, start + timedelta(weeks=number), rows) for number in range(count))


def _week(brief: Brief, first: date, rows: Sequence[CalendarRow]) -> SeasonWeek:
    found = []
    for number in range(7):
        on = first + timedelta(days=number)
        row = next((row for row in rows if row.first <= on <= row.last), None)
        found += [day for day in _days_of(brief, row) if day.weekday == WEEKDAYS[on.weekday()]]
    # A brief's days stand in the order of the week, whichever weekday the season's weeks begin on.
    return SeasonWeek(first, tuple(sorted(found, key=lambda day: WEEKDAYS.index(day.weekday or "mon"))))


def _days_of(brief: Brief, row: CalendarRow | None) -> tuple[DayAsk, ...]:
    """The training days of a week that is all as a row says, on weekdays; the brief's own without a row."""
    own = brief.days if brief.days[0].weekday else _spread(brief.days)
    if row is None:
        return own
    if row.days == 0:
        return ()
    if row.days != len(own):
        own = _spread((DayAsk(minutes=row.minutes),) * row.days)
    changes = {"minutes": row.minutes, **({} if row.kit is None else {"equipment": row.kit})}
    return tuple(day.model_copy(update=changes) for day in own)


def _spread(days: Sequence[DayAsk]) -> tuple[DayAsk, ...]:
    """The days on the weekdays that their number alone stands for."""
    weekdays = SPREAD[len(days)]
    return tuple(day.model_copy(update={"weekday": weekday}) for day, weekday in zip(days, weekdays, strict=True))
