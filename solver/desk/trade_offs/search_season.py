"""A season laid out in blocks, as a task of a search process."""

from __future__ import annotations

from collections.abc import Mapping
from datetime import date
from typing import Any

from setwright.catalogue.entries import Catalogue
from setwright.solver.brief.parsed_brief import parse_brief
from setwright.solver.desk.searches.task import Telling
from setwright.solver.foreign.season_calendar import read_calendar
from setwright.solver.rulebook import RULES
from setwright.solver.search.solve_options import SolveOptions
from setwright.solver.sheets.document.season.season_document import season_document
from setwright.solver.uses.season.season_asked import season_asked
from setwright.solver.uses.season.season_search import season_of


def search_season(arguments: Mapping[str, Any], catalogue: Catalogue, telling: Telling) -> Mapping[str, Any]:
    """The season document of `brief` (a raw table) for `weeks` from `start` on, under the CSV of `calendar`.

    Raises UsageFault for what cannot be read, SetwrightError where no reference week can be planned.
    """
    parsed = parse_brief(arguments["brief"], catalogue, "brief", tuple(RULES))
    rows = read_calendar(arguments["calendar"].encode(), "calendar", catalogue) if arguments["calendar"] else ()
    asked = season_asked(
        parsed.brief,
        date.fromisoformat(arguments["start"]),
        arguments["weeks"],
        (arguments["block_weeks"][0], arguments["block_weeks"][1]),
        rows,
        arguments["emphasis"],
        catalogue,
    )
    options = SolveOptions(stopped=telling.stopped)

    def tell(minutes: int, days: int) -> None:
        telling.progress(document={"schema": "setwright.season-reference/1", "minutes": minutes, "days": days})

    return season_document(season_of(parsed, asked.weeks, asked.turns, asked.block_weeks, catalogue, options, tell))
