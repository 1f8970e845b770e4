"""Rows as coaches type them turned into plain ones, with a note on each reading; faults name the cell."""

from __future__ import annotations

import re
from collections.abc import Iterator, Mapping, Sequence
from typing import Any, Final

from setwright.catalogue.faults import Fault
from setwright.solver.brief.fault_words import shown
from setwright.solver.foreign.near_names import NearNames
from setwright.solver.foreign.notes import Notes
from setwright.solver.foreign.rows.header import READ, REST_IN_MINUTES, REST_IN_SECONDS
from setwright.solver.foreign.rows.raw_rows import ALSO_READ, TableRow
from setwright.solver.foreign.rows.typed_cells import (
    counted_sets,
    plain,
    repetitions,
    reserve,
    rest,
    sets_and_reps,
    turned_into_date,
)
from setwright.solver.foreign.rows.typed_words import is_technique, pair_letter, technique, without_label

_TOGETHER: Final = re.compile(
    r"\s+(?:\+|/|&|ss|w/|superset(?:ted)? with|super set with|paired with)\s+|\s*\+\s*", re.IGNORECASE
)
"""What stands between two exercises that are done in turn."""
OF_OUR_OWN: Final = "ramp-up"
"""A column of a week's own CSV, whose rests are seconds however short and whose pairs are named."""
LETTER: Final = "letter"
"""The field that holds the letter by which the lines of a day are paired."""


def plain_rows(
    rows: Sequence[TableRow], names: NearNames, where: str, notes: Notes, faults: list[Fault]
) -> list[TableRow]:
    """Every row with one exercise, whole numbers and the day that it stands under."""
    found: list[TableRow] = []
    day: Any = None
    for at, row in rows:
        cells = {field: plain(value) for field, value in row.items()}
        day = cells.get("day") if _said(cells.get("day")) else day
        cells["day"] = day
        faults += [Fault(f"{where}: {at}, {field}", *why) for field, why in _spoilt(cells)]
        found += [(at, line) for line in _lines_of(_typed(cells, at, notes), names)]
    return found


def _said(value: Any) -> bool:
    return value is not None and value != ""


def _spoilt(cells: Mapping[str, Any]) -> Iterator[tuple[str, tuple[str, str]]]:
    """Cells that a spreadsheet has changed into something else, with what to do about each."""
    for field in ("sets", "reps", "rir", "rpe", "sets x reps"):
        if turned_into_date(cells.get(field)):
            yield field, ("is a date: the spreadsheet took a range such as 3-4 for one", "type it as text: 3 to 4")
    for field, value in cells.items():
        if field in (*READ, *ALSO_READ) and isinstance(value, str) and value.startswith("=") and len(value) > 1:
            yield field, (f"is a formula ({shown(value)})", "write the value itself")


def _typed(cells: dict[str, Any], at: str, notes: Notes) -> dict[str, Any]:
    """A row's cells, each read by itself."""
    both = sets_and_reps(cells.get("sets x reps")) or sets_and_reps(cells.get("sets"))
    if both:
        cells["sets"] = both[0]
        cells["reps"] = cells["reps"] if _said(cells.get("reps")) else both[1]
    elif _said(cells.get("sets x reps")) and not _said(cells.get("sets")):
        cells["sets"] = cells["sets x reps"]
    for field, unit in ((REST_IN_MINUTES, "min"), (REST_IN_SECONDS, "s")):
        if _said(value := cells.get(field)):
            cells["rest"] = f"{value} {unit}" if _is_number(value) else value
    told = "rir" if _said(cells.get("rir")) else "rpe"
    if is_technique(cells.get(told)) and not _said(cells.get("technique")):
        cells["technique"], cells[told] = cells[told], None
    cells["sets"], counted = counted_sets(cells.get("sets"))
    cells["rir"], left = reserve(cells.get(told), exertion=told == "rpe")
    cells["reps"], to_the_last = repetitions(cells.get("reps"))
    straight = rested = ""
    if _said(cells.get("rest")) and OF_OUR_OWN not in cells:
        cells["rest"], rested = rest(cells["rest"])
    if "technique" in cells:
        cells["technique"], straight = technique(cells["technique"])
    if to_the_last and not _said(cells["rir"]):
        cells["rir"] = 0
        notes.add("as many repetitions as possible were read as 0 RIR", at)
    for said in (counted, left, rested, straight):
        if said:
            notes.add(said, at)
    return cells


def _is_number(value: Any) -> bool:
    return isinstance(value, int | float) or re.fullmatch(r"\d+(?:[.,]\d+)?", str(value)) is not None


def _lines_of(cells: dict[str, Any], names: NearNames) -> Iterator[dict[str, Any]]:
    """A row's line, or its two lines where the cell of the exercise names two that are done in turn."""
    said = cells.get("exercise")
    letter = pair_letter(cells.get("pair")) or ("" if OF_OUR_OWN in cells else pair_letter(cells.get("label")))
    if pair_letter(cells.get("pair")):
        cells["pair"] = None
    if not isinstance(said, str) or names.knows(said):
        yield {**cells, LETTER: letter}
        return
    name, led_by = without_label(said)
    parts = [part for part in _TOGETHER.split(name) if part]
    if len(parts) == 2 and not names.knows(name) and all(names.knows(part) for part in parts):
        for one, other in ((0, 1), (1, 0)):
            yield {
                **cells,
                "exercise": parts[one],
                "pair": parts[other],
                "reps": _part(cells.get("reps"), one),
                LETTER: "",
            }
        return
    yield {**cells, "exercise": name, LETTER: letter or led_by}


def _part(reps: Any, place: int) -> Any:
    """The repetitions of one of two exercises, where the cell gives both: 8-10 / 12-15."""
    parts = re.split(r"\s+[/+]\s+", reps) if isinstance(reps, str) else []
    return parts[place] if len(parts) == 2 else reps
