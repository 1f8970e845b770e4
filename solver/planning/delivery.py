"""The last check of a week before it leaves the planner: audited anew, under its bound."""

from __future__ import annotations

import math

from setwright.catalogue.faults import Fault, SetwrightError
from setwright.solver.auditing import Audit, audit
from setwright.solver.brief.parsed_brief import ParsedBrief
from setwright.solver.evaluation.resolved_brief import ResolvedBrief
from setwright.solver.evaluation.week import Week
from setwright.solver.planning.ends import Solved
from setwright.solver.search.bounding import is_proved
from setwright.solver.search.limits import Limits
from setwright.solver.search.stopping import EndedBy


class AuditFailed(SetwrightError):
    """A solved week breaks a hard rule or passes its bound: our defect, never the user's."""


def delivered(
    parsed: ParsedBrief, resolved: ResolvedBrief, week: Week, bound: float, ended_by: EndedBy, limits: Limits
) -> Solved:
    """A search's week, audited anew from the printed week alone; `bound` in score units. Raises AuditFailed."""
    found = audit(resolved, week)
    check(found, bound)
    bound_units = max(round(bound), found.score_units) if math.isfinite(bound) else math.inf
    if is_proved(found.score_units, bound):
        ended_by = EndedBy.PROVED
    return Solved(parsed, resolved, found, bound_units, ended_by, limits)


def check(found: Audit, bound: float) -> None:
    """Raise AuditFailed when a week breaks a rule or scores more than its bound in score units."""
    faults = [Fault("audit", f"the planned week breaks a rule: {finding}") for finding in found.broken]
    if found.score_units > bound + 1:
        faults.append(Fault("audit", f"the score {found.score_units} passes the bound {bound:.0f}"))
    if faults:
        raise AuditFailed([*faults, Fault("", "this is a defect of setwright, please report the brief")])
