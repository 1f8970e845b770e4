"""The calendar, against RFC 5545 by its letters and against two parsers: icalendar's own and vobject."""

from __future__ import annotations

import re
from dataclasses import replace
from datetime import date, datetime, time, timedelta
from typing import Any

import icalendar
import pytest
import vobject
from dateutil.rrule import rrulestr
from handed import PAIRS, THREE, document, handed, prints_under_hash_seeds, shipped
from hostile import NAMES, hostile

from setwright.catalogue.faults import UsageFault
from setwright.solver.sheets.common.sanitise import isolated
from setwright.solver.sheets.handout.coach import Coach
from setwright.solver.sheets.handout.handout import Handout, handout_of
from setwright.solver.sheets.plain.calendar import ics_bytes

START = date(2026, 1, 5)
COACH = Coach(start=START, weeks=4, alarm=30, holidays=(date(2026, 1, 5), date(2026, 1, 14)))


def dated(name: str = THREE, **changes: Any) -> Handout:
    return handed(name, COACH.model_copy(update=changes))


def lines_of(data: bytes) -> list[str]:
    """The content lines, unfolded as RFC 5545, section 3.1, has it."""
    return data.decode().replace("\r\n ", "").split("\r\n")[:-1]


def events(data: bytes) -> list[icalendar.Event]:
    return list(icalendar.Calendar.from_ical(data).walk("VEVENT"))  # type: ignore[arg-type]


def times(data: bytes) -> list[datetime]:
    """Every time a session is held, by dateutil's reading of the rules (RFC 5545, section 3.8.5)."""
    found = []
    for event in vobject.readOne(data.decode()).vevent_list:
        rule = getattr(event, "rrule", None)
        start = event.dtstart.value
        held = list(rrulestr(rule.value, dtstart=start)) if rule is not None else [start]
        off = {moment for line in event.contents.get("exdate", []) for moment in line.value}
        found += [moment for moment in held if moment not in off]
    return sorted(found)


@pytest.mark.parametrize("name", NAMES)
def test_lines_are_short_and_end_in_crlf(name: str) -> None:
    """RFC 5545, section 3.1: lines end in CRLF and are at most 75 octets long without it; no control characters."""
    data = ics_bytes(replace(hostile(NAMES[name]), start=START))
    assert data.endswith(b"\r\n")
    assert not re.search(rb"(?<!\r)\n|\r(?!\n)|[\x00-\x08\x0b\x0c\x0e-\x1f\x7f]", data)
    for line in data.split(b"\r\n"):
        assert len(line) <= 75
        line.decode()


@pytest.mark.parametrize("name", NAMES)
def test_a_name_adds_no_property(name: str) -> None:
    data = ics_bytes(replace(hostile(NAMES[name]), start=START))
    plain = ics_bytes(replace(hostile("plain"), start=START))

    def names(found: bytes) -> list[str]:
        return [re.split("[:;]", line)[0] for line in lines_of(found)]

    assert names(data) == names(plain)
    wanted = isolated(NAMES[name]).strip("\u2068\u2069")
    assert all(wanted in str(event["summary"]) and wanted in str(event["description"]) for event in events(data))
    assert len(vobject.readOne(data.decode()).vevent_list) == 3


def test_the_required_properties_are_there_once() -> None:
    """RFC 5545, sections 3.6, 3.6.1 and 3.6.6: PRODID and VERSION; UID, DTSTAMP, DTSTART; ACTION and TRIGGER."""
    data = ics_bytes(dated())
    lines = lines_of(data)
    assert lines[0] == "BEGIN:VCALENDAR"
    assert lines[-1] == "END:VCALENDAR"
    assert [sum(line.startswith(name) for line in lines) for name in ("PRODID:", "VERSION:2.0")] == [1, 1]
    blocks = re.findall(r"BEGIN:VEVENT\r\n(.*?)END:VEVENT", data.decode().replace("\r\n ", ""), flags=re.S)
    assert len(blocks) == 3
    for block in blocks:
        outer, alarm = block.split("BEGIN:VALARM")
        for name in ("UID:", "DTSTAMP:", "DTSTART:", "DURATION:", "SUMMARY:", "SEQUENCE:", "DESCRIPTION:"):
            assert len(re.findall(rf"^{name}", outer, flags=re.M)) == 1
        assert "DTEND" not in outer
        for name in ("ACTION:DISPLAY", "TRIGGER:-PT30M", "DESCRIPTION:"):
            assert len(re.findall(rf"^{name}", alarm, flags=re.M)) == 1


