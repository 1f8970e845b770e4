"""The brief that a week implies which came without one: its own days, and the minutes that they take."""

from __future__ import annotations

import math
from collections.abc import Sequence
from typing import Any

from setwright.catalogue.entries import Catalogue
from setwright.catalogue.faults import Fault, UsageFault
from setwright.solver.brief.defaults import LIMITS
from setwright.solver.brief.parsed_brief import ParsedBrief, parse_brief
from setwright.solver.evaluation.clock import warm_up_seconds
from setwright.solver.evaluation.evaluated_week import EvaluatedWeek
from setwright.solver.evaluation.resolved_brief import ResolvedBrief
from setwright.solver.evaluation.week import Week
from setwright.solver.foreign.table_rows import TableLine
from setwright.solver.rulebook import RULES


def implied_brief(
    days: Sequence[str], lines: Sequence[TableLine], minutes: Sequence[int], catalogue: Catalogue, where: str
) -> ParsedBrief:
    """The brief of days with so many minutes each, with pairs and techniques where the lines have them.

    The days are weekdays, or sessions' numbers where they may be in any order. Raises UsageFault.
    """
    raw: dict[str, Any] = {"days": [{"minutes": m} for m in minutes]}
    if days[0].isdecimal():
        raw["any_order"] = True
    else:
        for day, weekday in zip(raw["days"], days, strict=True):
            day["weekday"] = weekday
    if any(line.pair for line in lines):
        raw["pairs"] = True
    if any(line.technique != "straight" for line in lines):
        raw["techniques"] = True
    return parse_brief(raw, catalogue, f"{where}: brief", tuple(RULES))


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
