"""The week as a calendar (RFC 5545): an event a session in local time, repeated weekly, the session in its text."""

from __future__ import annotations

from datetime import UTC, date, datetime, time, timedelta
from typing import TYPE_CHECKING, Final
from uuid import UUID, uuid5

from setwright.catalogue.faults import Fault, UsageFault
from setwright.solver.log.mondays import monday_of
from setwright.solver.sheets.common.sanitise import isolated
from setwright.solver.sheets.handout.dates import first_day, free, moments
from setwright.solver.sheets.handout.values import CardLine, Handout, Session

if TYPE_CHECKING:
    from icalendar import Alarm, Event

NAMESPACE: Final = UUID("5d3b7b0e-6f0a-5c55-9d8f-6f3a3c1f9a42")
"""Drawn once; events are named by version 5 of RFC 4122 within it."""
MAKER: Final = "-//setwright//week//EN"


def ics_bytes(handout: Handout) -> bytes:
    """The sessions as an iCalendar object; raises UsageFault where no start date is said or no day is left.

    A session keeps its UID from one writing to the next as long as client, first calendar week and place in the week
    are the same, so that a calendar that took it in before updates it; `revision` raises SEQUENCE and DTSTAMP.
    """
    from icalendar import Calendar

    start = handout.start
    if start is None:
        raise UsageFault(
            Fault(
                "start", "is missing, ics cannot be dated", "add --start YYYY-MM-DD", "say on which day the week starts"
            )
        )
    found = Calendar()
    found.add("prodid", MAKER)
    found.add("version", "2.0")
    found.add("calscale", "GREGORIAN")
    kept = [session for session in handout.sessions if session.lines and _held(session, handout, start)]
    if not kept:
        raise UsageFault(Fault("holidays", "no session is left for the calendar", "start later, or drop a holiday"))
    for session in kept:
        found.add_component(_event(session, handout, start))
    return bytes(found.to_ical(sorted=False))


def _held(session: Session, handout: Handout, start: date) -> tuple[datetime, ...]:
    """The session's times without holidays."""
    return tuple(moment for moment in moments(session, handout, start) if not free(moment.date(), handout.coach))


def _event(session: Session, handout: Handout, start: date) -> Event:
    """One session: its first time held, its weekly repetition, and the holidays in between."""
    from icalendar import Event

    coach, kept = handout.coach, _held(session, handout, start)
    found = Event()
    found.add("uid", _uid(session, handout, start))
    found.add("dtstamp", _stamp(start, coach.revision))
    found.add("sequence", coach.revision)
    found.add("dtstart", kept[0])
    found.add("duration", timedelta(minutes=session.minutes))
    found.add("summary", isolated(f"{coach.words['session']} {session.number}: {handout.title}"))
    found.add("description", _description(session, handout))
    between = [m for m in moments(session, handout, start) if kept[0] < m < kept[-1]]
    off = [moment for moment in between if moment not in kept]
    if len(kept) > 1:
        found.add("rrule", {"freq": "weekly", "count": len(kept) + len(off)})
    if off:
        found.add("exdate", off)
    if coach.alarm is not None:
        found.add_component(_alarm(coach.alarm, session))
    return found


def _uid(session: Session, handout: Handout, start: date) -> str:
    """An event's name: the same while client, calendar week of the first session and place in the week are."""
    first = min(first_day(other, handout, start) for other in handout.sessions)
    monday = monday_of(first)
    return str(uuid5(NAMESPACE, f"{handout.client}\n{monday.isoformat()}\n{session.number}"))


def _stamp(start: date, revision: int) -> datetime:
    """When the calendar counts as written: the start date, a minute later with each revision."""
    return datetime.combine(start, time(0), UTC) + timedelta(minutes=revision)


def _alarm(minutes: int, session: Session) -> Alarm:
    from icalendar import Alarm

    found = Alarm()
    found.add("action", "DISPLAY")
    found.add("description", isolated(session.title))
    found.add("trigger", timedelta(minutes=-minutes))
    return found


def _description(session: Session, handout: Handout) -> str:
    """The session in text: kit, warm-up, its lines, the caution."""
    words = handout.coach.words
    said = [(words["kit"], session.place), (words["goal"], handout.goal), (words["warm_up"], session.warm_up)]
    parts = [f"{name}: {what}" for name, what in said if what]
    lines = [text for line in session.lines for text in _line_texts(line, handout)]
    loads = [f"{words['load']}: {said}" for said in handout.on_loads]
    close = [f"{words['rir_meaning']}.", *loads, f"{words['caution']}: {handout.caution}"]
    return "\n".join(isolated(text) for text in (*parts, "", *lines, "", *close))


def _line_texts(line: CardLine, handout: Handout) -> tuple[str, ...]:
    """A line of the card; its plates and ramp-up sets below it."""
    words = handout.coach.words
    parts = [
        f"{line.label} {line.name}",
        f"{line.sets} x {line.reps}",
        f"{words['rir']} {line.rir}",
        f"{words['rest'].lower()} {line.rest}",
        line.technique,
        line.load or "",
    ]
    text = ", ".join(part for part in parts if part)
    below = ((words["plates"], line.plates), (words["ramp_up"], line.ramp_up))
    return (text, *(f"- {name}: {said}" for name, said in below if said))
