"""The sheets of a block's weeks as files: every week's, or one week's with the loads from the log."""

from __future__ import annotations

from collections.abc import Sequence

from setwright.solver.sheets.blocks.handouts import block_handouts, week_handout
from setwright.solver.sheets.formats import FORMATS, written
from setwright.solver.sheets.handout.coach import DEFAULT_COACH, Coach
from setwright.solver.sheets.screen.progress.next_table import card_loads
from setwright.solver.uses.blocks.block import Block
from setwright.solver.uses.progress.next_week import NextWeek


def sheet_name(number: int, form: str) -> str:
    """week-01.pdf, without a name of any client."""
    return f"week-{number:02d}.{FORMATS[form].ending}"


def block_sheets(block: Block, formats: Sequence[str], coach: Coach = DEFAULT_COACH) -> dict[str, bytes]:
    """File name -> bytes of every week's sheets; raises SetwrightError while a clearance is missing."""
    return {
        sheet_name(number, form): written(form, handout)
        for number, handout in block_handouts(block, coach)
        for form in formats
    }


def next_week_sheets(
    block: Block, found: NextWeek, formats: Sequence[str], coach: Coach = DEFAULT_COACH
) -> dict[str, bytes]:
    """The same of one week, its cards with the loads from the log."""
    handout = week_handout(block, found.week, coach, card_loads(found.evaluated, found.targets))
    return {sheet_name(found.week.number, form): written(form, handout) for form in formats}
