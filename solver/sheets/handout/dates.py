"""On which days the sessions of a week fall, once a start date is said."""

from __future__ import annotations

from datetime import date, datetime, timedelta

from setwright.solver.brief.defaults import WEEKDAYS
from setwright.solver.sheets.handout.coach import Coach
from setwright.solver.sheets.handout.handout import Handout, Session


def first_day(session: Session, handout: Handout, start: date) -> date:
    """The session's first day: its weekday from the start on, or as many days on as the spacing asks for."""
    if session.weekday is None:
        spacing = handout.document["brief"].get("rest_days_between", 1) + 1
        return start + timedelta(days=spacing * (session.number - 1))
    return start + timedelta(days=(WEEKDAYS.index(session.weekday) - start.weekday()) % 7)


def _first_moment(session: Session, handout: Handout, start: date) -> datetime:
    """The day and hour of the session's first time, in the client's own local time."""
    day = first_day(session, handout, start)
    return datetime.combine(day, handout.coach.times.get(WEEKDAYS[day.weekday()], handout.coach.time))


def moments(session: Session, handout: Handout, start: date) -> tuple[datetime, ...]:
    """Every time the session would be held, holidays included."""
    first = _first_moment(session, handout, start)
    return tuple(first + timedelta(weeks=week) for week in range(handout.coach.weeks))


def free(day: date, coach: Coach) -> bool:
    """Whether the coach gave the day off."""
    return day in coach.holidays
