"""The numbers of a logged set as people type them: loads with a unit, what was left, which side."""

from __future__ import annotations

import re
from collections.abc import Mapping
from typing import Any, Final

from setwright.catalogue.faults import shown
from setwright.solver.brief.schema import Unit
from setwright.solver.foreign.log.cells.cell_fault import CellFault
from setwright.solver.foreign.rows.typed_cells import plain, reserve
from setwright.solver.log.values import Side
from setwright.solver.sheets.xlsx.log_keys import HARDEST, MOST_LOAD

_NUMBER: Final = r"\d{1,4}(?:[.,]\d{1,3})?"
_UNIT: Final = r"kgs?|kilos?|kilograms?|lbs?|pounds?"
LOAD_PATTERN: Final = rf"(?:bw|body\s?weight)(?:\s*\+\s*{_NUMBER}\s*(?:{_UNIT})?)?|{_NUMBER}\s*(?:{_UNIT})?"
_LOAD: Final = re.compile(rf"(?:(?P<own>bw|body\s?weight)\s*\+?\s*)?(?P<number>{_NUMBER})?\s*(?P<unit>{_UNIT})?")
NOTHING: Final = frozenset(("", "-", "none", "n/a"))
SIDES: Final[Mapping[str, Side | None]] = {
    "l": "left",
    "left": "left",
    "r": "right",
    "right": "right",
    "both": None,
    "each": None,
    "each side": None,
    "": None,
}


def load_of(cell: Any) -> tuple[float | None, Unit | None]:
    """A load and the unit said with it; (None, None) for bodyweight alone. Raises CellFault."""
    if isinstance(cell, str):
        text = plain(cell).lower()
        if text in NOTHING:
            return None, None
        found = _LOAD.fullmatch(text)
        if found is None or not (found["own"] or found["number"]):
            raise CellFault(f"got {shown(cell)}, expected a load from 0 to {MOST_LOAD}, or bw", _load_remedy(text))
        unit = unit_of(found["unit"]) if found["unit"] else None
        number = None if found["number"] is None else float(found["number"].replace(",", "."))
    else:
        number, unit = plain_number(cell), None
        if number is None:
            raise CellFault(f"got {shown(str(cell))}, expected a load from 0 to {MOST_LOAD}, or bw")
    if number is not None and not 0 <= number <= MOST_LOAD:
        raise CellFault(f"got {shown(cell)}, expected a load from 0 to {MOST_LOAD}, or bw", _load_remedy(str(cell)))
    return number, unit


def _load_remedy(text: str) -> str:
    """What to do about a load that is none."""
    if text.startswith("-"):
        return "leave the load of an assisted lift empty, and note the assistance"
    if text.startswith("="):
        return "write the value in place of the formula"
    return "is a decimal mark missing?" if text.replace(".", "", 1).isdecimal() else ""


def reserve_of(cell: Any, exertion: bool) -> tuple[int | None, str]:
    """Repetitions in reserve, and a note where they were read otherwise than written; raises CellFault.

    RIR = 10 - RPE. Of a half or a range the smaller number is taken, so that no load is worked out too high.
    """
    if isinstance(cell, str) and plain(cell).lower() in NOTHING:
        return None, ""
    found, note = reserve(plain(cell), exertion, smaller=True)
    if isinstance(found, str) or found is None or isinstance(found, bool) or not 0 <= found <= 10:
        raise CellFault(
            f"got {shown(cell)}, expected {'an RPE' if exertion else 'repetitions in reserve'} from 0 to 10"
        )
    if isinstance(found, float) and found != int(found):
        raise CellFault(f"got {shown(cell)}, expected a whole number from 0 to 10")
    return int(found), note


def side_of(cell: Any) -> Side | None:
    """left or right; None for both. Raises CellFault."""
    said = str(cell).strip().lower()
    if said not in SIDES:
        raise CellFault(f"got {shown(cell)}, expected left, right or both")
    return SIDES[said]


def unit_of(cell: Any) -> Unit:
    """kg or lb; raises CellFault."""
    said = str(cell).strip().lower().rstrip(".")
    if said.startswith("k") and re.fullmatch(_UNIT, said):
        return "kg"
    if re.fullmatch(_UNIT, said):
        return "lb"
    raise CellFault(f"got {shown(cell)}, expected kg or lb")


def whole_of(cell: Any, low: int, high: int) -> int:
    """A whole number within limits; raises CellFault."""
    number = plain_number(cell)
    if number is None or number != int(number) or not low <= number <= high:
        raise CellFault(f"got {shown(str(cell))}, expected a whole number from {low} to {high}")
    return int(number)


def number_of(cell: Any, high: float) -> float:
    """A number from 0 to `high`; raises CellFault."""
    number = plain_number(cell)
    if number is None or not 0 <= number <= high:
        raise CellFault(f"got {shown(str(cell))}, expected a number from 0 to {high:g}")
    return number


def hardness(cell: Any) -> tuple[int, str]:
    """How hard from 0 to 10 as a whole number, and a note where it was rounded; raises CellFault."""
    number = number_of(cell, HARDEST)
    whole = int(number + 0.5)
    return whole, "" if whole == number else f"how hard {number:g} was read as {whole}"


def plain_number(cell: Any) -> float | None:
    """A number, also as text with a point or a comma; None where it is none."""
    if isinstance(cell, bool):
        return None
    if isinstance(cell, int | float):
        return float(cell) if abs(cell) < 1e9 else None
    text = plain(cell) if isinstance(cell, str) else ""
    return float(text.replace(",", ".")) if re.fullmatch(r"\d{1,9}(?:[.,]\d{1,6})?", text) else None
