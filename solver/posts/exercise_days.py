"""Days a week for one exercise: how many members of a class are used, and which on a third day."""

from __future__ import annotations

from setwright.solver.linear.linear_model import Sheet, combined


def post(sheet: Sheet) -> None:
    terms = sheet.terms
    most = round(terms.limit("third-day", "most"))
    free = round(terms.limit("third-day", "days"))
    free_days = terms.off("exercise-days")
    for cls in sorted({a.cls for column in sheet.columns for a in column.atoms}):
        members = len(sheet.board.classes[cls].members)
        once = sheet.exercise(cls).once_a_week
        sheet.distinct[cls] = used = sheet.variable(members)
        uses = sheet.uses(cls)
        sheet.row("exercise-days", combined({used: 1}, dict.fromkeys(uses, -1)), high=0)
        if once and not free_days:
            sheet.row("exercise-days", combined(uses, {used: -1}), high=0)
        else:
            beyond = len(terms.days) - free if free_days else most - free
            sheet.third[cls] = third = sheet.variable(max(0, members * beyond))
            sheet.row("exercise-days", combined(uses, {used: -free, third: -1}), high=0)
            sheet.row("exercise-days", {third: 1, used: -max(0, beyond)}, high=0)
        for cell in sheet.cells:
            here = {j: v for j, v in uses.items() if sheet.columns[j].cell == cell.index}
            if here and len(cell.days) < (1 if once else free):
                sheet.row("exercise-days", combined(here, {used: -len(cell.days)}), high=0)
