"""Dates as forms and addresses say them."""

from __future__ import annotations

from datetime import date
from typing import Final

from setwright.catalogue.faults import Fault, UsageFault
from setwright.solver.desk.clock import today
from setwright.solver.desk.field_values import MOST_SHOWN
from setwright.solver.log.mondays import coming_monday, monday_of

YEARS: Final = range(1900, 2200)
"""A day near the end of the calendar would have no week after it."""


def date_said(text: str, where: str = "date") -> date:
    """The day that a text names, of the years that may be planned and logged; raises UsageFault."""
    try:
        found = date.fromisoformat(text)
    except ValueError:
        raise UsageFault(Fault(where, f"got {text[:MOST_SHOWN]!r}, expected a day as YYYY-MM-DD")) from None
    if found.year not in YEARS:
        raise UsageFault(Fault(where, f"got {text}, expected a year from {YEARS[0]} to {YEARS[-1]}"))
    return found


def monday_said(text: str) -> date:
    """The Monday of the week of a day, the coming one where nothing is said; raises UsageFault."""
    return monday_of(date_said(text, "starts")) if text else coming_monday(today())
