"""Rules that hold a day's sum of something within a number: forbidden above it, or at a cost for each unit above."""

from __future__ import annotations

from collections.abc import Callable, Iterator
from dataclasses import dataclass
from functools import partial

from setwright.catalogue.entries import Exercise
from setwright.solver.evaluation.evaluated_week import EvaluatedWeek
from setwright.solver.evaluation.finding import Finding, Kind
from setwright.solver.evaluation.prescriptions import Prescription
from setwright.solver.evaluation.resolved_brief import ResolvedBrief
from setwright.solver.evaluation.resolved_day import ResolvedDay
from setwright.solver.linear.linear_model import LinearModel, combined
from setwright.solver.linear.rule import Rule


@dataclass(frozen=True)
class DailyCap:
    """What one line adds to a day's sum, the most the sum may be, and how far a scored one may be passed at all."""

    rule: str
    amount: Callable[[Exercise, Prescription], int]
    most: Callable[[ResolvedBrief, ResolvedDay], float]
    applies: Callable[[ResolvedBrief, ResolvedDay], bool] = lambda resolved, day: True
    room: int = 0
    """The most units above in a day that the model can hold; 0 for a rule that forbids."""


def _by_length(rule: str, resolved: ResolvedBrief, day: ResolvedDay) -> float:
    """The most of something that a day holds: less for a novice, more on a long day."""
    if resolved.experience == "novice":
        return resolved.limit(rule, "novice")
    long = day.minutes > resolved.limit(rule, "long-day-minutes")
    return resolved.limit(rule, "long-day" if long else None)


def _most_techniques(resolved: ResolvedBrief, day: ResolvedDay) -> float:
    return resolved.limit("technique-cap", "efficiency" if resolved.goal == "efficiency" else None)


CAPS = {
    cap.rule: cap
    for cap in (
        DailyCap("exercise-count", lambda e, p: 1, partial(_by_length, "exercise-count")),
        DailyCap(
            "seventh",
            lambda e, p: 1,
            lambda resolved, day: resolved.limit("seventh", "exercises"),
            lambda resolved, day: day.minutes <= resolved.limit("seventh", "minutes"),
            room=4,
        ),
        DailyCap(
            "high-fatigue-sets",
            lambda e, p: p.sets if e.main_lift else 0,
            partial(_by_length, "high-fatigue-sets"),
        ),
        DailyCap("axial-load", lambda e, p: p.sets * e.axial, lambda resolved, day: resolved.limit("axial-load")),
        DailyCap("technique-cap", lambda e, p: 1 if p.technique != "straight" else 0, _most_techniques),
        DailyCap(
            "day-sets",
            lambda e, p: p.sets,
            lambda resolved, day: resolved.limit("day-sets", resolved.experience),
            room=60,
        ),
    )
}


def check(cap: DailyCap, evaluated: EvaluatedWeek) -> Iterator[Finding]:
    """A finding for each day whose sum is above the cap."""
    resolved = evaluated.resolved
    for day, lines in zip(resolved.days, evaluated.on, strict=True):
        if not cap.applies(resolved, day):
            continue
        total, most = sum(cap.amount(x.exercise, x.prescription) for x in lines), round(cap.most(resolved, day))
        if total > most:
            cost = resolved.penalty(cap.rule, total - most) if cap.room else 0
            yield Finding(cap.rule, cost, amount=total, limit=most, days=(day.index,))


def post(cap: DailyCap, model: LinearModel) -> None:
    """Hold the sum within the cap on each day, with a variable for the units above where they only cost."""
    resolved = model.resolved
    for group in model.groups:
        day = model.day(group.index)
        if not cap.applies(resolved, day):
            continue
        above = {}
        if cap.room:
            above = {model.violation(cap.rule, cap.room * len(group.days), resolved.cost(cap.rule)): -1}
        found = combined(model.total(cap.amount, group.index), above)
        model.at_most_a_day(cap.rule, found, round(cap.most(resolved, day)), group.index)


def _rule(rule: str, sentence: str, remedy: str, says: str) -> Rule:
    cap = CAPS[rule]
    kind: Kind = "scored" if cap.room else "hard"
    posting, checking = partial(post, cap), partial(check, cap)
    return Rule(rule, kind, sentence, remedy, posting, checking, says=says, scope="planned weeks")


RULES = (
    _rule(
        "exercise-count",
        "A day has at most {limit:g} exercises; {long_day:g} when it is longer than {long_day_minutes:g} minutes; {novice:g} for a novice.",
        "drop an exercise",
        "{day} has {amount} exercises, at most {limit}",
    ),
    _rule(
        "seventh",
        "A day of up to {minutes:g} minutes should have at most {exercises:g} exercises.",
        "do more sets of fewer exercises",
        "{day} has {amount} exercises in {minutes} minutes",
    ),
    _rule(
        "high-fatigue-sets",
        "A day has at most {limit:g} sets of high-fatigue multi-joint lifts; {long_day:g} when it is longer than {long_day_minutes:g} minutes; {novice:g} for a novice.",
        "swap one for a machine or a single-joint lift",
        "{day} has {amount} high-fatigue sets, at most {limit}",
    ),
    _rule(
        "axial-load",
        "The load on the spine in a day (sets times axial load) is at most {limit:g}.",
        "swap a lift for one that spares the spine",
        "{day} has {amount} sets x axial load, at most {limit}",
    ),
    _rule(
        "technique-cap",
        "A day has at most {limit:g} exercises that end in a drop set or rest-pause set; {efficiency:g} in efficiency.",
        "make one straight sets",
        "{day} has {amount} technique sets, at most {limit}",
    ),
    _rule(
        "day-sets",
        "A day should have at most {intermediate:g} working sets; {novice:g} for a novice.",
        "move sets to another day",
        "{day} has {sets}",
    ),
)
