"""Plans lifting weeks: a brief in, a proven and audited week out. `__all__` lists what is public, loaded when used."""

from __future__ import annotations

from importlib import import_module
from typing import TYPE_CHECKING, Any

if TYPE_CHECKING:
    from setwright.catalogue.faults import SetwrightError, UsageFault
    from setwright.catalogue.load import load_catalogue
    from setwright.solver.auditing import Audit, audit
    from setwright.solver.brief.parsed_brief import ParsedBrief
    from setwright.solver.evaluation.week import Entry, Week
    from setwright.solver.log.values import LoggedSession, LoggedSet
    from setwright.solver.planning import Clash, OutOfTime, Solved, plan, plan_apart, plan_near
    from setwright.solver.public import compare, read_brief, template_briefs
    from setwright.solver.rulebook import resolve
    from setwright.solver.search.limits import SEARCHES
    from setwright.solver.search.solve_options import SolveOptions
    from setwright.solver.sheets.document.blocks.block_document import block_document
    from setwright.solver.sheets.document.solved_week import week_document
    from setwright.solver.sheets.document.week_reader import read_week
    from setwright.solver.sheets.screen.week_table import week_text
    from setwright.solver.uses.blocks.ask import BlockAsk
    from setwright.solver.uses.blocks.block import Block, NoBlock
    from setwright.solver.uses.blocks.planning import plan_block
    from setwright.solver.uses.edits.single_changes import best_changes
    from setwright.solver.uses.edits.swaps import swaps
    from setwright.solver.uses.explain.bottlenecks import bottlenecks_of
    from setwright.solver.uses.explain.reasons import reason_of
    from setwright.solver.uses.explain.what_if import more_minutes, solved_with, solved_without
    from setwright.solver.uses.progress.in_block import block_targets
    from setwright.solver.uses.relax.relaxations import relaxations_of
    from setwright.solver.uses.time_budget.curve_search import curve_of

    __version__: str

_HOMES = {
    "setwright.catalogue.faults": ("SetwrightError", "UsageFault"),
    "setwright.catalogue.load": ("load_catalogue",),
    "setwright.solver.auditing": ("Audit", "audit"),
    "setwright.solver.brief.parsed_brief": ("ParsedBrief",),
    "setwright.solver.evaluation.week": ("Entry", "Week"),
    "setwright.solver.log.values": ("LoggedSession", "LoggedSet"),
    "setwright.solver.planning": ("Clash", "OutOfTime", "Solved", "plan", "plan_apart", "plan_near"),
    "setwright.solver.public": ("compare", "read_brief", "template_briefs"),
    "setwright.solver.rulebook": ("resolve",),
    "setwright.solver.search.limits": ("SEARCHES",),
    "setwright.solver.search.solve_options": ("SolveOptions",),
    "setwright.solver.sheets.document.blocks.block_document": ("block_document",),
    "setwright.solver.sheets.document.solved_week": ("week_document",),
    "setwright.solver.sheets.document.week_reader": ("read_week",),
    "setwright.solver.sheets.screen.week_table": ("week_text",),
    "setwright.solver.uses.blocks.ask": ("BlockAsk",),
    "setwright.solver.uses.blocks.block": ("Block", "NoBlock"),
    "setwright.solver.uses.blocks.planning": ("plan_block",),
    "setwright.solver.uses.edits.single_changes": ("best_changes",),
    "setwright.solver.uses.edits.swaps": ("swaps",),
    "setwright.solver.uses.explain.bottlenecks": ("bottlenecks_of",),
    "setwright.solver.uses.explain.reasons": ("reason_of",),
    "setwright.solver.uses.explain.what_if": ("more_minutes", "solved_with", "solved_without"),
    "setwright.solver.uses.progress.in_block": ("block_targets",),
    "setwright.solver.uses.relax.relaxations": ("relaxations_of",),
    "setwright.solver.uses.time_budget.curve_search": ("curve_of",),
}
"""Module -> its public names. A checker follows the imports above; a test holds the two lists together."""
_HOME_OF = {name: module for module, names in _HOMES.items() for name in names}

__all__ = [
    "SEARCHES",
    "Audit",
    "Block",
    "BlockAsk",
    "Clash",
    "Entry",
    "LoggedSession",
    "LoggedSet",
    "NoBlock",
    "OutOfTime",
    "ParsedBrief",
    "SetwrightError",
    "SolveOptions",
    "Solved",
    "UsageFault",
    "Week",
    "__version__",
    "audit",
    "best_changes",
    "block_document",
    "block_targets",
    "bottlenecks_of",
    "compare",
    "curve_of",
    "load_catalogue",
    "more_minutes",
    "plan",
    "plan_apart",
    "plan_block",
    "plan_near",
    "read_brief",
    "read_week",
    "reason_of",
    "relaxations_of",
    "resolve",
    "solved_with",
    "solved_without",
    "swaps",
    "template_briefs",
    "week_document",
    "week_text",
]


def __getattr__(name: str) -> Any:
    """A public name, its module imported now: importing the package alone loads no engine and no sheet."""
    if name == "__version__":
        from setwright.catalogue.version import own_version

        return own_version()
    if name not in _HOME_OF:
        raise AttributeError(f"module {__name__!r} has no attribute {name!r}")
    found = getattr(import_module(_HOME_OF[name]), name)
    globals()[name] = found
    return found


def __dir__() -> list[str]:
    return sorted(__all__)
