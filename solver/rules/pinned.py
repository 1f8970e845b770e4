"""What the brief pins."""

from __future__ import annotations

from collections.abc import Iterator

from setwright.solver.brief.schema import Pin
from setwright.solver.evaluation.evaluated_week import EvaluatedWeek, Line
from setwright.solver.evaluation.finding import Finding, Wish
from setwright.solver.linear.columns import Column
from setwright.solver.linear.linear_model import LinearModel
from setwright.solver.linear.rule import Rule


def wish_of(pin: Pin) -> Wish:
    """A pin as a wish that a week must meet."""
    return Wish("pinned", pin.exercise, float(pin.sets or 0), pin.day or "", pin.pair_with or "")


def meets(pin: Pin, line: Line) -> bool:
    """Whether a line is what a pin asks for."""
    return (
        line.exercise.id == pin.exercise
        and pin.day in (None, line.day.weekday)
        and pin.sets in (None, line.sets)
        and pin.pair_with in (None, line.entry.partner)
    )


def check(evaluated: EvaluatedWeek) -> Iterator[Finding]:
    """A finding for each pin that no line meets; its days are those of the pin's weekday."""
    for pin in evaluated.resolved.brief.pins:
        if not any(meets(pin, line) for line in evaluated.lines):
            days = tuple(day.index for day in evaluated.resolved.days if pin.day and day.weekday == pin.day)
            partner = (pin.pair_with,) if pin.pair_with else ()
            yield Finding("pinned", limit=pin.sets, days=days, exercise=pin.exercise, others=partner)


def post(model: LinearModel) -> None:
    """Ask for one column that meets each pin."""
    for pin in model.resolved.brief.pins:
        found = {j: 1 for j, column in enumerate(model.columns) if _can_meet(model, pin, column)}
        model.demand(wish_of(pin), found, 1)


def _can_meet(model: LinearModel, pin: Pin, column: Column) -> bool:
    """Whether a column can be what a pin asks for."""
    days = model.groups[column.group].days
    if pin.day is not None and not any(model.resolved.days[d].weekday == pin.day for d in days):
        return False
    ids = [model.exercise(a.cls).id for a in column.assignments]
    if pin.exercise not in ids:
        return False
    assignment = column.assignments[ids.index(pin.exercise)]
    if pin.sets not in (None, assignment.prescription.sets):
        return False
    if pin.pair_with is None:
        return True
    return pin.pair_with in ids if len(ids) == 2 else assignment.prescription.paired


RULE = Rule(
    id="pinned",
    kind="hard",
    sentence="A pinned exercise is in the week, on the day and with the sets and partner that the brief says.",
    remedy="drop the pin, or give its day room",
    post=post,
    check=check,
    says="the pin on {exercise} is not met",
)
