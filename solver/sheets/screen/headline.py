"""A brief in one sentence, as the head of what is printed about it."""

from __future__ import annotations

from setwright.solver.evaluation.resolved_brief import ResolvedBrief
from setwright.solver.sheets.common.words import counted, listed, muscle_name


def headline(resolved: ResolvedBrief, goal: bool = True) -> str:
    """The title and the client's code, then the brief's days, goal, experience, priorities and kit."""
    brief = resolved.brief
    code = brief.client.code
    name = f"{brief.title} ({code})" if brief.title and code else brief.title or code
    said = "; ".join(brief_parts(resolved, goal=goal))
    return f"{name}: {said}" if name else said


def brief_parts(resolved: ResolvedBrief, days: bool = True, goal: bool = True) -> list[str]:
    """What a brief asks for, part by part, without the days or the goal where these are said elsewhere."""
    catalogue, asked = resolved.catalogue, resolved.brief.equipment
    found = [_days(resolved)] if days else []
    found += [f"goal {resolved.goal}"] if goal else []
    found.append(resolved.brief.client.experience)
    if resolved.priorities:
        found.append(f"priority: {listed(muscle_name(catalogue, m) for m in resolved.priorities)}")
    if asked is not None:
        words = (asked,) if isinstance(asked, str) else asked
        names = (catalogue.kits[w].name if w in catalogue.kits else catalogue.items[w].name.lower() for w in words)
        found.append(listed(names))
    return found


def _days(resolved: ResolvedBrief) -> str:
    """3 days x 40 min, or 2 days x 30, 60 min."""
    minutes = [day.minutes for day in resolved.days]
    each = f"{minutes[0]}" if len(set(minutes)) == 1 else ", ".join(map(str, minutes))
    return f"{counted(len(minutes), 'day')} x {each} min"
