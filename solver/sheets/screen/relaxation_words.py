"""Relaxations of a brief and the sums that cannot come out, in words: the one place where they are said."""

from __future__ import annotations

import math
from collections.abc import Sequence
from typing import assert_never

from setwright.catalogue.entries import Catalogue
from setwright.solver.evaluation.resolved_brief import ResolvedBrief
from setwright.solver.rulebook import sentence_of
from setwright.solver.sheets.common.words import counted, listed, muscle_name, some_sets, weekday_name
from setwright.solver.uses.relax.brief_changes import (
    AddDay,
    AddItems,
    AllowExercise,
    AllowPairs,
    AllowShorterRests,
    BriefChange,
    ChangeGoal,
    ChangePartner,
    DropMovement,
    DropMuscleDay,
    DropPartner,
    DropPins,
    DropRule,
    FewerDirectDays,
    LeaveDayOpen,
    LeaveSetsOpen,
    LengthenSessions,
    LowerSets,
    MoveDays,
    PriceRule,
    RaiseSets,
)
from setwright.solver.uses.relax.relaxation import Relaxation
from setwright.solver.uses.relax.shortfalls import CapShortfall, PinShortfall, Shortfall, TimeShortfall

ORDINALS = ("first", "second", "third", "fourth", "fifth", "sixth", "seventh")


def relaxation_words(relaxation: Relaxation, resolved: ResolvedBrief) -> str:
    """What a relaxation changes, without a full stop: drop the pin on barbell curl, and give the session 5 minutes
    more."""
    return ", and ".join(_change_words(change, resolved) for change in relaxation.changes)


def shortfall_words(shortfall: Shortfall, resolved: ResolvedBrief) -> str:
    """A sum that cannot come out, as a sentence."""
    match shortfall:
        case CapShortfall():
            return _cap_words(shortfall, resolved)
        case TimeShortfall():
            return _time_words(shortfall, resolved)
        case PinShortfall():
            return _pin_words(shortfall, resolved)
        case _:
            assert_never(shortfall)


# ---- what gives way


def _change_words(change: BriefChange, resolved: ResolvedBrief) -> str:
    catalogue = resolved.catalogue
    match change:
        case DropPins(exercises, weekday):
            pins = "pin" if len(exercises) == 1 else "pins"
            on = f" on {weekday_name(weekday)}" if weekday else ""
            return f"drop the {pins} on {_exercises(catalogue, exercises)}{on}"
        case DropPartner(exercise, partner):
            return f"keep {_exercise(catalogue, exercise)} without pairing it with {_exercise(catalogue, partner)}"
        case LeaveSetsOpen(exercises, sets):
            if sets is None:
                return "do not fix the sets of the pinned exercises"
            return f"do not fix the sets of {_exercises(catalogue, exercises)} at {sets}"
        case LeaveDayOpen(exercise, weekday):
            return f"let {_exercise(catalogue, exercise)} stand on any day instead of {weekday_name(weekday)}"
        case ChangePartner(exercise, partner, before):
            new, old = _exercise(catalogue, partner), _exercise(catalogue, before)
            return f"pair {_exercise(catalogue, exercise)} with {new} instead of {old}"
        case AddItems(items):
            return f"add {listed(_with_article(catalogue, item) for item in items)} to the kit"
        case AllowExercise(exercise):
            return f"allow {_exercise(catalogue, exercise)} again"
        case DropMovement(movement):
            return f"do without a {movement.replace('-', ' ')}"
        case DropMuscleDay(muscle, weekday):
            name = catalogue.muscle_or_group(muscle).name.lower()
            return f"do without {name} {f'on {weekday_name(weekday)}' if weekday else 'in every session that names it'}"
        case PriceRule(rule):
            return f"let the rule {rule} cost instead of forbid"
        case DropRule(rule):
            return f"turn off the rule {rule} ({sentence_of(rule, resolved)})"
        case AllowShorterRests(seconds):
            return f"allow rests shorter than {seconds} s"
        case LowerSets():
            return _lower_words(change, catalogue)
        case RaiseSets(muscle, sets, was):
            return f"at most {some_sets(sets)} of {muscle_name(catalogue, muscle)} instead of {was:g}"
        case FewerDirectDays(muscles, days, was):
            who = muscle_name(catalogue, muscles[0]) if len(muscles) == 1 else f"each of {len(muscles)} muscles"
            now = f"on {counted(days, 'day')}" if days else "on no set number of days"
            return f"direct work for {who} {now} instead of {was}"
        case LengthenSessions(minutes, sessions):
            which = "each session" if sessions > 1 else "the session"
            return f"give {which} {counted(minutes, 'minute')} more"
        case AllowPairs():
            return "do exercises in pairs"
        case ChangeGoal(goal, before):
            return f"take the goal {goal}, with shorter rests, instead of {before}"
        case AddDay(number, weekday, minutes):
            on = f" on {weekday_name(weekday)}" if weekday else ""
            return f"add a {ORDINALS[number - 1]} day{on} of {counted(minutes, 'minute')}"
        case MoveDays(weekdays, before):
            now, then = (listed(weekday_name(day) for day in days) for days in (weekdays, before))
            return f"train on {now} instead of {then}"
        case _:
            assert_never(change)


