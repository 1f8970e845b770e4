"""Which session of a planned week a logged one stands for."""

from __future__ import annotations

from collections.abc import Sequence

from setwright.solver.auditing import Audit
from setwright.solver.brief.defaults import WEEKDAYS
from setwright.solver.evaluation.week import Week
from setwright.solver.log.values import LoggedSession


def weekdays_of(audit: Audit) -> tuple[int, ...]:
    """The weekday of each day of an audited week, Monday 0; nothing where its days may be in any order."""
    said = [day.weekday for day in audit.evaluated.resolved.days]
    return tuple(WEEKDAYS.index(day) for day in said if day is not None) if all(said) else ()


def planned_day(session: LoggedSession, week: Week, weekdays: Sequence[int]) -> int | None:
    """The place of the day: by the session's number, else its weekday, else the lifts they share; None for none."""
    if session.session is not None:
        return session.session - 1 if session.session <= len(week.days) else None
    if session.on.weekday() in weekdays:
        return list(weekdays).index(session.on.weekday())
    done = {one.exercise for one in session.sets}
    shared = [len(done & {entry.exercise for entry in day}) for day in week.days]
    most = max(shared, default=0)
    return shared.index(most) if most else None
