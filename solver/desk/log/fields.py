"""What forms say of a session beside its sets, and what they say of one set."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from datetime import date, datetime, time
from typing import Any, TypeVar

from setwright.catalogue.fault_collector import FaultCollector
from setwright.catalogue.faults import Fault, UsageFault
from setwright.solver.foreign.log.cells.cell_fault import CellFault
from setwright.solver.foreign.log.cells.numbers import hardness, number_of, whole_of
from setwright.solver.sheets.document.progress.log_model import MOST_LETTERS, MOST_SESSIONS
from setwright.solver.sheets.xlsx.log_keys import MOST_MINUTES

Found = TypeVar("Found")
Fields = Mapping[str, str]


def of_a_session(fields: Fields, on: date) -> dict[str, Any]:
    """Number, start, minutes, how hard and remark as a session's fields; raises UsageFault with every fault."""
    faults = FaultCollector()
    minutes = faults.result_of(lambda: said(fields, "minutes", "minutes", number_of, MOST_MINUTES))
    hard = faults.result_of(lambda: said(fields, "hard", "how hard", hardness))
    number = faults.result_of(lambda: said(fields, "session", "session", whole_of, 1, MOST_SESSIONS))
    started = faults.result_of(lambda: said(fields, "started", "began", _clock))
    note = " ".join(fields.get("note", "").split())
    if len(note) > MOST_LETTERS:
        faults.add([Fault("remark", f"has {len(note)} letters, expected at most {MOST_LETTERS}", "shorten it")])
    faults.raise_all()
    return {
        "session": number,
        "started": None if started is None else datetime.combine(on, started),
        "minutes": minutes,
        "how_hard": None if hard is None else hard[0],
        "note": note,
    }


def said(fields: Fields, name: str, where: str, reader: Callable[..., Found], *more: Any) -> Found | None:
    """What a field says, read as a cell of a log is; None where it is empty. Raises UsageFault."""
    text = fields.get(name, "").strip()
    if not text:
        return None
    try:
        return reader(text, *more)
    except CellFault as fault:
        raise UsageFault(Fault(where, fault.said, fault.remedy)) from None


def moment(text: str) -> datetime:
    """A local date and time without a zone, as a phone writes it; raises CellFault."""
    try:
        found = datetime.fromisoformat(text)
    except ValueError:
        found = None
    if found is None or found.tzinfo is not None:
        raise CellFault(f"got {text!r}, expected a local date and time such as 2026-01-05T18:03:20")
    return found.replace(microsecond=0)


def _clock(text: str) -> time:
    try:
        return time.fromisoformat(text)
    except ValueError:
        raise CellFault(f"got {text!r}, expected a time such as 18:03") from None
