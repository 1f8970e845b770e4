"""The search for a week after what happened, as a task of a search process."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any

from setwright.catalogue.entries import Catalogue
from setwright.catalogue.fault_collector import FaultCollector
from setwright.catalogue.faults import Fault, SetwrightError
from setwright.solver.auditing import audit
from setwright.solver.desk.replan.said import LABELS, said_happened
from setwright.solver.desk.searches.figures import figures_of
from setwright.solver.desk.searches.task import Telling
from setwright.solver.planning import Clash, OutOfTime
from setwright.solver.records.happened_words import happened_of
from setwright.solver.rulebook import resolve
from setwright.solver.search.limits import DEFAULT, SEARCHES
from setwright.solver.search.solve_options import Progress, SolveOptions
from setwright.solver.search.stopping import check_not_stopped
from setwright.solver.sheets.common.findings import no_week_words
from setwright.solver.sheets.document.week_reader import read_week
from setwright.solver.sheets.screen.clash import clash_document
from setwright.solver.sheets.screen.edits.replanned import replanned_words
from setwright.solver.sheets.screen.edits.replanned_document import replanned_document
from setwright.solver.uses.replan.replanned import replanned


def find_replan(arguments: Mapping[str, Any], catalogue: Catalogue, telling: Telling) -> Mapping[str, Any]:
    """The new week's document, with what changed in words, or the clash document.

    Of `week` (a document without health notes), its whole `brief`, `fields`, `done` and `missed` (the form), and
    `search`; the new week has no health notes. Raises
    UsageFault for what cannot have happened, SetwrightError where no week was found in time.
    """
    document, faults = arguments["week"], FaultCollector()
    parsed, week = read_week({**document, "brief": arguments["brief"]}, catalogue, "week")
    before = audit(resolve(parsed.brief, catalogue), week)
    said = said_happened(arguments["fields"], arguments["done"], arguments["missed"], faults)
    happened = happened_of(said, before.evaluated.resolved, faults, LABELS.__getitem__)
    faults.raise_all()
    limits = SEARCHES[arguments.get("search", DEFAULT)]
    end = replanned(parsed, before, happened, SolveOptions(limits, watch=_Watch(telling), stopped=telling.stopped))
    if isinstance(end, Clash):
        return clash_document(end)
    if isinstance(end, OutOfTime):
        check_not_stopped(end.ended_by)
        raise SetwrightError(Fault("replan", no_week_words(end), "take back some of what is asked"))
    found = replanned_document(document, end)
    return {**found, "replan": {**found["replan"], "words": replanned_words(end)}}


class _Watch:
    """Tells how good the best week so far is."""

    def __init__(self, telling: Telling) -> None:
        self._telling = telling

    def __call__(self, progress: Progress) -> None:
        if not self._telling.due() or progress.best is None:
            return
        self._telling.progress(**figures_of(progress, progress.best))
