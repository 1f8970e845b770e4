"""The Mondays on which weeks begin."""

from __future__ import annotations

from datetime import date, timedelta


def monday_of(day: date) -> date:
    """The Monday of a day's week."""
    return day - timedelta(days=day.weekday())


def coming_monday(today: date) -> date:
    """Today where it is a Monday, else the next one."""
    return today + timedelta(days=-today.weekday() % 7)
