"""Goals and briefs side by side: the form, and the act that begins the comparison."""

from __future__ import annotations

from typing import Final, get_args

from starlette.requests import Request
from starlette.responses import Response

from setwright.catalogue.faults import Fault, UsageFault
from setwright.solver.book.clients import brief_of, client_of
from setwright.solver.brief.parsed_brief import parse_brief, raw_of
from setwright.solver.brief.schema import Goal
from setwright.solver.desk.desk import desk_of
from setwright.solver.desk.field_values import effort_said
from setwright.solver.desk.forms import Fields, many
from setwright.solver.desk.pages import go_to, page
from setwright.solver.desk.trade_offs.asking import begun, form_document
from setwright.solver.desk.trade_offs.other_briefs import named, other_briefs
from setwright.solver.rulebook import RULES
from setwright.solver.uses.compare.compared_brief import FEWEST_CASES, checked_cases

GOALS: Final[tuple[Goal, ...]] = get_args(Goal)


def show(request: Request) -> Response:
    """The goals that can be set side by side for a client's brief, and where other briefs are named."""
    return page(request, "trade_offs/compare.html", form_document(request, "compare", goals=list(GOALS)))


def ask(request: Request, fields: Fields) -> Response:
    """Begin a comparison of a client's brief, and of others where some are named; raises UsageFault with every fault.

    Each is planned under the goals ticked. Where none is, one brief alone is planned under all, several each under
    its own.
    """
    desk, said, effort = desk_of(request), many(request, "goals"), effort_said(fields)
    faults = [Fault("goals", f"got {goal!r}, expected {', '.join(GOALS)}") for goal in said if goal not in GOALS]
    if faults:
        raise UsageFault(faults)
    with desk.book() as book:
        client = client_of(book, request.path_params["code"])
        own = parse_brief(brief_of(book, client), desk.catalogue, f"@{client.code}", tuple(RULES))
        others = other_briefs(fields.get("others", ""), own.brief, book, desk)
    goals = [goal for goal in GOALS if goal in said] or ([] if others else list(GOALS))
    if not others and len(goals) < FEWEST_CASES:
        raise UsageFault(Fault("goals", "one alone has nothing beside it", "tick two or three, or name another brief"))
    briefs = [own, *others]
    checked_cases(briefs, goals)
    names = [named(one.brief) for one in briefs] if others else []
    raws = [raw_of(one.brief) for one in others]
    return go_to(request, begun(request, "compare", goals=goals, others=raws, names=names, search=effort))
