"""Loads in words: on a line, on its ramp-up sets, and what a sheet says once about them all."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from typing import Final

from setwright.catalogue.entries import Exercise
from setwright.solver.brief.schema import LiftAsk
from setwright.solver.evaluation.evaluated_week import EvaluatedWeek
from setwright.solver.sheets.common.loads.built_words import load_said
from setwright.solver.sheets.common.loads.ramp import Step
from setwright.solver.uses.loads.buildable import Bar, Kit
from setwright.solver.uses.loads.week_loads import LineLoad, adds_to_the_body, done_set, week_loads
from setwright.solver.uses.loads.working_load import ramp_loads

Words = Mapping[tuple[int, int], str]
"""(day, place in the day), both from 0 -> words."""
FIND_IT: Final = "find it"
FIRST_SESSION: Final = (
    "Where the load says find it, start light: the empty bar or the lightest load, for as many repetitions as the line "
    "asks for. Rest two minutes, add a little and do a second set; if that was easy, a third. Stop adding as soon as a "
    "set leaves no more repetitions in reserve than the RIR column says. Write that load down: the next session begins "
    "with it."
)
"""How a load is found: common practice, no source."""
A_START: Final = (
    "The loads are a start, not a law: change them by what the first set shows, most of all where they say unsure."
)


def line_load_words(evaluated: EvaluatedWeek) -> Words:
    """What stands as the load of each line; lines without a load to choose are absent, all where no lifts are said."""
    unit = evaluated.resolved.brief.client.unit
    return {at: line_words(load, unit) for at, load in week_loads(evaluated).items()}


def ramp_set_words(kit: Kit, working: float, steps: Iterable[Step], unit: str) -> str:
    """The ramp-up sets before a working load, on loads that can be built and are lighter: 40 kg x 8, 55 kg x 5."""
    sets = ramp_loads(working, kit, steps)
    if not sets:
        return f"without load x {', '.join(str(reps) for _, reps in steps)}"
    return ", ".join(f"{load_said(built.load, unit)} x {reps}" for built, reps in sets)


def load_on_a_line(load: float, unit: str, exercise: Exercise) -> str:
    """82.5 kg, 24 kg a dumbbell, or 10 kg added to the body: a load as a card says it."""
    if exercise.load in ("dumbbell", "kettlebell"):
        return f"{load_said(load, unit)} a {exercise.load}"
    return f"{load_said(load, unit)}{' added' if adds_to_the_body(exercise) else ''}"


def known_words(ask: LiftAsk, unit: str) -> str:
    """What a brief knows of a lift: 80 kg x 8, 2 left, or maximum 120 kg; with the day it was done."""
    done = done_set(ask)
    left = f", {done.rir} left" if done.rir else ""
    said = f"{load_said(done.load, unit)} x {done.reps}{left}" if ask.reps else f"maximum {load_said(done.load, unit)}"
    return f"{said} on {ask.on}" if ask.on else said


def notes_on_loads(words: Iterable[str | None]) -> tuple[str, ...]:
    """What a sheet says once: how to take the loads that its lines say, and how to find those that they do not."""
    said = {word for word in words if word}
    return (*((A_START,) if said - {FIND_IT} else ()), *((FIRST_SESSION,) if FIND_IT in said else ()))


def line_words(load: LineLoad, unit: str) -> str:
    """The load of one line as its card says it, or that it is to be found, or that nothing so light can be built."""
    if not load.known:
        return FIND_IT
    if load.built is None:
        return "bar too heavy" if isinstance(load.kit, Bar) and load.kit.weight else "lightest too heavy"
    return load_on_a_line(load.built.load, unit, load.exercise) + (", unsure" if load.unsure else "")
