"""What is due for a client, told from the documents that the book keeps: nothing is reckoned anew."""

from __future__ import annotations

from collections.abc import Sequence
from datetime import date, timedelta
from typing import Final

from setwright.solver.book.clients import Client
from setwright.solver.book.opened import Book
from setwright.solver.book.planned import KeptBlock, KeptWeek, blocks, kept_weeks, week_days
from setwright.solver.brief.defaults import WEEKDAYS
from setwright.solver.sheets.screen.over_time.due import Due, PlannedSession

WEEK: Final = timedelta(days=7)
ENDS_SOON: Final = 7
"""Days before the last day of a block from which on its end is due."""


def due_of(book: Book, client: Client, sessions: Sequence[date], today: date) -> Due:
    """What is due for a client on a day; `sessions` are the days of those in the log."""
    monday = today - timedelta(days=today.weekday())
    weeks, held = kept_weeks(book, client, monday - WEEK, monday + WEEK), blocks(book, client)
    planned = [p for week in range(-1, 2) for p in _planned(weeks, held, monday + week * WEEK)]
    logged = set(sessions)
    ahead = [p for p in planned if p.on > today or (p.on == today and today not in logged)]
    behind = sum(_missed(planned, sessions, monday + week * WEEK, today) for week in (-1, 0))
    last = max((day for day in logged if day <= today), default=None)
    ends = max((block.ends for block in held if block.starts <= today), default=None)
    followed = ends is not None and any(block.starts > today for block in held)
    near = ends is not None and (ends - today).days <= ENDS_SOON and not followed
    return Due(
        next=min(ahead, key=lambda p: p.on, default=None),
        planned=bool(held or week_days(book, client)),
        behind=behind,
        days_since_last=None if last is None else (today - last).days,
        block_ends=ends if near else None,
        review=bool(near and ends is not None and ends < today),
    )


def _planned(weeks: Sequence[KeptWeek], held: Sequence[KeptBlock], monday: date) -> list[PlannedSession]:
    """The sessions of the week of a Monday that stand on a weekday: as it was kept last, else as the block has it."""
    kept = [week.document for week in weeks if week.starts == monday]
    in_blocks = [
        week
        for block in sorted(held, key=lambda block: block.id)
        for week in block.document.get("weeks", ())
        if week.get("starts") == monday.isoformat()
    ]
    document = next(reversed(kept or in_blocks), None)
    days = enumerate((document or {}).get("days", ()), 1)
    return [
        PlannedSession(monday + timedelta(days=WEEKDAYS.index(day["weekday"])), number, day["minutes"])
        for number, day in days
        if day.get("weekday")
    ]


def _missed(planned: Sequence[PlannedSession], sessions: Sequence[date], monday: date, today: date) -> int:
    """The sessions of the week of a Monday that were planned before today and are not logged on whichever day."""
    due = sum(1 for p in planned if monday <= p.on < min(today, monday + WEEK))
    done = sum(1 for day in sessions if monday <= day < monday + WEEK)
    return max(0, due - done)
