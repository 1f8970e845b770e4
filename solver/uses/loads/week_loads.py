"""The load of each line of a week: from what the brief says of the lift, down to what can be built that day."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass

from setwright.catalogue.entries import Catalogue, Exercise
from setwright.solver.brief.schema import LiftAsk
from setwright.solver.evaluation.evaluated_week import EvaluatedWeek, Line
from setwright.solver.uses.loads.buildable import Built, Kit
from setwright.solver.uses.loads.kits import kit_on
from setwright.solver.uses.loads.working_load import DoneSet, working_load


@dataclass(frozen=True)
class LineLoad:
    """The load of one line, in the client's unit."""

    exercise: Exercise
    kit: Kit
    built: Built | None
    """What to load; None where the load is to be found, or where the least that can be built is too heavy."""
    known: bool
    """Whether the brief knows enough of the lift to say its load; else it is to be found in the first session."""
    unsure: bool = False
    """Whether the formulas say little of so many repetitions."""


def week_loads(evaluated: EvaluatedWeek) -> Mapping[tuple[int, int], LineLoad]:
    """(day, place) -> the load of that line; lines without a load to choose are absent, all where no lifts are said."""
    lifts = evaluated.resolved.brief.lifts
    if lifts is None:
        return {}
    found = {}
    for line in evaluated.lines:
        kit = kit_on(line.exercise, evaluated.resolved, line.day)
        if kit is not None:
            ask = lifts.get(line.exercise.id)
            found[line.day.index, line.place] = _load_of(line, ask, kit, evaluated.resolved.catalogue)
    return found


def done_set(ask: LiftAsk) -> DoneSet:
    """The set that a brief names; a known maximum is a set of one with none left."""
    if ask.load is None or ask.reps is None:
        return DoneSet(ask.maximum or 0.0, 1, 0)
    return DoneSet(ask.load, ask.reps, ask.rir or 0)


def adds_to_the_body(exercise: Exercise) -> bool:
    """Whether the load is added to the body's own weight, which the formulas would have to know."""
    return exercise.body_weight == "added"


def _load_of(line: Line, ask: LiftAsk | None, kit: Kit, catalogue: Catalogue) -> LineLoad:
    exercise, entry = line.exercise, line.entry
    # Of a machine that helps the body up more load is easier, which the formulas have the wrong way round.
    if ask is None or exercise.timed or exercise.body_weight == "helped":
        return LineLoad(exercise, kit, None, known=False)
    done = done_set(ask)
    # For fewer repetitions the added load alone says too little, which is safe; for more it would say too much.
    if adds_to_the_body(exercise) and entry.reps[0] + entry.rir > done.reps + done.rir:
        return LineLoad(exercise, kit, None, known=False)
    found = working_load(exercise, done, entry.reps, entry.rir, kit, catalogue)
    return LineLoad(exercise, kit, found.begin, known=True, unsure=found.unsure)
