"""Goals side by side: the form, and the act that begins the comparison."""

from __future__ import annotations

from typing import Final, get_args

from starlette.requests import Request
from starlette.responses import Response

from setwright.catalogue.faults import Fault, UsageFault
from setwright.solver.brief.schema import Goal
from setwright.solver.desk.forms import Fields, effort_said, many
from setwright.solver.desk.pages import go_to, page
from setwright.solver.desk.trade_offs.asking import begun, form_document

GOALS: Final[tuple[str, ...]] = get_args(Goal)
FEWEST: Final = 2


def show(request: Request) -> Response:
    """The goals that can be set side by side for a client's brief."""
    return page(request, "trade_offs/compare.html", form_document(request, "compare", goals=list(GOALS)))


def ask(request: Request, fields: Fields) -> Response:
    """Begin a comparison of the goals ticked, of all where none is; raises UsageFault with every fault."""
    said = many(request, "goals") or GOALS
    faults = [Fault("goals", f"got {goal!r}, expected {', '.join(GOALS)}") for goal in said if goal not in GOALS]
    if len(set(said)) < FEWEST and not faults:
        faults.append(Fault("goals", "one alone has nothing beside it", "tick two or three"))
    if faults:
        raise UsageFault(faults)
    goals = [goal for goal in GOALS if goal in said]
    return go_to(request, begun(request, "compare", goals=goals, search=effort_said(fields)))
