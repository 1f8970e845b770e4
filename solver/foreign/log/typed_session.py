"""Sets as a coach types them, a lift and its sets in one text each: bench press 60x8,8,7 @ 2 RIR."""

from __future__ import annotations

import csv
import io
import re
from collections.abc import Sequence
from dataclasses import replace
from datetime import date

from setwright.catalogue.entries import Catalogue
from setwright.catalogue.faults import Fault, UsageFault
from setwright.solver.brief.schema import Unit
from setwright.solver.foreign.log.cells.cell_fault import CellFault
from setwright.solver.foreign.log.cells.set_text import EXPECTED, sets_of
from setwright.solver.foreign.log.log_file import LogFile, read_log

_BARE = re.compile(r"(?<![\d.,])(\d+(?:[.,]\d+)?)\s*[x*\N{MULTIPLICATION SIGN}]\s*(\d+)")


def typed_session(texts: Sequence[str], on: date, catalogue: Catalogue, unit: Unit, today: date) -> LogFile:
    """The session of some texts, with notes on what was read otherwise than written; raises UsageFault."""
    parts = [_parts(text, unit) for text in texts]
    wrong = [text for text, part in zip(texts, parts, strict=True) if part is None]
    if wrong:
        remedy = "write for example 'bench press 60x8,8,7 @ 2 RIR' or 'pull-up bw x 8, 7'"
        raise UsageFault(Fault("log add", f"got {text!r}, {EXPECTED} after the lift", remedy) for text in wrong)
    table = io.StringIO(newline="")
    writer = csv.writer(table)
    writer.writerow(("date", "exercise", "done"))
    writer.writerows((on.isoformat(), *part) for part in parts if part is not None)
    found = read_log(table.getvalue().encode(), "log add", catalogue, unit, today=today)
    if found.unread:
        raise UsageFault(
            Fault("log add", f"{row.text!r} {row.why}", "write a lift and its sets") for row in found.unread
        )
    return replace(found, sessions=found.sessions[:1])


def _parts(text: str, unit: Unit) -> tuple[str, str] | None:
    """(lift, sets): the sets are the longest end of the text that reads as sets; None where no end does.

    What is typed here is load x repetitions, so a bare 10x12 is 10 in the client's unit.
    """
    words = _BARE.sub(rf"\1 {unit} x \2", text).split()
    for place in range(1, len(words)):
        lift, sets = " ".join(words[:place]), " ".join(words[place:])
        try:
            if sets_of(sets):
                return lift.rstrip(":,"), sets
        except CellFault:
            continue
    return None
