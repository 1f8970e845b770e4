"""The curve of what time buys, as a task of a search process: its points are told as they come."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from typing import Any

from setwright.catalogue.entries import Catalogue
from setwright.solver.brief.parsed_brief import parse_brief
from setwright.solver.desk.searches.task import Telling
from setwright.solver.rulebook import RULES
from setwright.solver.search.limits import SEARCHES
from setwright.solver.sheets.screen.trade_offs.curve import curve_document
from setwright.solver.uses.time_budget.curve_search import curve_of
from setwright.solver.uses.time_budget.time_curve import TimeCurve


def search_curve(arguments: Mapping[str, Any], catalogue: Catalogue, telling: Telling) -> Mapping[str, Any]:
    """The curve document, with each point's week, of `brief` (a raw table) over `amounts` of what `by` names.

    What is told meanwhile has no weeks in it. Raises UsageFault for a brief that cannot be read or be given so much.
    """
    parsed = parse_brief(arguments["brief"], catalogue, "brief", tuple(RULES))
    amounts = tuple(arguments["amounts"])
    stands: dict[str, Any] = {"part": (0, len(amounts))}

    def tell(amount: int, left: int) -> None:
        stands.update(part=(len(amounts) - left, len(amounts)))
        telling.progress(**stands)

    def found(so_far: Callable[[], TimeCurve]) -> None:
        if telling.due():
            stands.update(document=curve_document(so_far(), weeks=False))
            telling.progress(**stands)

    limits = SEARCHES[arguments.get("search", "quick")]
    return curve_document(curve_of(parsed, arguments["by"], amounts, catalogue, limits, tell, telling.stopped, found))
