"""The end of a search that was left while an engine was at work: the best week that its watcher was told of."""

from __future__ import annotations

from setwright.catalogue.entries import Catalogue
from setwright.solver.brief.parsed_brief import ParsedBrief
from setwright.solver.planning.delivery import delivered
from setwright.solver.planning.ends import OutOfTime, Solved
from setwright.solver.rulebook import resolve
from setwright.solver.search.limits import Limits
from setwright.solver.search.solve_options import Progress
from setwright.solver.search.stopping import EndedBy


def best_so_far(
    parsed: ParsedBrief, catalogue: Catalogue, told: Progress | None, ended_by: EndedBy, limits: Limits
) -> Solved | OutOfTime:
    """The best week a watcher was last `told` of, audited anew, with the bound proven by then; OutOfTime where none.

    Raises AuditFailed as `plan` does.
    """
    resolved = resolve(parsed.brief, catalogue)
    if told is None or told.best is None:
        return OutOfTime(parsed, resolved, ended_by, limits)
    return delivered(parsed, resolved, told.best.evaluated.week, told.bound, ended_by, limits)
