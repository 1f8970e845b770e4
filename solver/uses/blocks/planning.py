"""A brief and what is asked of a block in; the block out, every week of it audited by its own brief."""

from __future__ import annotations

from dataclasses import replace

from setwright.catalogue.entries import Catalogue
from setwright.catalogue.faults import Fault, UsageFault
from setwright.solver.auditing import Audit, audit
from setwright.solver.brief.parsed_brief import ParsedBrief
from setwright.solver.evaluation.week import Week
from setwright.solver.planning import AuditFailed, Solved, plan
from setwright.solver.rulebook import resolve
from setwright.solver.search.solve_options import SolveOptions
from setwright.solver.uses.blocks.ask import BlockAsk
from setwright.solver.uses.blocks.ask_faults import checked
from setwright.solver.uses.blocks.block import Block, BlockWeek, NoBlock
from setwright.solver.uses.blocks.calendar import calendar_of
from setwright.solver.uses.blocks.plan_weeks import planned_weeks
from setwright.solver.uses.blocks.week_targets import with_targets

USUAL = SolveOptions(pairs_note=False)


def plan_block(
    parsed: ParsedBrief,
    catalogue: Catalogue,
    ask: BlockAsk,
    options: SolveOptions = USUAL,
    base: Week | None = None,
) -> Block | NoBlock:
    """The block of a brief: its week solved once, or `base`, and every other week made from it.

    The same brief, catalogue, ask and work limits give the same block. Raises UsageFault with every fault of the ask,
    or where `base` breaks a rule of the brief, and AuditFailed where a week made here does, which is our defect.
    """
    asked = checked(ask, catalogue)
    solved = _given(parsed, catalogue, base) if base else _solved(parsed, catalogue, options)
    if isinstance(solved, NoBlock):
        return solved
    calendar = calendar_of(asked, parsed.brief, catalogue.defaults.block)
    weeks = planned_weeks(parsed, solved, asked, calendar, options)
    if isinstance(weeks, NoBlock):
        return weeks
    for week in weeks:
        _refuse_broken(week)
    return Block(asked, parsed, solved, with_targets(weeks))


def _solved(parsed: ParsedBrief, catalogue: Catalogue, options: SolveOptions) -> Audit | NoBlock:
    end = plan(parsed, catalogue, replace(options, pairs_note=False))
    return end.audit if isinstance(end, Solved) else NoBlock(end)


def _given(parsed: ParsedBrief, catalogue: Catalogue, base: Week) -> Audit:
    found = audit(resolve(parsed.brief, catalogue), base)
    if found.broken:
        rules = ", ".join(dict.fromkeys(finding.rule for finding in found.broken))
        raise UsageFault(Fault("week", f"breaks {rules}", "mend what its audit names, or plan it anew"))
    return found


def _refuse_broken(week: BlockWeek) -> None:
    if week.audit is not None and week.audit.broken:
        faults = [Fault(f"week {week.number}", f"breaks a rule: {finding}") for finding in week.audit.broken]
        raise AuditFailed([*faults, Fault("", "this is a defect of setwright, please report the brief")])
