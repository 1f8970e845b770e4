"""The sessions that were planned up to a day and are not in the log."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from datetime import date, timedelta

from setwright.solver.auditing import Audit
from setwright.solver.brief.defaults import WEEKDAYS
from setwright.solver.log.values import LoggedSession
from setwright.solver.uses.log.log_checks import LogFinding
from setwright.solver.uses.log.planned_day import planned_day, weekdays_of

LAST_DAY = timedelta(days=6)


def missing_sessions(
    weeks: Sequence[tuple[date, Audit]], sessions: Sequence[LoggedSession], today: date
) -> tuple[LogFinding, ...]:
    """What is missing from the log of some weeks, each with its Monday: planned sessions before today, in their order.

    Today's session may still be held; days in any order have until the end of their week.
    """
    found = (
        finding
        for starts, audit in weeks
        for finding in _missing(starts, audit, [s for s in sessions if starts <= s.on <= starts + LAST_DAY])
        if finding.on < today
    )
    return tuple(sorted(found, key=lambda finding: finding.on))


def _missing(starts: date, audit: Audit, sessions: Sequence[LoggedSession]) -> Iterator[LogFinding]:
    """The planned sessions of a week that none of its logged ones stands for, whatever the day."""
    week, weekdays = audit.evaluated.week, weekdays_of(audit)
    held = {planned_day(session, week, weekdays) for session in sessions}
    for day in audit.evaluated.resolved.days:
        lifts = len({entry.exercise for entry in week.days[day.index]})
        if lifts and not day.missed and day.index not in held:
            on = starts + timedelta(days=WEEKDAYS.index(day.weekday)) if weekdays and day.weekday else starts + LAST_DAY
            yield LogFinding("missing", on, number=day.index + 1, amount=lifts)
