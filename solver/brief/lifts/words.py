"""What a brief says of lifts in words, such as `80x8, 2 left` or `max 120`, as the table that means the same."""

from __future__ import annotations

import re
from collections.abc import Mapping
from typing import Any, Final

from setwright.catalogue.faults import Fault, shown

_WEIGHT: Final = r"(\d+(?:[.,]\d+)?)\s*(kg|lb|lbs)?"
_SET: Final = re.compile(rf"{_WEIGHT}\s*[x\u00d7*]\s*(\d+)(?:\s*(?:reps?\b)?\s*,?\s*(\d+|none)\s+left)?")
_MAXIMUM: Final = re.compile(rf"max(?:imum)?\s+{_WEIGHT}")
EXPECTED: Final = "expected a set such as '80x8' or '80x8, 2 left', or a maximum such as 'max 120'"


def lift_table(said: Any, where: str, unit: str, faults: list[Fault]) -> Mapping[str, Any] | None:
    """The table that words stand for, weights in `unit`; a table as it is, None with a fault kept for all else."""
    if isinstance(said, Mapping):
        return said
    text = said.strip().lower() if isinstance(said, str) else ""
    done, most = _SET.fullmatch(text), _MAXIMUM.fullmatch(text)
    found = done or most
    if found is None:
        faults.append(Fault(where, f"got {shown(said, 'toml')}, {EXPECTED}"))
        return None
    if found[2] and found[2].removesuffix("s") != unit:
        remedy = f"write it in {unit}, or say client.unit"
        faults.append(Fault(where, f"got {shown(said, 'toml')}, the client's unit is {unit}", remedy))
        return None
    weight = float(found[1].replace(",", "."))
    if done is None:
        return {"maximum": weight}
    left = {} if done[4] is None else {"rir": 0 if done[4] == "none" else int(done[4])}
    return {"load": weight, "reps": int(done[3]), **left}
