"""Heavy spine loads on consecutive days."""

from __future__ import annotations

from collections.abc import Iterator

from setwright.solver.evaluation.finding import Finding, Rule
from setwright.solver.evaluation.evaluated_week import View


def check(view: View) -> Iterator[Finding]:
    heavy = view.terms.limit("axial-consecutive", "axial")
    days = view.days_with(lambda x: x.exercise.axial >= heavy)
    for earlier, later in view.terms.adjacent:
        if earlier in days and later in days:
            text = f"{view.terms.days[earlier].name} and {view.terms.days[later].name} both load the spine"
            yield Finding("axial-consecutive", text, view.terms.charge("axial-consecutive", 1))


RULE = Rule(
    id="axial-consecutive",
    kind="scored",
    sentence="Lifts of axial load 2 or more on two consecutive days cost.",
    remedy="move the squat or the hinge a day",
    check=check,
)
