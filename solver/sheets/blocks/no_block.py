"""Why a block has no week somewhere, as a fault."""

from __future__ import annotations

from setwright.catalogue.faults import Fault
from setwright.solver.planning import Clash
from setwright.solver.sheets.common.findings import no_week_words
from setwright.solver.uses.blocks.block import NoBlock


def no_block_fault(found: NoBlock) -> Fault:
    """Which week has none, which rules clash or what ended the search, and what to do."""
    where = "brief" if found.number is None else f"week {found.number}"
    if isinstance(found.end, Clash):
        rules = ", ".join(dict.fromkeys(member.rule for member in found.end.conflicts))
        alone = "a search for one week names what clashes"
        remedy = alone if found.number is None else "give it more time or other kit"
        return Fault(where, f"no week is possible ({rules})", remedy)
    return Fault(where, no_week_words(found.end), "try a thorough search")
