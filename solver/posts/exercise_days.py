"""Days a week for one exercise: how many members of a class are used, and which on a third day."""

from __future__ import annotations

from setwright.solver.linear.linear_model import LinearModel, combined


def post(model: LinearModel) -> None:
    resolved = model.resolved
    most = round(resolved.limit("third-day", "most"))
    free = round(resolved.limit("third-day", "days"))
    free_days = resolved.off("exercise-days")
    for cls in sorted({a.cls for column in model.columns for a in column.assignments}):
        members = len(model.instance.classes[cls].members)
        once = model.exercise(cls).once_a_week
        model.distinct[cls] = used = model.variable(members)
        uses = model.uses(cls)
        model.constrain("exercise-days", combined({used: 1}, dict.fromkeys(uses, -1)), high=0)
        if once and not free_days:
            model.constrain("exercise-days", combined(uses, {used: -1}), high=0)
        else:
            beyond = len(resolved.days) - free if free_days else most - free
            model.third[cls] = third = model.variable(max(0, members * beyond))
            model.constrain("exercise-days", combined(uses, {used: -free, third: -1}), high=0)
            model.constrain("exercise-days", {third: 1, used: -max(0, beyond)}, high=0)
        for group in model.groups:
            here = {j: v for j, v in uses.items() if model.columns[j].group == group.index}
            if here and len(group.days) < (1 if once else free):
                model.constrain("exercise-days", combined(here, {used: -len(group.days)}), high=0)
