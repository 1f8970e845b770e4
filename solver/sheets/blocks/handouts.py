"""The weeks of a block as handouts: each as a week's own, with its place in the block and its dates."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace

from setwright.solver.brief.parsed_brief import raw_of
from setwright.solver.sheets.blocks.words import block_loads
from setwright.solver.sheets.common.loads.said_loads import SaidLoads
from setwright.solver.sheets.document.changed_week import changed_week_document
from setwright.solver.sheets.handout.coach import DEFAULT_COACH, Coach
from setwright.solver.sheets.handout.handout import Handout, handout_of
from setwright.solver.uses.blocks.block import Block, BlockWeek


def block_handouts(block: Block, coach: Coach = DEFAULT_COACH) -> Iterator[tuple[int, Handout]]:
    """(number, handout) of each week that has sessions; the loads on the cards are the block's targets.

    Raises SetwrightError while the block's client needs a clearance that is not recorded.
    """
    for week in block.weeks:
        if week.parsed is not None and week.audit is not None:
            yield week.number, week_handout(block, week, coach, block_loads(week))


def week_handout(block: Block, week: BlockWeek, coach: Coach, loads: SaidLoads) -> Handout:
    """The handout of a week that has sessions, with these loads on its cards; raises as `block_handouts` does."""
    assert week.parsed is not None and week.audit is not None
    catalogue = week.audit.evaluated.resolved.catalogue
    # With the client's notes, by which the figures are checked; the handout takes them out again.
    source = {"brief": raw_of(week.parsed.brief)}
    document = changed_week_document(source, week.parsed, week.audit, loads)
    found = handout_of(document, catalogue, coach.model_copy(update={"weeks": 1}), week.starts, f"week {week.number}")
    return replace(
        found,
        week=f"{coach.words['week']} {week.number}/{len(block.weeks)}",
        document={**found.document, **_block_part(block, week)},
    )


def _block_part(block: Block, week: BlockWeek) -> dict[str, object]:
    return {"block": {"week": week.number, "weeks": len(block.weeks), "kind": week.kind}}
