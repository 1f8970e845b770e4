"""48 hours between two hard days for a muscle."""

from __future__ import annotations

from collections.abc import Iterator

from setwright.solver.evaluation.evaluated_week import WHOLE, EvaluatedWeek
from setwright.solver.evaluation.finding import Finding
from setwright.solver.linear.linear_model import LinearModel, combined
from setwright.solver.linear.rule import Rule
from setwright.solver.linear.weekly_sets import direct_sets_of, sets_of


def hard(evaluated: EvaluatedWeek, muscle: str, day: int) -> bool:
    """Whether a day counts as hard for a muscle."""
    direct = evaluated.direct_day_sets(muscle, day) > WHOLE * evaluated.resolved.limit("hard-days", "direct")
    return direct or evaluated.day_sets(muscle, day) > WHOLE * evaluated.resolved.limit("hard-days", "fractional")


def check(evaluated: EvaluatedWeek) -> Iterator[Finding]:
    """A finding for each muscle and each two consecutive days that are both hard for it."""
    for earlier, later in evaluated.resolved.adjacent:
        for muscle in evaluated.resolved.muscles:
            if hard(evaluated, muscle, earlier) and hard(evaluated, muscle, later):
                cost = 0 if evaluated.resolved.forced("hard-days") else evaluated.resolved.penalty("hard-days", 1)
                yield Finding("hard-days", cost, subject=muscle, days=(earlier, later))


def post(model: LinearModel) -> None:
    """Charge two consecutive hard days; exact where the model knows its days, silent where it does not."""
    if not model.daily:
        return
    resolved = model.resolved
    ends = (
        round(resolved.limit("hard-days", "direct") * WHOLE),
        round(resolved.limit("hard-days", "fractional") * WHOLE),
    )
    cap = round(resolved.day_cap * WHOLE)
    for earlier, later in resolved.adjacent:
        for muscle in resolved.muscles:
            parts = [(direct_sets_of(model, muscle, d), sets_of(model, muscle, d)) for d in (earlier, later)]
            if not all(every for _, every in parts):
                continue
            # `second` says which of the two days may be hard; a breach lets the later one be hard as well.
            second, breach = model.variable(1), model.violation("hard-days", 1, resolved.cost("hard-days"))
            for (direct, every), sign, constant in zip(parts, (1, -1), (0, 1), strict=True):
                for found, limit in ((direct, ends[0]), (every, ends[1])):
                    room = cap - limit
                    free = {breach: -room} if constant else {}
                    held = combined(found, {second: sign * -room}, free)
                    model.constrain("hard-days", held, high=limit + constant * room)


RULE = Rule(
    id="hard-days",
    kind="scored",
    sentence="A muscle should not get more than {direct:g} direct or {fractional:g} fractional sets on both of two consecutive days; a novice, or someone older, never does.",
    remedy="move its work a day, or cut one of the two",
    post=post,
    check=check,
    says="{subject} is trained hard on {days}",
)
