"""What is due for a client, told from the documents that the book keeps: nothing is reckoned anew."""

from __future__ import annotations

from collections.abc import Sequence
from datetime import date, timedelta
from typing import Final

from setwright.catalogue.entries import Catalogue
from setwright.solver.book.at_once.held import Held
from setwright.solver.book.planned import KeptBlock, KeptWeek
from setwright.solver.brief.defaults import WEEKDAYS
from setwright.solver.log.mondays import monday_of
from setwright.solver.log.values import LoggedSession
from setwright.solver.records.standing_still import standing_still
from setwright.solver.records.week_documents import week_document
from setwright.solver.sheets.screen.over_time.due import Due, PlannedSession

WEEK: Final = timedelta(days=7)
ENDS_SOON: Final = 7
"""Days before the last day of a block from which on its end is due."""


def near(today: date) -> tuple[date, date]:
    """The first and the last Monday whose weeks are looked at."""
    monday = monday_of(today)
    return monday - WEEK, monday + WEEK


def due_of(of: Held, catalogue: Catalogue, today: date) -> Due:
    """What is due for a client on a day, of what the book holds near it."""
    weeks, held, sessions = of.weeks, of.blocks, of.sessions
    monday = monday_of(today)
    planned = [p for week in range(-1, 2) for p in _planned(weeks, held, monday + week * WEEK)]
    logged = {session.on for session in sessions}
    ahead = [p for p in planned if p.on > today or (p.on == today and today not in logged)]
    behind = sum(_missed(planned, sessions, monday + week * WEEK, today) for week in (-1, 0))
    last = max((day for day in logged if day <= today), default=None)
    ends = max((block.ends for block in held if block.starts <= today), default=None)
    followed = ends is not None and any(block.starts > today for block in held)
    closes = ends is not None and (ends - today).days <= ENDS_SOON and not followed
    return Due(
        next=min(ahead, key=lambda p: p.on, default=None),
        planned=bool(weeks or held),
        behind=behind,
        days_since_last=None if last is None else (today - last).days,
        block_ends=ends if closes else None,
        review=bool(closes and ends is not None and ends < today),
        stalls=standing_still(of, catalogue, today),
    )


def _planned(weeks: Sequence[KeptWeek], held: Sequence[KeptBlock], monday: date) -> list[PlannedSession]:
    """The sessions of the week of a Monday that stand on a weekday."""
    days = enumerate((week_document(weeks, held, monday) or {}).get("days", ()), 1)
    return [
        PlannedSession(monday + timedelta(days=WEEKDAYS.index(day["weekday"])), number, day["minutes"])
        for number, day in days
        if day.get("weekday")
    ]


def _missed(planned: Sequence[PlannedSession], sessions: Sequence[LoggedSession], monday: date, today: date) -> int:
    """The sessions of the week of a Monday that were planned before today and are not logged on whichever day."""
    due = sum(1 for p in planned if monday <= p.on < min(today, monday + WEEK))
    done = sum(1 for session in sessions if monday <= session.on < monday + WEEK)
    return max(0, due - done)
