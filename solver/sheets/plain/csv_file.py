"""The week as CSV (RFC 4180, UTF-8): one row a line of a card, safe to open in a spreadsheet."""

from __future__ import annotations

import csv as standard
import io
import re
from collections.abc import Mapping
from typing import Any, Final

from setwright.solver.sheets.common.words import breaths, held_seconds, span
from setwright.solver.sheets.handout.values import CardLine, Handout, Session

NEEDED: Final = ("day", "exercise", "sets", "reps", "RIR", "rest")
MAY: Final = ("technique", "pair")
EXTRA: Final = ("label", "name", "side", "load", "swaps", "ramp-up", "setting", "cue", "why")
COLUMNS: Final = (*NEEDED, *MAY, *EXTRA)
"""The first eight are read back; the others are for people."""
MARK: Final = "\ufeff"
"""Led by this, spreadsheets take the file for UTF-8."""
DANGER: Final = re.compile(r"'*\s*[=+\-@\t\r\n\uff1d\uff0b\uff0d\uff20]")
"""What a spreadsheet may take for a formula (OWASP, page "CSV Injection"), apostrophes before it included."""


def csv_bytes(handout: Handout) -> bytes:
    """The rows of every session, CRLF at each end; a cell that could be a formula is led by an apostrophe."""
    text = io.StringIO(newline="")
    table = standard.writer(text, lineterminator="\r\n")
    table.writerow(COLUMNS)
    for session, day in zip(handout.sessions, handout.document["days"], strict=True):
        for line, entry in zip(session.lines, day["entries"], strict=True):
            table.writerow([guarded(cell) for cell in _row(session, line, entry)])
    return f"{MARK}{text.getvalue()}".encode()


def _row(session: Session, line: CardLine, entry: Mapping[str, Any]) -> tuple[str | int, ...]:
    """One line's cells, in the order of the columns; rest in seconds, reps as words that are no date."""
    technique, drops = entry.get("technique", "straight"), entry.get("drops", 0)
    return (
        session.weekday or session.number,
        line.exercise,
        line.sets,
        _counted(line, tuple(entry["reps"])),
        line.rir,
        entry["rest_seconds"],
        f"drop {drops}" if technique == "drop" else technique,
        entry.get("paired_with") or "",
        line.label,
        line.name,
        "each" if line.reps.endswith("/side") else "both",
        line.load or "",
        "; ".join(line.swaps),
        line.ramp_up,
        line.setting,
        line.cue,
        line.why,
    )


def _counted(line: CardLine, reps: tuple[int, int]) -> str | int:
    """8 to 12, or 30 to 45 s of a hold whose breaths are read back from that: words that are no date."""
    held = held_seconds(reps)
    if line.timed and breaths(held) == reps:
        return f"{span(*held, ' to ')} s"
    return reps[0] if reps[0] == reps[1] else span(*reps, " to ")


def guarded(cell: str | int) -> str | int:
    """A cell that no spreadsheet runs; numbers as they are."""
    return f"'{cell}" if isinstance(cell, str) and DANGER.match(cell) else cell


def unguarded(cell: str) -> str:
    """A cell as it was before it was guarded."""
    return cell[1:] if cell.startswith("'") and DANGER.match(cell) else cell
