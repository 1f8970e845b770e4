"""Dates as forms and addresses say them."""

from __future__ import annotations

from datetime import date

from setwright.catalogue.faults import Fault, UsageFault
from setwright.solver.desk.clock import today
from setwright.solver.log.mondays import coming_monday, monday_of


def date_said(text: str, where: str = "date") -> date:
    """The day that a text names; raises UsageFault."""
    try:
        return date.fromisoformat(text)
    except ValueError:
        raise UsageFault(Fault(where, f"got {text!r}, expected a day as YYYY-MM-DD")) from None


def monday_said(text: str) -> date:
    """The Monday of the week of a day, the coming one where nothing is said; raises UsageFault."""
    return monday_of(date_said(text, "starts")) if text else coming_monday(today())