def test_times_are_local_and_bounded() -> None:
    """RFC 5545, section 3.3.5, form 1: local time without a zone; DTSTAMP in UTC (3.8.7.2)."""
    lines = lines_of(ics_bytes(dated()))
    starts = [line for line in lines if line.startswith("DTSTART")]
    assert all(re.fullmatch(r"DTSTART:\d{8}T\d{6}", line) for line in starts)
    assert all(re.fullmatch(r"DTSTAMP:\d{8}T\d{6}Z", line) for line in lines if line.startswith("DTSTAMP"))
    assert all("COUNT=" in line for line in lines if line.startswith("RRULE"))


def test_sessions_fall_on_their_weekdays_but_on_no_holiday() -> None:
    wanted = [START + timedelta(days=7 * week + day) for week in range(4) for day in (0, 2, 4)]
    held = [datetime.combine(day, time(18)) for day in wanted if day not in COACH.holidays]
    assert times(ics_bytes(dated())) == held


def test_each_weekday_has_its_own_time() -> None:
    found = times(ics_bytes(dated(times={"mon": time(7, 15)}, weeks=1, holidays=())))
    assert [moment.time() for moment in found] == [time(7, 15), time(18), time(18)]


def test_a_start_in_the_middle_of_a_week_waits_for_the_weekday() -> None:
    found = times(ics_bytes(dated(start=date(2026, 1, 6), weeks=1, holidays=())))
    assert [moment.date() for moment in found] == [date(2026, 1, 7), date(2026, 1, 9), date(2026, 1, 12)]


def test_a_week_of_holidays_has_no_session() -> None:
    """RFC 5545, section 3.6: a calendar holds at least one component, so that without any there is none."""
    days = tuple(START + timedelta(days=day) for day in range(7))
    with pytest.raises(UsageFault, match="no session is left"):
        ics_bytes(dated(weeks=1, holidays=days))
    assert min(times(ics_bytes(dated(weeks=2, holidays=days)))).date() == START + timedelta(days=7)


def test_sessions_in_any_order_keep_their_rest_days() -> None:
    said = document()
    said["brief"]["any_order"] = True
    said["brief"]["rest_days_between"] = 2
    for day in (*said["brief"]["days"], *said["days"]):
        del day["weekday"]
    h = handout_of(said, shipped(), COACH.model_copy(update={"weeks": 1, "holidays": ()}))
    assert [s.title for s in h.sessions] == ["Session 1", "Session 2", "Session 3"]
    assert [moment.date() for moment in times(ics_bytes(h))] == [START, date(2026, 1, 8), date(2026, 1, 11)]


def test_a_second_writing_updates_the_first() -> None:
    """RFC 5545, section 3.8.4.7 and 3.8.7.4: the same UID, a higher SEQUENCE."""
    first, again = events(ics_bytes(dated())), events(ics_bytes(dated(revision=2, time=time(19), weeks=6)))
    assert [e["uid"] for e in first] == [e["uid"] for e in again]
    assert len({e["uid"] for e in first}) == 3
    assert [(int(a["sequence"]), int(b["sequence"])) for a, b in zip(first, again, strict=True)] == [(0, 2)] * 3
    assert all(a["dtstamp"].dt < b["dtstamp"].dt for a, b in zip(first, again, strict=True))


def test_another_client_or_block_has_other_names() -> None:
    here = {str(e["uid"]) for e in events(ics_bytes(dated()))}
    assert not here & {str(e["uid"]) for e in events(ics_bytes(replace(dated(), client="M44")))}
    assert not here & {str(e["uid"]) for e in events(ics_bytes(dated(start=date(2026, 2, 2))))}
    assert here == {str(e["uid"]) for e in events(ics_bytes(dated(start=date(2026, 1, 3))))}


def test_it_holds_the_session_in_text() -> None:
    h = dated(PAIRS)
    for session, event in zip(h.sessions, events(ics_bytes(h)), strict=True):
        assert event["duration"].dt == timedelta(minutes=session.minutes)
        text = str(event["description"])
        for x in session.lines:
            assert f"{x.label} {x.name}, {x.sets} x {x.reps}, RIR {x.rir}, rest {x.rest}" in text
        assert "not medical advice" in text
        assert "wrist" not in text.lower()


def test_alarms_come_only_when_asked_for() -> None:
    assert b"VALARM" not in ics_bytes(dated(alarm=None))
    assert ics_bytes(dated(alarm=0)).count(b"BEGIN:VALARM") == 3


def test_without_a_start_there_is_no_calendar() -> None:
    with pytest.raises(UsageFault, match="--start"):
        ics_bytes(handed())


AGAIN = """
import hashlib
from test_calendar import dated, ics_bytes
print(hashlib.sha256(ics_bytes(dated())).hexdigest())
"""


def test_the_same_week_gives_the_same_bytes() -> None:
    assert len(prints_under_hash_seeds(AGAIN)) == 1