def _lower_words(change: LowerSets, catalogue: Catalogue) -> str:
    if len(change.muscles) > 1:
        left = "" if change.was is None else f", at least {change.was - change.by:g} instead of {change.was:g}"
        return f"ask {some_sets(change.by)} less of each of the {len(change.muscles)} muscles with a lower end{left}"
    name, was = muscle_name(catalogue, change.muscles[0]), change.was or 0.0
    if was <= change.by:
        return f"ask no number of sets of {name} instead of at least {was:g}"
    return f"at least {some_sets(was - change.by)} of {name} instead of {was:g}"


def _exercise(catalogue: Catalogue, exercise: str) -> str:
    """An exercise's name inside a sentence."""
    return catalogue.exercises[exercise].name.lower()


def _exercises(catalogue: Catalogue, exercises: Sequence[str]) -> str:
    return listed(_exercise(catalogue, exercise) for exercise in exercises)


def _with_article(catalogue: Catalogue, item: str) -> str:
    """A piece of kit with a or an, bare where its name is a plural."""
    name = catalogue.items[item].name.lower()
    return name if name.endswith("s") else f"an {name}" if name[0] in "aeio" else f"a {name}"


# ---- sums that cannot come out


def _cap_words(shortfall: CapShortfall, resolved: ResolvedBrief) -> str:
    name = resolved.catalogue.muscles[shortfall.muscle].name
    whole = f"{shortfall.days} x {shortfall.a_day:g} = {shortfall.days * shortfall.a_day:g}"
    return (
        f"{name}: at least {some_sets(shortfall.asked)} asked for, but a day can hold {shortfall.a_day:g} "
        f"and the week {whole}."
    )


def _time_words(shortfall: TimeShortfall, resolved: ResolvedBrief) -> str:
    asked, whole = shortfall.asked, sum(shortfall.asked)
    same = len(asked) > 1 and len(set(asked)) == 1
    sum_ = f"{len(asked)} x {asked[0]:g} = {whole:g}" if same else f"{whole:g}"
    quickest = _exercise(resolved.catalogue, shortfall.exercise)
    took = f"{some_sets(shortfall.sets)} in {shortfall.set_minutes:.1f} min"
    counts = f", which count as {shortfall.counted:g} of those asked" if shortfall.counted != shortfall.sets else ""
    return (
        f"{sum_} sets asked for; the quickest way ({quickest}, {took}{counts}) "
        f"takes {math.ceil(shortfall.needed)} min for them, but after the warm-ups the week has "
        f"{math.floor(shortfall.available)}."
    )


def _pin_words(shortfall: PinShortfall, resolved: ResolvedBrief) -> str:
    pins = listed(
        _exercise(resolved.catalogue, exercise) + (f" for {some_sets(sets)}" if sets else "")
        for exercise, sets in shortfall.pins
    )
    take = "take" if len(shortfall.pins) > 1 else "takes"
    return (
        f"{weekday_name(shortfall.weekday)}: {pins} {take} {math.ceil(shortfall.needed)} min at the shortest rests, "
        f"ramp-up sets left aside, but after the warm-up the day has {math.floor(shortfall.available)}."
    )
