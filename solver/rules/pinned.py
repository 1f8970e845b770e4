"""What the brief pins."""

from __future__ import annotations

from collections.abc import Iterator

from setwright.solver.brief.schema import Pin
from setwright.solver.evaluation.evaluated_week import EvaluatedWeek, Line
from setwright.solver.evaluation.finding import Finding, Rule, some_sets


def meets(pin: Pin, line: Line) -> bool:
    """Whether a line is what a pin asks for."""
    return (
        line.exercise.id == pin.exercise
        and pin.day in (None, line.day.weekday)
        and pin.sets in (None, line.sets)
        and pin.pair_with in (None, line.entry.partner)
    )


def pin_words(pin: Pin) -> str:
    """A pin in words."""
    parts = [pin.exercise]
    if pin.day:
        parts.append(f"on {pin.day}")
    if pin.sets:
        parts.append(f"for {some_sets(pin.sets)}")
    if pin.pair_with:
        parts.append(f"paired with {pin.pair_with}")
    return "pin " + " ".join(parts)


def check(evaluated: EvaluatedWeek) -> Iterator[Finding]:
    for pin in evaluated.resolved.brief.pins:
        if not any(meets(pin, line) for line in evaluated.lines):
            yield Finding("pinned", f"{pin_words(pin)} is not met")


RULE = Rule(
    id="pinned",
    kind="hard",
    sentence="A pinned exercise stands in the week, on the day and with the sets and partner it says.",
    remedy="drop the pin, or give its day room",
    check=check,
)
