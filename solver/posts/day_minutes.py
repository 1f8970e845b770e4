"""A session's seconds within its minutes, ramp-up sets by region included."""

from __future__ import annotations

from setwright.solver.linear.columns import REGIONS
from setwright.solver.linear.linear_model import Expression, Sheet, combined, scaled
from setwright.solver.linear.region_days import trained_days
from setwright.solver.evaluation.resolved_brief import Terms
from setwright.solver.evaluation.evaluated_week import ramp_levels


def warm_up_cost(terms: Terms) -> float:
    return 0.0 if terms.off("warm-up-given") else terms.cost("warm-up-given")


def ramp_up(sheet: Sheet, region: str, cell: int) -> Expression:
    """The ramp-up seconds of a region: once a day what its heaviest lift asks for, more for a second heavy barbell."""
    terms = sheet.terms
    trained = sheet.regions.get((region, cell), {})
    if not trained:
        return {}
    days = len(sheet.cells[cell].days)
    seconds: Expression = {}
    before, lifts = 0, sheet.count(lambda e: e.multi_joint and e.region == region, cell)
    for wanted, asked in ramp_levels(terms, region, sheet.day(cell)):
        some = sheet.count(lambda e, w=wanted: e.multi_joint and e.region == region and w(e), cell)
        if some:
            due = trained if some == lifts else trained_days(sheet, some, cell)
            seconds = combined(seconds, scaled(due, asked - before))
            before = asked
    heavy = sheet.count(lambda e: e.main_lift and e.barbell and e.region == region, cell)
    if heavy:
        second = sheet.variable(3 * days)
        sheet.row("day-minutes", combined(heavy, scaled(trained, -1), {second: -1}), high=0)
        seconds = combined(seconds, {second: round(terms.number("ramp-second-seconds"))})
    return seconds


def post(sheet: Sheet) -> None:
    terms = sheet.terms
    for cell in sheet.cells:
        seconds = sheet.total(lambda e, o: o.half_seconds, cell.index)
        for region in REGIONS:
            seconds = combined(seconds, scaled(ramp_up(sheet, region, cell.index), 2))
        sheet.work[cell.index] = seconds
        day = sheet.day(cell.index)
        room = 2 * (day.limit - day.warm_up)
        if room < 0:
            # A day shorter than its warm-up holds nothing unless the warm-up gives way; an empty day is sound.
            room = max(0, room + 2 * day.warm_up_give)
        elif day.warm_up_give and not terms.forced("warm-up-given"):
            given = sheet.variable(day.warm_up_give * len(cell.days), -warm_up_cost(terms))
            sheet.given[cell.index] = given
            sheet.at_most_a_day("warm-up-given", {given: 1}, day.warm_up_give, cell.index)
            seconds = combined(seconds, {given: -2})
        if not terms.off("day-minutes"):
            sheet.at_most_a_day("day-minutes", seconds, room, cell.index)
