"""Why this week: three true sentences for the client, from the week as it is evaluated."""

from __future__ import annotations

from collections.abc import Mapping
from types import MappingProxyType
from typing import Final

from setwright.solver.evaluation.evaluated_week import WHOLE, EvaluatedWeek
from setwright.solver.sheets.common.words import counted, listed, whole_minutes

MOST_NAMED: Final = 4

GIVEN_UP: Final[Mapping[str, str]] = MappingProxyType(
    {
        "warm-up-given": "the general warm-up is a little shorter than usual on a full day",
        "seventh": "a short day holds a seventh exercise",
        "muscle-day-cram": "one day holds more work for a single muscle than is usual",
        "day-sets": "one day is longer in sets than is usual",
        "pair-walk": "two exercises done in turn stand at two places",
        "band-low": "fewer weekly sets than aimed for{below}",
        "band-high": "more weekly sets than aimed for{above}, as a helper in other lifts",
        "priority-days": "a muscle that comes first is trained directly on one day only",
        "hold-days": "a muscle that is only held is trained directly on one day",
        "priority-variety": "a muscle that comes first has few different exercises",
        "priority-isolation": "a muscle that comes first gets most of its work from lifts that it shares with others",
        "disliked": "an exercise that you like less stands in the week",
        "coverage": "one kind of lift that a full week would have is missing",
        "direct-work": "one muscle is trained only as a helper in other lifts",
        "knee-flexion": "there is no leg curl",
        "flat-press": "there is no flat press",
        "knee-extension": "there is no leg extension",
        "deadlift": "there is no deadlift",
        "full-session": "one session leaves out the push, the pull or the legs",
        "short-session": "one session is short for the day it is on",
        "main-lift": "one session has no heavy free-weight lift to build on",
        "region-main-lift": "one movement or part of the body has no heavy free-weight lift",
        "theme": "days mix parts of the body more than is usual in a week of so many days",
        "region-days": "one part of the body is trained on one day only",
        "fourth-region-day": "one part of the body is trained on many days",
        "region-consecutive": "one part of the body is trained on two days in a row",
        "hinge-over-knee": "hip lifts stand on more days than squats and leg presses",
        "pull-push": "there is a little more pushing than pulling",
        "flat-overhead": "there is a little more overhead pressing than other pressing",
        "hard-days": "a muscle is trained hard on two days in a row",
        "hinge-and-row": "a day has a hip lift and a row that both load the lower back",
        "split-squat-second": "split squats stand where a squat or leg press would",
        "axial-consecutive": "two days in a row load the back with heavy lifts",
        "third-day": "one exercise returns on a third day",
        "week-sets": "the week holds more sets than is usual for your experience",
        "second-choice": "some exercises are the second choice of their kind",
        "loadable": "a lift by body weight stands where one with a weight would",
        "token-sets": "some of the big lifts get two sets where three are usual",
        "fourth-set": "some small lifts get a fourth set",
        "fifth-set": "some lifts get a fifth set",
        "liked": "fewer of the exercises that you like fitted in",
    }
)
"""Scored rule -> what missing it means, as the end of a sentence; `{below}` and `{above}` name muscles."""


def why_this_week(evaluated: EvaluatedWeek, costs: Mapping[str, float], names: Mapping[str, str]) -> tuple[str, ...]:
    """Three sentences: what comes first, what the minutes hold, and what was given up at the largest cost.

    `costs` holds each rule's cost as the week was planned, in index points; `names` the muscles' names in a sentence.
    """
    first, minutes = _first_reason(evaluated, names), _minutes_reason(evaluated, names)
    return tuple(_capital(sentence) for sentence in (first, minutes, _given_up_reason(evaluated, costs, names)))


def _capital(sentence: str) -> str:
    return sentence[:1].upper() + sentence[1:]


def _sets_of(evaluated: EvaluatedWeek, muscle: str) -> str:
    return f"{evaluated.weekly_sets(muscle) / WHOLE:.2f}".rstrip("0").rstrip(".")


