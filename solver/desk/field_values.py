"""What a field of a form says: a whole number within limits, the name of a search."""

from __future__ import annotations

from collections.abc import Mapping

from setwright.catalogue.faults import Fault, UsageFault
from setwright.solver.search.limits import DEFAULT, SEARCHES

ANY_NUMBER = (0, 9_999)
"""The limits of a field whose number is held against others once it is read."""
MOST_SHOWN = 40
"""Letters of a field that a fault repeats."""


def whole_said(text: str, where: str, limits: tuple[int, int], usual: int | None = None) -> int:
    """The whole number within limits that a field says, the usual one where it is empty; raises UsageFault."""
    said, (low, high) = text.strip(), limits
    if not said and usual is not None:
        return usual
    short = said.lstrip("0")[: len(str(high)) + 1] or "0"
    if not (said.isascii() and said.isdecimal()) or not low <= int(short) <= high:
        shown = f"{said[:MOST_SHOWN]}..." if len(said) > MOST_SHOWN else said
        raise UsageFault(Fault(where, f"got {shown!r}, expected a whole number from {low} to {high}"))
    return int(short)


def effort_said(fields: Mapping[str, str], usual: str = DEFAULT) -> str:
    """The name of the search that a form asks for, the usual one where it names none; raises UsageFault."""
    effort = fields.get("search") or usual
    if effort not in SEARCHES:
        raise UsageFault(Fault("search", f"got {effort!r}, expected one of {', '.join(SEARCHES)}"))
    return effort
