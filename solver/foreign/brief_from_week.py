"""The brief that a week implies which came without one: its own days, their themes and minutes, and its own kit."""

from __future__ import annotations

import math
from collections.abc import Sequence
from typing import Any, Final

from setwright.catalogue.entries import Catalogue, Exercise
from setwright.catalogue.faults import Fault, UsageFault
from setwright.solver.brief.defaults import LIMITS
from setwright.solver.brief.parsed_brief import ParsedBrief, parse_brief
from setwright.solver.brief.schema import Brief
from setwright.solver.evaluation.clock import warm_up_seconds
from setwright.solver.evaluation.evaluated_week import EvaluatedWeek
from setwright.solver.evaluation.resolved_brief import ResolvedBrief
from setwright.solver.evaluation.week import Week
from setwright.solver.foreign.table_rows import TableLine
from setwright.solver.rulebook import RULES
from setwright.solver.sheets.common.words import listed

NARROWEST_FIRST: Final = ("arms", "push", "pull", "lower", "upper")
"""The themes of a day, a theme before those that have all of its exercises."""
FEWEST_OF_A_THEME: Final = 3


def implied_brief(
    days: Sequence[str], lines: Sequence[TableLine], minutes: Sequence[int], catalogue: Catalogue, where: str
) -> ParsedBrief:
    """The brief of days with so many minutes each, with the lines' themes, kit, pairs and techniques.

    The days are weekdays, or sessions' numbers where they may be in any order. Raises UsageFault.
    """
    raw: dict[str, Any] = {"days": [{"minutes": m} for m in minutes]}
    if days[0].isdecimal():
        raw["any_order"] = True
    else:
        for day, weekday in zip(raw["days"], days, strict=True):
            day["weekday"] = weekday
    exercises = [(line.day, catalogue.exercises[line.exercise]) for line in lines]
    raw["equipment"] = least_kit([e for _, e in exercises], catalogue)
    if any(e.load == "dumbbell" for _, e in exercises):
        raw["owned"] = {"dumbbell_max": LIMITS["dumbbell_max"][1]}
    for day, name in zip(raw["days"], days, strict=True):
        theme = theme_of([e for on, e in exercises if on == name])
        if theme and len(days) > 1:
            day["focus"] = theme
    if any(line.pair for line in lines):
        raw["pairs"] = True
    if any(line.technique != "straight" for line in lines):
        raw["techniques"] = True
    return parse_brief(raw, catalogue, f"{where}: brief", tuple(RULES))


def least_kit(exercises: Sequence[Exercise], catalogue: Catalogue) -> str | list[str]:
    """The id of the kit of fewest items that has what all exercises need; where none has, the largest and the rest."""
    needed = {item for exercise in exercises for item in exercise.needs}
    able = [kit for kit in catalogue.kits.values() if needed <= set(kit.items)]
    if able:
        return min(able, key=lambda kit: len(kit.items)).id
    largest = max(catalogue.kits.values(), key=lambda kit: len(kit.items))
    return [largest.id, *sorted(needed - set(largest.items))]


def theme_of(exercises: Sequence[Exercise]) -> str | None:
    """The narrowest theme that all exercises of a day belong to; None for the whole body, or for very few of them."""
    if len(exercises) < FEWEST_OF_A_THEME:
        return None
    return next((theme for theme in NARROWEST_FIRST if all(theme in e.slot.focus for e in exercises)), None)


def fewest_minutes(resolved: ResolvedBrief, week: Week, where: str) -> list[int]:
    """The fewest whole minutes that hold each session with its full warm-up; raises UsageFault where none do."""
    evaluated = EvaluatedWeek(resolved, week)
    low, high = (round(end) for end in LIMITS["minutes"])
    found: list[int] = []
    faults = []
    for day in resolved.days:
        work, numbers = evaluated.work_seconds(day.index), resolved.curves.numbers
        able = [m for m in range(low, high + 1) if work + warm_up_seconds(m, resolved.goal, numbers) <= 60 * m]
        if not able:
            said = f"takes {math.ceil(work / 60)} min, at most {high} are read"
            faults.append(Fault(f"{where}: {day.name}", said, "is a rest in minutes?"))
        found += able[:1]
    if faults:
        raise UsageFault(faults)
    return found


def brief_words(brief: Brief, catalogue: Catalogue) -> str:
    """What the brief of a week that came without one was taken to be."""
    said = brief.equipment
    words = (said,) if isinstance(said, str) else said or ()
    kit = listed(catalogue.kits[w].name if w in catalogue.kits else catalogue.items[w].name.lower() for w in words)
    heavy = "" if brief.owned.dumbbell_max is None else ", with dumbbells as heavy as wanted"
    themes = [f"{day.weekday or place}: {day.focus}" for place, day in enumerate(brief.days, 1) if day.focus]
    focus = f", with the themes {listed(themes)}" if themes else ""
    return (
        f"brief: days and minutes were taken from the week{focus}; the kit is the smallest that has all it needs, "
        f"{kit}{heavy}; all else is by default. A brief given beside the table says otherwise"
    )
