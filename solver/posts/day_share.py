"""No idle day in efficiency."""

from __future__ import annotations

from setwright.solver.linear.linear_model import Expression, Sheet, combined, scaled


def worked(sheet: Sheet, cell: int) -> Expression:
    """A cell's half seconds, less the warm-up it gives up."""
    given = sheet.given[cell]
    return combined(sheet.work[cell], {given: -2} if given is not None else {})


def session(sheet: Sheet, group: int) -> Expression:
    """The half seconds of a group of like days, less their warm-ups as planned."""
    found: Expression = {}
    for cell in sheet.cells:
        if cell.group == group:
            found = combined(found, worked(sheet, cell.index))
    return found


def parts(sheet: Sheet) -> list[tuple[Expression, int, int]]:
    """(half seconds, planned half seconds of warm-up, minutes) of each day, or of each group of like days."""
    terms = sheet.terms
    if sheet.daily:
        return [
            (
                worked(sheet, c.index),
                2 * sheet.day(c.index).warm_up,
                sheet.day(c.index).minutes,
            )
            for c in sheet.cells
        ]
    return [
        (session(sheet, g), sum(2 * terms.days[d].warm_up for d in days), sum(terms.days[d].minutes for d in days))
        for g, days in enumerate(sheet.board.groups)
    ]


def post(sheet: Sheet) -> None:
    terms = sheet.terms
    if terms.goal != "efficiency" or len(terms.days) < 2:
        return
    share = round(100 * terms.limit("day-share"))
    whole = sum(d.minutes for d in terms.days)
    listed = parts(sheet)
    used = combined(*(seconds for seconds, _, _ in listed))
    constant = sum(fixed for _, fixed, _ in listed)
    for seconds, fixed, minutes in listed:
        row = combined(scaled(seconds, 100 * whole), scaled(used, -share * minutes))
        sheet.row("day-share", row, low=share * minutes * constant - 100 * whole * fixed)
