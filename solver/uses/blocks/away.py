"""Weeks on other days, in other places or of other minutes: their briefs, and the base week's days to stay near to."""

from __future__ import annotations

import math
from collections.abc import Sequence
from datetime import date, timedelta
from typing import Any

from setwright.catalogue.entries import Catalogue
from setwright.solver.brief.defaults import SPREAD, WEEKDAYS
from setwright.solver.brief.parsed_brief import ParsedBrief, parse_brief, raw_of
from setwright.solver.brief.schema import Brief, DayAsk, MuscleAsk, Owned, Weekday
from setwright.solver.evaluation.resolving import KG_IN_LB
from setwright.solver.evaluation.week import Week
from setwright.solver.rulebook import RULES
from setwright.solver.uses.blocks.ask import Sessions, Short, Span, Travel
from setwright.solver.uses.blocks.calendar import CalendarWeek, session_dates


def away_brief(base: ParsedBrief, week: CalendarWeek, rir_more: int, catalogue: Catalogue) -> ParsedBrief:
    """The brief of a week that travel, other sessions or days off change; the base's exact wishes are left out.

    Pins, movements that must be there, exact lower ends and rules made hard are asked of the usual place and days.
    """
    brief, travels = base.brief, _travels(week)
    dated = _dated_days(brief, week)
    update: dict[str, Any] = {
        "days": tuple(day for _, day in dated),
        "pins": (),
        "must": (),
        "rir_more": rir_more or None,
        "muscles": {name: _without_lower_end(ask) for name, ask in brief.muscles.items()},
        "rules": {rule: said for rule, said in brief.rules.items() if said != "hard"},
    }
    if travels:
        wholly = all(any(span.holds(on) for span in travels) for on, _ in dated)
        update |= _owned(brief, wholly, travels, catalogue)
    return parse_brief(raw_of(brief.model_copy(update=update)), catalogue, f"week {week.number}", tuple(RULES))


def nearby_days(base: Brief, days: Week, brief: Brief) -> Week:
    """The base week's session for each day of the brief: that of its weekday, or none; in any order the first."""
    if base.any_order:
        return Week((*days.days, *((),) * len(brief.days))[: len(brief.days)])
    on = {day.weekday: entries for day, entries in zip(base.days, days.days, strict=True)}
    return Week(tuple(on.get(day.weekday, ()) for day in brief.days))


def _without_lower_end(ask: MuscleAsk) -> MuscleAsk:
    return ask.model_copy(update={"at_least": None, "days_at_least": None})


def _dated_days(brief: Brief, week: CalendarWeek) -> list[tuple[date, DayAsk]]:
    """The week's sessions with their dates: those as usual, those away with the kit there, those of other minutes."""
    assert week.starts is not None
    dated = list(zip(session_dates(brief, week.starts), brief.days, strict=True))
    found = [(on, day) for on, day in dated if not any(span.holds(on) for span in week.spans)]
    for span in week.spans:
        within = [(on, day) for on, day in dated if span.holds(on)]
        if isinstance(span, Short | Travel) and span.sessions is not None:
            room = max(span.sessions.count, len(dated)) - len(found)
            found += _other_sessions(brief, within, span.sessions, _held_days(span, week.starts), room)
        elif isinstance(span, Travel):
            found += within
    travels = _travels(week)
    return [(on, _with_kit(day, on, travels)) for on, day in sorted(found, key=lambda row: row[0])]


def _travels(week: CalendarWeek) -> list[Travel]:
    return [span for span in week.spans if isinstance(span, Travel)]


def _held_days(span: Span, starts: date) -> list[date]:
    return [day for day in (starts + timedelta(days=place) for place in range(7)) if span.holds(day)]


def _other_sessions(
    brief: Brief, within: Sequence[tuple[date, DayAsk]], asked: Sessions, days: list[date], room: int
) -> list[tuple[date, DayAsk]]:
    """The sessions asked for in the days held, on usual days where that can be; a part of a week has its part of them.

    They are rounded up, but to no more than the week has room for.
    As many as usual keep their themes.
    """
    count = min(math.ceil(asked.count * len(days) / 7), len(days), max(room, 0))
    if count == len(within):
        return [(on, day.model_copy(update={"minutes": asked.minutes})) for on, day in within]
    usual = [on for on, _ in within]
    chosen = _spread(usual, count) if count < len(usual) else _spread_with(days, usual, count)
    kits = {on: day.equipment for on, day in within}
    return [(on, DayAsk(weekday=_weekday(brief, on), minutes=asked.minutes, equipment=kits.get(on))) for on in chosen]


def _spread(days: list[date], count: int) -> list[date]:
    """So many of the days, evenly."""
    return [days[math.floor((place + 0.5) * len(days) / count)] for place in range(count)]


def _spread_with(days: list[date], usual: list[date], count: int) -> list[date]:
    """So many of the days: in a whole week the usual weekdays for the count, else evenly."""
    if len(days) == 7:
        return [day for day in days if WEEKDAYS[day.weekday()] in SPREAD[count]]
    return _spread(days, count)


def _weekday(brief: Brief, on: date) -> Weekday | None:
    return None if brief.any_order else WEEKDAYS[on.weekday()]


def _with_kit(day: DayAsk, on: date, travels: Sequence[Travel]) -> DayAsk:
    """The day with the kit that is at hand on its date."""
    kit = next((span.kit for span in travels if span.holds(on)), None)
    if kit is None:
        return day
    return day.model_copy(update={"equipment": kit[0] if len(kit) == 1 else kit})


def _owned(brief: Brief, wholly: bool, travels: list[Travel], catalogue: Catalogue) -> dict[str, Any]:
    """What the client owns does not travel: in a week wholly away none of it is there, else the lighter dumbbells."""
    owned = brief.owned
    if wholly:
        return {"owned": Owned(busy=owned.busy), "without": ()}
    kits = [catalogue.kits[word] for span in travels for word in span.kit if word in catalogue.kits]
    in_unit = 1.0 if brief.client.unit == "kg" else KG_IN_LB
    there = [kit.dumbbell_max / in_unit for kit in kits if kit.dumbbell_max is not None]
    if owned.dumbbell_max is None or not there:
        return {}
    return {"owned": owned.model_copy(update={"dumbbell_max": min(owned.dumbbell_max, *there)})}
