"""Ranges as options write them: FROM:TO or FROM:TO:STEP."""

from __future__ import annotations

import re

from setwright.catalogue.faults import Fault, UsageFault

MOST = 40
"""Amounts in one range: each may cost a search."""


def span_of(option: str, text: str, low: int, high: int, step: int) -> tuple[int, ...]:
    """The amounts of a range, ends included; raises UsageFault with what is wrong and how to write it."""
    form = f"write {option} FROM:TO or FROM:TO:STEP in whole numbers from {low} to {high}"
    found = re.fullmatch(r"(\d{1,4}):(\d{1,4})(?::(\d{1,4}))?", text.strip())
    if found is None:
        raise UsageFault(Fault(option, f"{text!r} is not a range", form))
    first, last, by = int(found[1]), int(found[2]), int(found[3]) if found[3] else step
    if first < low or last > high:
        raise UsageFault(Fault(option, f"{text!r} goes beyond {low} to {high}", form))
    if last < first or by < 1:
        raise UsageFault(Fault(option, f"{text!r} does not rise", form))
    amounts = tuple(dict.fromkeys((*range(first, last + 1, by), last)))
    if len(amounts) > MOST:
        raise UsageFault(Fault(option, f"{text!r} asks for {len(amounts)} weeks, at most {MOST}", "take a longer step"))
    return amounts
