"""What time buys: the form, and the act that begins the curve."""

from __future__ import annotations

from functools import partial
from typing import Final

from starlette.requests import Request
from starlette.responses import Response

from setwright.catalogue.fault_collector import FaultCollector
from setwright.catalogue.faults import Fault, UsageFault
from setwright.solver.desk.field_values import ANY_NUMBER, effort_said, whole_said
from setwright.solver.desk.forms import Fields
from setwright.solver.desk.pages import go_to, page
from setwright.solver.desk.trade_offs.asking import begun, form_document
from setwright.solver.uses.time_budget.ranges import MOST_AMOUNTS, RANGES, amounts_from

USUAL: Final = {"minutes": (20, 120, 10), "weekly": (60, 300, 30), "days": (1, 6, 1)}
"""What varies -> the range that the form offers."""


def show(request: Request) -> Response:
    """What can be varied, and over which amounts."""
    ranges = {kind: {"limits": list(limits), "usual": list(USUAL[kind])} for kind, limits in RANGES.items()}
    return page(request, "trade_offs/minutes.html", form_document(request, "curve", ranges=ranges))


def ask(request: Request, fields: Fields) -> Response:
    """Begin a curve over the amounts that a form names; raises UsageFault with every fault."""
    kind = fields.get("by", "minutes")
    if kind not in RANGES:
        raise UsageFault(Fault("by", f"got {kind!r}, expected one of {', '.join(RANGES)}"))
    amounts = _amounts(kind, fields)
    effort = effort_said(fields, "quick")
    return go_to(request, begun(request, "curve", by=kind, amounts=list(amounts), search=effort))


def _amounts(kind: str, fields: Fields) -> tuple[int, ...]:
    """The amounts of a range; raises UsageFault."""
    low, high, _ = RANGES[kind]
    names = ("from", "to", "step")
    read = FaultCollector()
    said = [
        read.result_of(partial(whole_said, fields.get(f"{kind}-{name}", ""), f"{kind} {name}", ANY_NUMBER, usual))
        for name, usual in zip(names, USUAL[kind], strict=True)
    ]
    read.raise_all()
    first, last, step = (number or 0 for number in said)
    faults = []
    if first < low or last > high:
        faults.append(Fault(kind, f"{first} to {last} goes beyond {low} to {high}", "ask for another range"))
    if last <= first or step < 1:
        faults.append(Fault(kind, f"{first} to {last} by {step} does not rise", "begin lower, or step by 1 or more"))
    elif len(amounts := amounts_from(first, last, step)) > MOST_AMOUNTS:
        said_many = f"asks for {len(amounts)} weeks, at most {MOST_AMOUNTS}"
        faults.append(Fault(kind, said_many, "take a longer step"))
    if faults:
        raise UsageFault(faults)
    return amounts_from(first, last, step)
