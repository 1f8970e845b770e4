"""The search for a block, as a task of a search process: its week, then each week away, one search after the other."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any

from setwright.catalogue.entries import Catalogue
from setwright.catalogue.faults import SetwrightError
from setwright.solver.brief.parsed_brief import parse_brief
from setwright.solver.desk.searches.figures import figures_of
from setwright.solver.desk.searches.task import Telling
from setwright.solver.planning import OutOfTime
from setwright.solver.rulebook import RULES
from setwright.solver.search.limits import DEFAULT, SEARCHES
from setwright.solver.search.solve_options import Progress, SolveOptions
from setwright.solver.search.stopping import check_not_stopped
from setwright.solver.sheets.blocks.no_block import no_block_fault
from setwright.solver.sheets.document.blocks.block_document import block_document
from setwright.solver.sheets.document.blocks.block_model import BlockAskPart
from setwright.solver.sheets.document.blocks.block_reader import ask_of
from setwright.solver.uses.blocks.block import NoBlock
from setwright.solver.uses.blocks.calendar import calendar_of
from setwright.solver.uses.blocks.planning import plan_block


def find_block(arguments: Mapping[str, Any], catalogue: Catalogue, telling: Telling) -> Mapping[str, Any]:
    """The block document, without health notes, of `brief` (a raw table), `ask` (a document's) and `search`.

    Raises UsageFault for what cannot be asked, SetwrightError where a week of it was not found.
    """
    parsed = parse_brief(arguments["brief"], catalogue, "brief", tuple(RULES))
    ask = ask_of(BlockAskPart.model_validate(arguments["ask"]))
    calendar = calendar_of(ask, parsed.brief, catalogue.defaults.block)
    watch = _Watch(telling, 1 + sum(week.kind in ("travel", "short") for week in calendar))
    limits = SEARCHES[arguments.get("search", DEFAULT)]
    options = SolveOptions(limits, watch=watch, stopped=telling.stopped, pairs_note=False)
    found = plan_block(parsed, catalogue, ask, options)
    if isinstance(found, NoBlock):
        if isinstance(found.end, OutOfTime):
            check_not_stopped(found.end.ended_by)
        raise SetwrightError(no_block_fault(found))
    return block_document(found)


class _Watch:
    """Tells which search runs of at most how many, and how far its week may be from the best."""

    def __init__(self, telling: Telling, most: int) -> None:
        self._telling, self._most = telling, most
        self._done, self._seconds = 0, 0.0

    def __call__(self, progress: Progress) -> None:
        if progress.seconds < self._seconds:
            self._done += 1
        self._seconds = progress.seconds
        if not self._telling.due() or progress.best is None:
            return
        self._telling.progress(
            **figures_of(progress, progress.best),
            part=(min(self._done, self._most - 1), self._most),
        )
