"""What the brief pins."""

from __future__ import annotations

from setwright.solver.brief.schema import Pin
from setwright.solver.linear.columns import Column
from setwright.solver.linear.linear_model import Sheet
from setwright.solver.rules.pinned import pin_words


def meets(sheet: Sheet, pin: Pin, column: Column) -> bool:
    """Whether a column can be what a pin asks for."""
    days = sheet.cells[column.cell].days
    if pin.day is not None and not any(sheet.terms.days[d].weekday == pin.day for d in days):
        return False
    ids = [sheet.exercise(a.cls).id for a in column.atoms]
    if pin.exercise not in ids:
        return False
    atom = column.atoms[ids.index(pin.exercise)]
    if pin.sets not in (None, atom.option.sets):
        return False
    if pin.pair_with is None:
        return True
    return pin.pair_with in ids if len(ids) == 2 else atom.option.paired


def post(sheet: Sheet) -> None:
    for pin in sheet.terms.brief.pins:
        found = {j: 1 for j, column in enumerate(sheet.columns) if meets(sheet, pin, column)}
        sheet.demand("pinned", pin_words(pin), found, 1)
