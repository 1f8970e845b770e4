"""A session fits its minutes."""

from __future__ import annotations

from collections.abc import Iterator

from setwright.solver.evaluation.evaluated_week import EvaluatedWeek
from setwright.solver.evaluation.finding import Finding, Rule


def check(evaluated: EvaluatedWeek) -> Iterator[Finding]:
    for day in evaluated.resolved.days:
        seconds = evaluated.seconds(day.index)
        if evaluated.on[day.index] and seconds > day.limit:
            yield Finding("day-minutes", f"{day.name} takes {seconds} s of {day.limit} s")


RULE = Rule(
    id="day-minutes",
    kind="hard",
    sentence="A session with warm-up, ramp-up, rests and change-overs fits the day's minutes.",
    remedy="cut a set or a rest, or give the day more minutes",
    check=check,
)