def _first_reason(evaluated: EvaluatedWeek, names: Mapping[str, str]) -> str:
    """The weekly sets and days of the priority muscles, or of the most and the least trained ones."""
    wanted = evaluated.resolved.priorities
    if wanted:
        many = len(wanted) > MOST_NAMED
        said = listed(f"{names[m]} {_dose(evaluated, m)}" for m in wanted[:MOST_NAMED])
        more = f", and {len(wanted) - MOST_NAMED} more" if many else ""
        return f"First come the muscles you asked for: {said}{more}."
    sought = [m.id for m in evaluated.resolved.muscles.values() if m.weight]
    if not sought:
        return "No muscle was asked for before another."
    most = max(sought, key=evaluated.weekly_sets)
    least = min(sought, key=evaluated.weekly_sets)
    if evaluated.weekly_sets(most) == evaluated.weekly_sets(least):
        return f"No muscle was asked for before another; each gets {_sets_of(evaluated, most)} weekly sets."
    ends = f"most for {names[most]} ({_sets_of(evaluated, most)} weekly sets), least for {names[least]}"
    return f"No muscle was asked for before another, so the week is shared out: {ends} ({_sets_of(evaluated, least)})."


def _dose(evaluated: EvaluatedWeek, muscle: str) -> str:
    """10 weekly sets on 3 days."""
    days = evaluated.direct_days(muscle)
    on = f" on {counted(days, 'day')}" if days else ", as a helper in other lifts"
    return f"with {_sets_of(evaluated, muscle)} weekly sets{on}"


def _minutes_reason(evaluated: EvaluatedWeek, names: Mapping[str, str]) -> str:
    """Minutes, working sets, and which sought muscles the minutes leave below their band."""
    busy = [day.index for day in evaluated.resolved.days if evaluated.on[day.index]]
    minutes = sum(whole_minutes(evaluated.seconds(day)) for day in busy)
    sets = sum(line.sets for line in evaluated.lines)
    given = sum(day.minutes for day in evaluated.resolved.days)
    used = f"{minutes} of your {given}" if minutes < given else f"Your {minutes}"
    in_all = f"{used} minutes a week hold {sets} working sets in {len(busy)} session{'s' * (len(busy) != 1)}"
    aimed = [m for m in evaluated.resolved.muscles.values() if m.weight and m.low > 0]
    low = below(evaluated)
    if not aimed:
        return f"{in_all}."
    if not low:
        return f"{in_all}, enough to bring each of the {len(aimed)} muscles aimed at to its weekly sets."
    reached = f"{len(aimed) - len(low)} of the {len(aimed)} muscles aimed at reach their weekly sets"
    shown = listed(names[m] for m in low) if len(low) <= MOST_NAMED else f"the other {len(low)}"
    return f"{in_all}: {reached}, short of them: {shown}."


def below(evaluated: EvaluatedWeek) -> list[str]:
    """The sought muscles below the lower end of their band, by id."""
    return [m.id for m in evaluated.below_band]


def above(evaluated: EvaluatedWeek) -> list[str]:
    """The muscles above the upper end of their band."""
    muscles = evaluated.resolved.muscles.values()
    return [m.id for m in muscles if evaluated.weekly_sets(m.id) > round(m.high * WHOLE)]


def _given_up_reason(evaluated: EvaluatedWeek, costs: Mapping[str, float], names: Mapping[str, str]) -> str:
    """The scored rule whose misses cost the week most, in plain words."""
    charged = {rule: cost for rule, cost in costs.items() if rule in GIVEN_UP and cost > 0}
    if not charged:
        return "Nothing that a good week should have was given up for it."
    rule = max(sorted(charged), key=lambda r: charged[r])
    said = GIVEN_UP[rule].format(below=_named(below(evaluated), names), above=_named(above(evaluated), names))
    return f"The largest thing given up for it: {said}."


def _named(muscles: list[str], names: Mapping[str, str]) -> str:
    """Muscles in brackets, or their number, or nothing."""
    if not muscles:
        return ""
    return f" ({listed(names[m] for m in muscles) if len(muscles) <= MOST_NAMED else f'{len(muscles)} muscles'})"
