"""A week gone on with, on screen: next loads, what was done of the plan, which lifts stand still."""

from __future__ import annotations

from setwright.solver.sheets.screen.progress.done_table import muscles_text, sessions_text
from setwright.solver.sheets.screen.progress.next_table import next_text
from setwright.solver.sheets.screen.progress.stall_words import drawn_maximum, stalls_text
from setwright.solver.uses.progress.next_week import NextWeek, maximum_courses


def next_week_text(found: NextWeek, width: int = 100) -> str:
    """The week's targets, then the last sessions and weekly sets beside the plan, then the stalls."""
    week, evaluated, unit = found.week, found.evaluated, found.evaluated.resolved.brief.client.unit
    parts = [f"Week {week.number}, {week.kind}, from {week.starts}\n", next_text(found.targets, evaluated, width)]
    if found.done:
        parts.append(sessions_text(found.done, evaluated, unit, width))
        parts.append(muscles_text(found.muscles, found.muscles_planned, width))
    if found.stalls:
        parts.append(stalls_text(found.stalls, evaluated.resolved.catalogue, unit, width))
    return "\n".join(parts)


def drawn_maxima(found: NextWeek) -> dict[str, str]:
    """Exercise -> SVG of its estimated maximum, for the lifts that were done twice or more."""
    resolved = found.evaluated.resolved
    exercises = resolved.catalogue.exercises
    return {
        exercise: drawn_maximum(course, exercises[exercise].name, resolved.brief.client.unit, f"maximum-{exercise}")
        for exercise, course in maximum_courses(found).items()
    }
