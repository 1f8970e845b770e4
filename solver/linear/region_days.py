"""Which regions a day trains: variables that ramp-up, full sessions and themes share."""

from __future__ import annotations

from setwright.solver.linear.columns import REGIONS
from setwright.solver.linear.linear_model import Expression, Sheet, combined, scaled


def post_regions(sheet: Sheet) -> None:
    """Make each cell's region days, and where cells have themes their numbers of days."""
    if sheet.themed:
        post_themes(sheet)
    for cell in sheet.cells:
        for region in REGIONS:
            lifts = sheet.count(lambda e, r=region: e.multi_joint and e.region == r, cell.index)  # type: ignore[misc]
            if cell.regions is not None:
                days, _ = sheet.size(cell.index)
                if region in cell.regions:
                    sheet.regions[region, cell.index] = days
                    sheet.row("full-session", combined(lifts, scaled(days, -1)), low=0)
            elif lifts:
                sheet.regions[region, cell.index] = trained = trained_days(sheet, lifts, cell.index)
                if len(cell.days) == 1:
                    sheet.on_day[region, cell.days[0]] = trained


def trained_days(sheet: Sheet, lifts: Expression, cell: int) -> Expression:
    """The days of a cell with one of these lifts: no fewer than any slot's, no more than there are lifts."""
    trained = {sheet.variable(len(sheet.cells[cell].days)): 1}
    if sheet.terms.off("slot-once"):
        for j in lifts:
            sheet.row("day-minutes", combined({j: 1}, scaled(trained, -sheet.high[j])), high=0)
        return trained
    by_slot: dict[str, Expression] = {}
    for j in lifts:
        for atom in sheet.columns[j].atoms:
            by_slot.setdefault(sheet.exercise(atom.cls).slot.id, {})[j] = 1
    for slot in sorted(by_slot):
        sheet.row("day-minutes", combined(by_slot[slot], scaled(trained, -1)), high=0)
    sheet.row("day-minutes", combined(lifts, scaled(trained, -1)), low=0)
    return trained


def post_themes(sheet: Sheet) -> None:
    """Each day takes one theme; a cell's size is the number of its days that do."""
    chosen: dict[int, Expression] = {cell.index: {} for cell in sheet.cells}
    for day in sheet.terms.days:
        group = sheet.board.group_of[day.index]
        picks: Expression = {}
        for cell in sheet.cells:
            if cell.group == group:
                pick = sheet.variable(1)
                picks[pick] = 1
                chosen[cell.index][pick] = 1
                for region in cell.regions or ():
                    sheet.on_day.setdefault((region, day.index), {})[pick] = 1
        sheet.row("day-minutes", picks, low=1, high=1)
    for cell in sheet.cells:
        size = sheet.variable(len(cell.days))
        sheet.row("day-minutes", combined(chosen[cell.index], {size: -1}), low=0, high=0)
        sheet.days_in[cell.index] = {size: 1}
