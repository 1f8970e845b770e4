"""No idle day in efficiency."""

from __future__ import annotations

from setwright.solver.model.sheet import Expression, Sheet, combined, scaled


def session(sheet: Sheet, cell: int) -> tuple[Expression, int]:
    """A cell's half seconds with warm-up: an expression and a constant."""
    given = sheet.given[cell]
    seconds = combined(sheet.work[cell], {given: -2} if given is not None else {})
    return seconds, 2 * sheet.day(cell).warm_up * len(sheet.cells[cell].days)


def post(sheet: Sheet) -> None:
    terms = sheet.terms
    if terms.goal != "efficiency" or len(terms.days) < 2:
        return
    share = round(100 * terms.limit("day-share"))
    whole = sum(d.minutes for d in terms.days)
    used: Expression = {}
    constant = 0
    for cell in sheet.cells:
        seconds, fixed = session(sheet, cell.index)
        used = combined(used, seconds)
        constant += fixed
    for cell in sheet.cells:
        seconds, fixed = session(sheet, cell.index)
        minutes = sheet.day(cell.index).minutes * len(cell.days)
        row = combined(scaled(seconds, 100 * whole), scaled(used, -share * minutes))
        sheet.row("day-share", row, low=share * minutes * constant - 100 * whole * fixed)
