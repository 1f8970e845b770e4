"""The repetitions of logged sets as people type them, and the breaths of holds whose seconds were written."""

from __future__ import annotations

import re
from typing import Any, Final

from setwright.catalogue.faults import shown
from setwright.solver.foreign.log.cells.cell_fault import CellFault
from setwright.solver.foreign.log.cells.numbers import plain_number
from setwright.solver.foreign.rows.cells import rest_seconds
from setwright.solver.foreign.rows.typed_cells import plain, turned_into_date
from setwright.solver.sheets.common.words import BREATH
from setwright.solver.sheets.document.progress.log_model import MOST_SETS
from setwright.solver.sheets.xlsx.log_keys import MOST_REPS

_REPS: Final = re.compile(r"(\d{1,4})(?:\.0)?\s*(?:reps?|repetitions|/\s*side|/\s*leg|/\s*arm|each(?: side)?)?")
_BURSTS: Final = re.compile(r"\d{1,3}(?:\s*\+\s*\d{1,3})+")
_BREATHS: Final = re.compile(r"(\d{1,3})\s*breaths?")
MOST_HELD: Final = BREATH * MOST_REPS
"""The longest hold in seconds."""
WHOLE: Final = f"a whole number from 0 to {MOST_REPS}"


def reps_of(cell: Any, timed: bool) -> tuple[int, ...]:
    """The repetitions of one set, or of several: 8, 8/side, 8/8/7; bursts such as 8+3+2 are one set's sum.

    Of a timed lift the seconds are counted in breaths, and a bare number is seconds, as a card prints them. Raises
    CellFault.
    """
    if timed:
        return (_held(cell),)
    if turned_into_date(cell):
        said = "is a date: the spreadsheet took repetitions such as 8-7 for one"
        raise CellFault(said, "type them as text: 8, 8, 7")
    if not isinstance(cell, str):
        number = plain_number(cell)
        return (_whole(number, cell),)
    text = plain(cell).lower()
    if _BURSTS.fullmatch(text):
        return (_whole(float(sum(int(n) for n in re.findall(r"\d+", text))), cell),)
    parts = [part for part in re.split(r"\s*[,;]\s*|\s*/\s*(?=\d)|\s+(?=\d)", text) if part]
    found = [_REPS.fullmatch(part) for part in parts]
    if not found or not all(found) or len(found) > MOST_SETS:
        raise CellFault(f"got {shown(cell)}, expected {WHOLE}", _reps_remedy(text))
    return tuple(_whole(float(part[1]), cell) for part in found if part)


def _reps_remedy(text: str) -> str:
    """What to do about repetitions that are none."""
    if text.startswith("="):
        return "write the value in place of the formula"
    return "write the repetitions that were done" if "-" in text.strip("-") or text in ("max", "amrap") else ""


def _whole(number: float | None, cell: Any) -> int:
    if number is None or number != int(number) or not 0 <= number <= MOST_REPS:
        raise CellFault(f"got {shown(cell)}, expected {WHOLE}")
    return int(number)


def _held(cell: Any) -> int:
    """The breaths of a hold: its seconds by 3, or the breaths that were counted."""
    text = str(plain(cell)).lower() if not isinstance(cell, float) else f"{cell:g}"
    if counted := _BREATHS.fullmatch(text):
        return _whole(float(counted[1]), cell)
    seconds = rest_seconds(text.removesuffix("/side").strip())
    if seconds is None or not 0 <= seconds <= MOST_HELD:
        raise CellFault(f"got {shown(cell)}, expected the seconds of a hold from 0 to {MOST_HELD}")
    return breaths_of(seconds)


def breaths_of(seconds: float) -> int:
    """The slow breaths of a hold, at least one where it was held at all."""
    return max(1, round(seconds / BREATH)) if seconds else 0
