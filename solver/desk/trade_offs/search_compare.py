"""The comparison of goals, as a task of a search process: what stands is told after each goal."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any

from setwright.catalogue.entries import Catalogue
from setwright.solver.brief.parsed_brief import parse_brief
from setwright.solver.desk.searches.task import Telling
from setwright.solver.rulebook import RULES
from setwright.solver.search.limits import DEFAULT, SEARCHES
from setwright.solver.search.solve_options import Progress
from setwright.solver.sheets.screen.trade_offs.comparison import comparison_document
from setwright.solver.uses.compare.compared_brief import compared_briefs
from setwright.solver.uses.compare.comparison import Comparison, compare


def compare_goals(arguments: Mapping[str, Any], catalogue: Catalogue, telling: Telling) -> Mapping[str, Any]:
    """The compare document of `brief` (a raw table) and of `others` under each of `goals`, by the search `search`.

    Where `goals` is empty each is planned under its own.

    Raises UsageFault for a brief that cannot be read.
    """
    raws = [arguments["brief"], *arguments.get("others", ())]
    parsed = [parse_brief(raw, catalogue, "brief", tuple(RULES)) for raw in raws]
    briefs = compared_briefs(parsed, arguments["goals"])
    stands: dict[str, Any] = {"part": (0, len(briefs))}

    def watch(progress: Progress) -> None:
        if progress.best is not None and telling.due():
            telling.progress(index=round(progress.best.stimulus, 1), **stands)

    def found(so_far: Comparison) -> None:
        stands.update(part=(len(so_far.ends), len(briefs)), document=comparison_document(so_far))
        telling.progress(**stands)

    telling.progress(**stands)
    limits = SEARCHES[arguments.get("search", DEFAULT)]
    return comparison_document(compare(briefs, catalogue, limits, watch, telling.stopped, found))
