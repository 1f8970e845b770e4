"""A day of the week as the card that a client trains from."""

from __future__ import annotations

from collections.abc import Mapping

from setwright.catalogue.entries import Exercise
from setwright.solver.evaluation.evaluated_week import EvaluatedWeek, Line
from setwright.solver.evaluation.resolved_brief import ResolvedBrief
from setwright.solver.evaluation.resolved_day import ResolvedDay
from setwright.solver.sheets.common.loads.ramp import ramp_steps, ramp_ups, warm_up_said
from setwright.solver.sheets.common.sanitise import one_line, web_link
from setwright.solver.sheets.common.time_breakdown import seconds_by_kind
from setwright.solver.sheets.common.words import (
    clock,
    counted_by_side,
    held_seconds,
    listed,
    note,
    one_set,
    whole_minutes,
)
from setwright.solver.sheets.document.card_labels import LineLabel, line_labels
from setwright.solver.sheets.document.day_model import WeekDay, WeekLine
from setwright.solver.sheets.handout.coach import Coach
from setwright.solver.sheets.handout.values import CardLine, Session


def session_of(evaluated: EvaluatedWeek, day: ResolvedDay, coach: Coach, said: WeekDay) -> Session:
    """One day's card; reasons, loads and swaps are those that its document says."""
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
        warm_up=warm_up_said(evaluated, day.index) if busy else "",
        lines=_card_lines(evaluated, day.index, coach, said),
        seconds_by_kind=tuple(kinds.items()),
    )


def _card_lines(evaluated: EvaluatedWeek, day: int, coach: Coach, said: WeekDay) -> tuple[CardLine, ...]:
    exercises, found = evaluated.resolved.catalogue.exercises, ramp_ups(evaluated, day)
    ramps = {place: ramp_steps(evaluated.on[day][place].exercise, sets) for place, sets in found.items()}
    return tuple(
        _card_line(line, label, ramps.get(line.place, ""), coach, entry, exercises)
        for line, label, entry in zip(evaluated.on[day], line_labels(evaluated, day), said.entries, strict=True)
    )


def _card_line(
    line: Line, label: LineLabel, ramp_up: str, coach: Coach, said: WeekLine, exercises: Mapping[str, Exercise]
) -> CardLine:
    e, entry = line.exercise, line.entry
    rest = 0 if label.paired and label.place == 1 else entry.rest
    return CardLine(
        label=str(label),
        exercise=e.id,
        name=exercise_name(e, coach),
        setting=e.setting,
        cue=e.cue,
        link=web_link(e.link),
        sets=entry.sets,
        reps=one_set(entry.reps, e),
        rir=entry.rir,
        rest=clock(rest),
        technique=note(entry, e),
        load=said.load,
        swaps=tuple(exercise_name(exercises[swap], coach) for swap in said.swaps),
        ramp_up=one_line(said.ramp_up or "") or ramp_up,
        why=said.why,
        plates=one_line(said.plates or ""),
        partner=exercise_name(exercises[entry.partner], coach) if entry.partner else "",
        timed=e.timed,
        amount=held_seconds(entry.reps) if e.timed else entry.reps,
        per_side=counted_by_side(e),
        rest_seconds=rest,
    )


def exercise_name(exercise: Exercise, coach: Coach) -> str:
    """An exercise's name in the coach's words, else the catalogue's, on one line."""
    return one_line(coach.exercises.get(exercise.id, exercise.name))


def place_words(resolved: ResolvedBrief, day: int) -> str:
    """The kit of a day in words."""
    catalogue, brief = resolved.catalogue, resolved.brief
    said = brief.days[day].equipment or brief.equipment or ()
    words = (said,) if isinstance(said, str) else said
    return listed(catalogue.kits[w].name if w in catalogue.kits else catalogue.items[w].name.lower() for w in words)
