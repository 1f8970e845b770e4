"""Sets in the notation of a training diary: 80x8, 80x8x3, 80 kg x 8 @ 2 RIR, 80 x 8, 8, 7."""

from __future__ import annotations

import re
from dataclasses import dataclass, replace
from typing import Any, Final

from setwright.catalogue.faults import shown
from setwright.solver.brief.schema import Unit
from setwright.solver.foreign.log.cells.cell_fault import CellFault
from setwright.solver.foreign.log.cells.numbers import LOAD_PATTERN, load_of, reserve_of
from setwright.solver.foreign.rows.typed_cells import plain
from setwright.solver.sheets.document.progress.log_model import MOST_SETS

_RESERVE: Final = (
    r"@?\s*(?:(?:rpe|rir)\s*\d+(?:[.,]\d+)?|\d+(?:[.,]\d+)?\s*(?:rpe|rir|left|in reserve))|@\s*\d+(?:[.,]\d+)?"
)
_REPS: Final = r"(?P<reps>\d{1,3})(?:\s*(?:reps?|(?P<held>s|secs?|seconds)\b))?(?:\s*(?:/\s*side|each(?: side)?))?"
_TAIL: Final = rf"(?:\s*(?P<left>{_RESERVE}))?"
_FULL: Final = re.compile(rf"(?P<load>{LOAD_PATTERN})\s*[x*]\s*{_REPS}(?:\s*[x*]\s*(?P<times>\d{{1,3}}))?{_TAIL}")
_BARE: Final = re.compile(rf"{_REPS}(?![.\d]){_TAIL}")
_BETWEEN: Final = re.compile(r"\s*(?:[;,|\n]|/(?=\s*[\db])|\band\b)\s*|\s+")
EXPECTED: Final = "expected load x repetitions such as 80x8, 80x8x3 or 80 kg x 8 @ 2 RIR"


@dataclass(frozen=True)
class SetText:
    """One set as a text says it; a load of None with `weighted` unset means that no load was said."""

    reps: int
    load: float | None = None
    unit: Unit | None = None
    rir: int | None = None
    weighted: bool = True
    held: bool = False
    """Whether the number is said to be seconds."""
    note: str = ""
    added: bool = False
    """Whether the load is said to be on top of bodyweight."""


def is_notation(cell: Any) -> bool:
    """Whether a cell says a load and repetitions at once."""
    return isinstance(cell, str) and not cell.isdecimal() and _FULL.match(plain(cell).lower()) is not None


def sets_of(cell: Any) -> tuple[SetText, ...]:
    """The sets that a cell says, in order; repetitions alone go with the load before them. Raises CellFault.

    What is left in reserve after repetitions alone holds for all sets of that load, as `80 x 8, 8, 7 @ 2 RIR` says it.
    """
    text = plain(cell).lower() if isinstance(cell, str) else str(cell)
    found: list[SetText] = []
    since, place = 0, 0
    while place < len(text):
        full = _FULL.match(text, place)
        part = full or _BARE.match(text, place)
        if part is None:
            raise CellFault(f"got {shown(cell)}, {EXPECTED}")
        rir, note = _left(part["left"], cell)
        if full:
            load, unit = load_of(full["load"])
            times = _times(full, load, unit, cell)
            since = len(found)
            held, added = part["held"] is not None, full["load"].startswith("b")
            found += times * [SetText(int(part["reps"]), load, unit, rir, True, held, note, added)]
        else:
            before = found[-1] if found else SetText(0, weighted=False)
            held = part["held"] is not None
            found.append(SetText(int(part["reps"]), before.load, before.unit, rir, before.weighted, held, note))
            if rir is not None and all(done.rir is None for done in found[since:-1]):
                found[since:] = [replace(done, rir=rir) for done in found[since:]]
        place = part.end()
        if place < len(text):
            between = _BETWEEN.match(text, place)
            if between is None:
                raise CellFault(f"got {shown(cell)}, {EXPECTED}")
            place = between.end()
    return tuple(found)


def _times(full: re.Match[str], load: float | None, unit: Unit | None, cell: Any) -> int:
    """How often a set stands in load x repetitions x sets; sets x repetitions x load is refused where it shows."""
    times = int(full["times"] or 1)
    turned = unit is None and load is not None and times > load
    if not 1 <= times <= MOST_SETS or turned:
        raise CellFault(f"got {shown(cell)}, expected load x repetitions x sets", "write the load first: 80x8x3")
    return times


def _left(said: str | None, cell: Any) -> tuple[int | None, str]:
    """Repetitions in reserve of @ 2 RIR, RPE 8 or @8; a bare number after @ is an RPE, refused below 5."""
    if said is None:
        return None, ""
    bare = said.replace("@", "").strip().replace(",", ".")
    if bare.replace(".", "", 1).isdecimal() and float(bare) < 5:
        raise CellFault(f"got {shown(cell)}, which says neither RIR nor RPE", f"write @ {bare} RIR, or @ RPE 8")
    by_rir = any(word in said for word in ("rir", "left", "reserve"))
    named = by_rir or "rpe" in said
    return reserve_of((said.replace("@", "") if named else said).strip(), exertion=not by_rir)
