"""Documents as JSON text and back: the same bytes for the same values, nothing read that cannot be written."""

from __future__ import annotations

import json
import math
from collections.abc import Iterator
from typing import Any, Final

from setwright.catalogue.faults import Fault, UsageFault
from setwright.solver.brief.fault_words import path_of

MOST_BYTES: Final = 4_000_000
DEEPEST: Final = 60
"""Lists and objects within each other; a week's document has 8."""
MOST_FAULTS: Final = 20
"""So many values that are amiss are named; a file with more is no week."""


def dumped(document: dict[str, Any]) -> str:
    """A document's text: sorted keys, one space of indent, a newline at the end."""
    return json.dumps(document, sort_keys=True, indent=1, ensure_ascii=False, allow_nan=False) + "\n"


def rounded(value: float, places: int = 4) -> float:
    """A number as documents hold it: rounded, never minus zero, and 0 for what is not finite."""
    return round(value, places) + 0.0 if math.isfinite(value) else 0.0


def parse_json(data: bytes, where: str) -> Any:
    """The JSON of a file; raises UsageFault when it is none."""
    if len(data) > MOST_BYTES:
        raise UsageFault(Fault(where, "is larger than 4 MB, expected one week", "name the file of one week"))
    if not data.strip():
        raise UsageFault(Fault(where, "is empty", "name a week that setwright wrote as JSON"))
    try:
        return json.loads(data.decode("utf-8-sig"))
    except UnicodeDecodeError:
        raise UsageFault(Fault(where, "is not UTF-8 text", "name a week written as JSON")) from None
    except (ValueError, RecursionError) as error:  # ValueError also of a number with more digits than Python reads
        raise UsageFault(Fault(where, f"is not JSON: {error}", "name a week that setwright wrote as JSON")) from None


def refuse_unwritable(document: Any, where: str) -> None:
    """Raise UsageFault for values that could be read but not be written again, with each one's path."""
    faults = []
    for path, said in _unwritable(document, ()):
        faults.append(Fault(f"{where}: {path_of(path)}", said, "name a week that setwright wrote as JSON"))
        if len(faults) == MOST_FAULTS:
            break
    if faults:
        raise UsageFault(faults)


def _unwritable(value: Any, path: tuple[int | str, ...]) -> Iterator[tuple[tuple[int | str, ...], str]]:
    if len(path) > DEEPEST:
        yield path[:1], f"is nested more than {DEEPEST} deep"
    elif isinstance(value, dict):
        for key, part in value.items():
            safe = key.encode(errors="backslashreplace").decode()
            if safe != key:
                yield (*path, safe), "has a name with half a letter (a lone surrogate), expected text"
            yield from _unwritable(part, (*path, safe))
    elif isinstance(value, list):
        for place, part in enumerate(value):
            yield from _unwritable(part, (*path, place))
    elif isinstance(value, float) and not math.isfinite(value):
        yield path, f"got {value}, expected a number"
    elif isinstance(value, str) and value.encode(errors="ignore").decode() != value:
        yield path, "has half a letter (a lone surrogate), expected text"
