"""The form of what happened read as what a coach says, as the command's options are."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from datetime import date
from functools import partial
from typing import Final

from setwright.catalogue.fault_collector import FaultCollector
from setwright.solver.brief.defaults import LIMITS
from setwright.solver.desk.field_values import whole_said
from setwright.solver.desk.weeks.dates import date_said
from setwright.solver.records.happened_words import NONE, SaidHappened

Fields = Mapping[str, str]
LABELS: Final[Mapping[str, str]] = {
    "missed": "missed",
    "today": "minutes now",
    "done": "done",
    "on": "on one day",
    "from": "from",
    "taken": "taken",
    "kit": "another place",
    "sore": "sore",
    "avoid": "without",
    "pin": "must be in",
}
"""What is said -> the name by which the form calls it."""
LEAST, MOST = map(int, LIMITS["minutes"])


def said_happened(fields: Fields, done: Sequence[str], missed: Sequence[str], faults: FaultCollector) -> SaidHappened:
    """What a form says happened; `done` and `missed` are the days that are marked. Faults are added to `faults`."""
    ends = [faults.result_of(partial(_day, fields, name)) for name in ("first", "last")]
    dates = [day for day in ends if day is not None]
    return SaidHappened(
        done=tuple(done) or (NONE,),
        missed=tuple(missed),
        today=_minutes(fields, faults),
        taken=_words(fields, "taken"),
        on=fields.get("on_day", "") or None,
        dates=(dates[0], dates[-1]) if dates else None,
        kit=fields.get("kit", "").strip() or None,
        sore=_words(fields, "sore"),
        pins=_words(fields, "pin"),
        avoid=_words(fields, "avoid"),
    )


def _words(fields: Fields, name: str) -> tuple[str, ...]:
    """The words between commas of a field."""
    return tuple(word.strip() for word in fields.get(name, "").split(",") if word.strip())


def _day(fields: Fields, name: str) -> date | None:
    said = fields.get(name, "").strip()
    return date_said(said, LABELS["from"]) if said else None


def _minutes(fields: Fields, faults: FaultCollector) -> tuple[tuple[str, int], ...]:
    """(day, minutes) of each day that has others now."""
    found = []
    for name, text in fields.items():
        day = name.removeprefix("minutes-")
        if day == name or not text.strip():
            continue
        minutes = faults.result_of(partial(whole_said, text, f"{LABELS['today']} of {day}", (LEAST, MOST)))
        if minutes is not None:
            found.append((day, minutes))
    return tuple(found)
