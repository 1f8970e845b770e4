"""Other weeks that are nearly as good, as a task of a search process."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any, Final

from setwright.catalogue.entries import Catalogue
from setwright.catalogue.faults import Fault, SetwrightError
from setwright.solver.brief.parsed_brief import parse_brief
from setwright.solver.desk.searches.task import Telling
from setwright.solver.planning import OutOfTime, Solved
from setwright.solver.rulebook import RULES
from setwright.solver.search.limits import DEFAULT, SEARCHES
from setwright.solver.search.solve_options import SolveOptions
from setwright.solver.search.stopping import check_not_stopped
from setwright.solver.sheets.document.solved_week import week_document
from setwright.solver.sheets.screen.alternatives import alternative_words, alternatives_documents
from setwright.solver.uses.compare.alternatives import with_alternatives

WITHIN: Final = 0.02
"""How far below the first an alternative may score, as a share of the week index; as `setwright week` has it."""


def other_weeks(arguments: Mapping[str, Any], catalogue: Catalogue, telling: Telling) -> Mapping[str, Any]:
    """The document of the week of `brief` with up to `count` alternatives; raises SetwrightError where it has none."""
    parsed = parse_brief(arguments["brief"], catalogue, "brief", tuple(RULES))
    options = SolveOptions(SEARCHES[arguments.get("search", DEFAULT)], stopped=telling.stopped)
    end, found = with_alternatives(parsed, catalogue, int(arguments["count"]), WITHIN, options)
    if isinstance(end, OutOfTime):
        check_not_stopped(end.ended_by)
    if not isinstance(end, Solved):
        raise SetwrightError(Fault("search", "no week was found", "find a week first"))
    others = [
        {**document, "words": list(alternative_words(other))}
        for document, other in zip(alternatives_documents(found), found, strict=True)
    ]
    return {**week_document(end), "alternatives": others}
