"""A brief in one sentence, as the head of what is printed about it."""

from __future__ import annotations

from setwright.solver.brief.schema import Brief
from setwright.solver.evaluation.resolved_brief import ResolvedBrief
from setwright.solver.sheets.common.words import counted, day_name, listed, muscle_name


def headline(resolved: ResolvedBrief, goal: bool = True) -> str:
    """The title and the client's code, then the brief's days, goal, experience, priorities, kit, rests and effort."""
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
    found += _of_days(resolved)
    if asked is not None:
        words = (asked,) if isinstance(asked, str) else asked
        names = (catalogue.kits[w].name if w in catalogue.kits else catalogue.items[w].name.lower() for w in words)
        found.append(listed(names))
    return found + asked_of_sets(resolved.brief)


def _of_days(resolved: ResolvedBrief) -> list[str]:
    """The muscles and groups that days are to have: chest on Monday and Thursday."""
    catalogue, days = resolved.catalogue, resolved.days
    names = dict.fromkeys(name for day in days for name, _ in day.trained)
    entries = {name: catalogue.muscle_or_group(name) for name in names}
    return [
        f"{entry.name.lower()} on {listed(day_name(day) for day in days if name in dict(day.trained))}"
        for name, entry in entries.items()
    ]


def asked_of_sets(brief: Brief) -> list[str]:
    """What a brief asks of every set: its rest and the repetitions in reserve."""
    ends = (("at least", brief.rest_at_least), ("at most", brief.rest_at_most))
    rests = listed(f"{end} {seconds} s" for end, seconds in ends if seconds is not None)
    found = [f"rests of {rests}"] if rests else []
    return [*found, *([f"at least {brief.rir_at_least} RIR"] if brief.rir_at_least else [])]


def _days(resolved: ResolvedBrief) -> str:
    """3 days x 40 min, or 2 days x 30, 60 min."""
    minutes = [day.minutes for day in resolved.days]
    each = f"{minutes[0]}" if len(set(minutes)) == 1 else ", ".join(map(str, minutes))
    return f"{counted(len(minutes), 'day')} x {each} min"
