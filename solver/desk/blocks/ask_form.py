"""The form of a block read: weeks, first Monday, days that are not as usual, sets done at present."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from datetime import date
from functools import partial
from typing import Any, Final

from setwright.catalogue.fault_collector import FaultCollector
from setwright.catalogue.faults import Fault, UsageFault
from setwright.solver.desk.field_values import ANY_NUMBER, whole_said
from setwright.solver.desk.weeks.dates import date_said
from setwright.solver.foreign.sets_now import WRITE_SETS, sets_now_said
from setwright.solver.uses.blocks.ask import BlockAsk, Sessions, Short, Span, Travel

Fields = Mapping[str, str]
KINDS: Final[Mapping[str, str]] = {
    "off": "days off",
    "travel": "away, with the kit there",
    "short": "whole weeks of other sessions",
    "minimum": "whole weeks at the minimum dose",
}
"""Kind of days that are not as usual -> what the form calls it."""
ROWS: Final = 3
"""Rows for such days that the form has without a script."""


def block_ask_of(fields: Fields, starts: date) -> BlockAsk:
    """What a form asks of a block; `starts` where it names no first day. Raises UsageFault with every fault."""
    faults = FaultCollector()
    spans = [span for place in _rows(fields) if (span := faults.result_of(partial(_span, fields, place)))]
    now, wrong = sets_now_said(fields.get("now", ""))
    faults.add([Fault("sets now", f"got {part!r}", WRITE_SETS) for part in wrong])
    said = fields.get("starts", "")
    first = faults.result_of(lambda: date_said(said, "first Monday")) if said else starts
    numbers = {
        name: faults.result_of(partial(_whole, fields, name, label, usual))
        for name, label, usual in (
            ("weeks", "weeks", 6),
            ("lighter_every", "a lighter week every", None),
            ("break", "weeks off before", 0),
        )
    }
    faults.raise_all()
    return BlockAsk(
        weeks=numbers["weeks"] or 0,
        starts=first,
        lighter_every=numbers["lighter_every"],
        off=_of_kind(spans, "off"),
        travel=_of_kind(spans, "travel"),
        short=_of_kind(spans, "short"),
        minimum=_of_kind(spans, "minimum"),
        break_weeks_before=numbers["break"] or 0,
        now=now,
        shifted="shift" in fields,
    )


def _of_kind(spans: list[tuple[str, Any]], kind: str) -> tuple[Any, ...]:
    return tuple(span for of, span in spans if of == kind)


def _rows(fields: Fields) -> Iterator[str]:
    """The places of the rows in which a day is written."""
    for name in fields:
        place = name.removeprefix("first-")
        if place != name and (fields[name].strip() or fields.get(f"last-{place}", "").strip()):
            yield place


def _span(fields: Fields, place: str) -> tuple[str, Span]:
    """The kind and the days of one row; a last day that is not written is the first."""
    kind = fields.get(f"kind-{place}", "off")
    if kind not in KINDS:
        raise UsageFault(Fault("days not as usual", f"got {kind!r}, expected one of {', '.join(KINDS)}"))
    first = date_said(fields.get(f"first-{place}", "").strip(), f"{kind}, from")
    said = fields.get(f"last-{place}", "").strip()
    last = date_said(said, f"{kind}, to") if said else first
    if kind == "travel":
        kit = tuple(word.strip() for word in fields.get(f"kit-{place}", "").split(",") if word.strip())
        return kind, Travel(first, last, kit, _sessions(fields, place, kind))
    if kind == "short":
        sessions = _sessions(fields, place, kind)
        if sessions is None:
            remedy = "write how many sessions a week, of how many minutes"
            raise UsageFault(Fault(f"{kind} {first}..{last}", "names no sessions", remedy))
        return kind, Short(first, last, sessions)
    return kind, Span(first, last)


def _sessions(fields: Fields, place: str, kind: str) -> Sessions | None:
    """The sessions of a row; None where it says none."""
    count = _whole(fields, f"sessions-{place}", f"{kind}, sessions", None)
    minutes = _whole(fields, f"minutes-{place}", f"{kind}, minutes", None)
    if (count is None) != (minutes is None):
        raise UsageFault(Fault(f"{kind}, sessions", "are half said", "write sessions and minutes, or neither"))
    return None if count is None or minutes is None else Sessions(count, minutes)


def _whole(fields: Fields, name: str, label: str, usual: int | None) -> int | None:
    """A whole number of a field, or the usual one where it is empty; raises UsageFault."""
    said = fields.get(name, "")
    return whole_said(said, label, ANY_NUMBER) if said.strip() else usual
