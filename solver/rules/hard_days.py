"""48 hours between two hard days for a muscle."""

from __future__ import annotations

from collections.abc import Iterator

from setwright.solver.evaluation.finding import Finding, Rule
from setwright.solver.evaluation.evaluated_week import WHOLE, View


def hard(view: View, muscle: str, day: int) -> bool:
    """Whether a day counts as hard for a muscle."""
    direct = view.direct_day_sets(muscle, day) > WHOLE * view.terms.limit("hard-days")
    return direct or view.day_sets(muscle, day) > WHOLE * view.terms.limit("hard-days", "fractional")


def check(view: View) -> Iterator[Finding]:
    for earlier, later in view.terms.adjacent:
        for muscle in view.terms.muscles:
            if hard(view, muscle, earlier) and hard(view, muscle, later):
                days = f"{view.terms.days[earlier].name} and {view.terms.days[later].name}"
                yield Finding("hard-days", f"{muscle} is trained hard on {days}")


RULE = Rule(
    id="hard-days",
    kind="hard",
    sentence="Two consecutive days do not both give a muscle more than 4 direct or 6 fractional sets.",
    remedy="move its work a day, or cut one of the two",
    check=check,
)
