"""The search for a week, as a task of a search process: better weeks are told as they are found."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any

from setwright.catalogue.entries import Catalogue
from setwright.catalogue.faults import Fault, SetwrightError
from setwright.solver.book.clients import without_health
from setwright.solver.brief.parsed_brief import ParsedBrief, parse_brief
from setwright.solver.desk.searches.figures import figures_of
from setwright.solver.desk.searches.task import Telling
from setwright.solver.planning import Clash, OutOfTime, Solved, plan
from setwright.solver.rulebook import RULES
from setwright.solver.search.limits import DEFAULT, SEARCHES
from setwright.solver.search.solve_options import Progress, SolveOptions
from setwright.solver.search.stopping import check_not_stopped
from setwright.solver.sheets.common.findings import no_week_words
from setwright.solver.sheets.document.changed_week import changed_week_document
from setwright.solver.sheets.document.solved_week import week_document
from setwright.solver.sheets.screen.clash import clash_document
from setwright.solver.uses.relax.relaxations import relaxations_of


def find_week(arguments: Mapping[str, Any], catalogue: Catalogue, telling: Telling) -> Mapping[str, Any]:
    """The week document, or the clash document, of `brief` (a raw table) by the search named in `search`.

    Raises UsageFault for a brief that cannot be read, SetwrightError where no week was found in time.
    """
    parsed = parse_brief(arguments["brief"], catalogue, "brief", tuple(RULES))
    limits = SEARCHES[arguments.get("search", DEFAULT)]
    options = SolveOptions(limits, watch=_Watch(parsed, telling), stopped=telling.stopped)
    match plan(parsed, catalogue, options):
        case Solved() as solved:
            return week_document(solved)
        case Clash() as clash:
            return _without_health(clash_document(clash, relaxations_of(clash)))
        case OutOfTime() as end:
            check_not_stopped(end.ended_by)
            raise SetwrightError(
                Fault("search", no_week_words(end), "a wider brief, or a thorough search, may find one")
            )


def _without_health(document: dict[str, Any]) -> dict[str, Any]:
    """A clash whose concessions' briefs are without health notes: who takes one up puts them in again."""
    concessions = [{**one, "brief": without_health(one["brief"])} for one in document["concessions"]]
    return {**document, "concessions": concessions}


class _Watch:
    """Tells each better week, and how far it may be from the best."""

    def __init__(self, parsed: ParsedBrief, telling: Telling) -> None:
        self._parsed, self._telling = parsed, telling

    def __call__(self, progress: Progress) -> None:
        if not self._telling.due() or progress.best is None:
            return
        self._telling.progress(
            **figures_of(progress, progress.best),
            document=changed_week_document({}, self._parsed, progress.best, swaps={}),
        )
