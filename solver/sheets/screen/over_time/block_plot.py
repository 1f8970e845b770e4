"""What a block's chart shows: every week, its total, and each lift's sets and load."""

from __future__ import annotations

from setwright.solver.sheets.charts.block import BlockCell, BlockColumn, block_chart
from setwright.solver.uses.blocks.block import Block, BlockWeek


def drawn_block(block: Block) -> str:
    """The block as SVG: a row for all sets, then one for each lift of the solved week, then those of weeks away."""
    columns = [BlockColumn(str(week.number), week.kind, week.kind != "build") for week in block.weeks]
    exercises = block.base.evaluated.resolved.catalogue.exercises
    names = dict.fromkeys(entry.exercise for entry in block.base_week.entries)
    for week in block.weeks:
        names |= dict.fromkeys(line.exercise.id for line in (week.evaluated.lines if week.evaluated else ()))
    rows = [("All lifts", [BlockCell(week.sets) for week in block.weeks])]
    rows += [(exercises[name].name, [_cell(week, name) for week in block.weeks]) for name in names]
    return block_chart(columns, rows)


def _cell(week: BlockWeek, exercise: str) -> BlockCell:
    """A lift's sets of all days of a week, and the heaviest load they are planned at."""
    if week.evaluated is None:
        return BlockCell(0)
    found = [
        (line.sets, target.load)
        for day, targets in zip(week.evaluated.on, week.targets, strict=True)
        for line, target in zip(day, targets, strict=True)
        if line.exercise.id == exercise
    ]
    loads = [load for _, load in found if load is not None]
    unit = week.evaluated.resolved.brief.client.unit
    return BlockCell(sum(sets for sets, _ in found), f"{max(loads):g} {unit}" if loads else "")
