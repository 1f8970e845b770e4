"""A day of the week as the card that a client trains from."""

from __future__ import annotations

from collections.abc import Mapping

from setwright.catalogue.entries import Exercise
from setwright.solver.evaluation.evaluated_week import EvaluatedWeek, Line
from setwright.solver.evaluation.resolved_brief import ResolvedBrief, ResolvedDay
from setwright.solver.sheets.common.ramp import ramp_steps, ramp_ups
from setwright.solver.sheets.common.sanitise import one_line, web_link
from setwright.solver.sheets.common.time_breakdown import seconds_by_kind
from setwright.solver.sheets.common.words import clock, listed, note, one_set, whole_minutes
from setwright.solver.sheets.document.planned import Planned
from setwright.solver.sheets.document.week_document import groups
from setwright.solver.sheets.handout.coach import Coach
from setwright.solver.sheets.handout.values import CardLine, Session


def session_of(evaluated: EvaluatedWeek, day: ResolvedDay, coach: Coach, planned: Planned) -> Session:
    """One day's card."""
    seconds = evaluated.seconds(day.index)
    busy = bool(evaluated.on[day.index])
    kinds = seconds_by_kind(evaluated, day.index) if busy else {}
    return Session(
        number=day.index + 1,
        weekday=day.weekday,
        title=coach.words[day.weekday] if day.weekday else f"{coach.words['session']} {day.index + 1}",
        minutes=whole_minutes(seconds) if busy else 0,
        given=day.minutes,
        seconds=seconds if busy else 0,
        place=place_words(evaluated.resolved, day.index),
        warm_up=f"{clock(evaluated.warm_up(day.index))} easy whole-body movement" if busy else "",
        lines=card_lines(evaluated, day.index, coach, planned),
        seconds_by_kind=tuple(kinds.items()),
    )


def card_lines(evaluated: EvaluatedWeek, day: int, coach: Coach, planned: Planned) -> tuple[CardLine, ...]:
    """A day's lines in order."""
    found = groups(evaluated, day)
    paired = {g["group"] for g in found if g["place"] == 2}
    ramps = ramp_ups(evaluated, day)
    return tuple(
        card_line(evaluated, line, g["group"], g["place"] if g["group"] in paired else 0, ramps, coach, planned)
        for g, line in zip(found, evaluated.on[day], strict=True)
    )


def card_line(
    evaluated: EvaluatedWeek,
    line: Line,
    letter: str,
    turn: int,
    ramps: Mapping[int, tuple[tuple[int, int], ...]],
    coach: Coach,
    planned: Planned,
) -> CardLine:
    """One line; `turn` is 1 or 2 in a pair, else 0."""
    e, entry, exercises = line.exercise, line.entry, evaluated.resolved.catalogue.exercises
    said = planned.lines[line.day.index][line.place]
    return CardLine(
        label=f"{letter}{turn or ''}",
        exercise=e.id,
        name=exercise_name(e, coach),
        setting=e.setting,
        cue=e.cue,
        link=web_link(e.link),
        sets=entry.sets,
        reps=one_set(entry.reps, e),
        rir=entry.rir,
        rest="0:00" if turn == 1 else clock(entry.rest),
        technique=note(entry, e),
        load=said.load,
        swaps=tuple(exercise_name(exercises[swap], coach) for swap in said.swaps),
        ramp_up=ramp_steps(e, ramps[line.place]) if line.place in ramps else "",
        why=said.why,
        partner=exercise_name(exercises[entry.partner], coach) if entry.partner else "",
        timed=e.timed,
    )


def exercise_name(exercise: Exercise, coach: Coach) -> str:
    return one_line(coach.exercises.get(exercise.id, exercise.name))


def place_words(resolved: ResolvedBrief, day: int) -> str:
    """The kit of a day in words."""
    catalogue, brief = resolved.catalogue, resolved.brief
    said = brief.days[day].equipment or brief.equipment or ()
    words = (said,) if isinstance(said, str) else said
    return listed(catalogue.kits[w].name if w in catalogue.kits else catalogue.items[w].name.lower() for w in words)
