"""What the cards of a week say of each line's load: the load itself, the ramp-up sets before it, plates a side."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass

from setwright.solver.evaluation.evaluated_week import EvaluatedWeek, Line
from setwright.solver.sheets.common.loads.built_words import plates_words
from setwright.solver.sheets.common.loads.load_words import line_words, ramp_set_words
from setwright.solver.sheets.common.loads.ramp import ramp_ups
from setwright.solver.uses.loads.kits import kit_on, plates_are_said
from setwright.solver.uses.loads.week_loads import week_loads


@dataclass(frozen=True)
class SaidLoad:
    """The words of one line; those of ramp-up sets and plates are empty where they are not known."""

    load: str
    """82.5 kg, or find it."""
    ramp_up: str = ""
    """40 kg x 8, 55 kg x 5."""
    plates: str = ""
    """20 + 10 + 1.25 a side."""


SaidLoads = Mapping[tuple[int, int], SaidLoad]
"""(day, place in the day), both from 0 -> what is said of that line."""


def said_loads(evaluated: EvaluatedWeek) -> SaidLoads:
    """What is said of each line by the brief's lifts; lines without a load to choose are absent, all without lifts."""
    unit, loads = evaluated.resolved.brief.client.unit, week_loads(evaluated)
    return {
        (line.day.index, line.place): said_load(
            line_words(found, unit), line, None if found.built is None else found.built.load, evaluated
        )
        for line in evaluated.lines
        if (found := loads.get((line.day.index, line.place))) is not None
    }


def said_load(words: str, line: Line, load: float | None, evaluated: EvaluatedWeek) -> SaidLoad:
    """A line's words with its ramp-up sets and plates for a load in the client's unit; the words alone without one."""
    brief = evaluated.resolved.brief
    kit = kit_on(line.exercise, evaluated.resolved, line.day)
    built = None if kit is None or load is None else kit.at_most(load)
    if kit is None or built is None:
        return SaidLoad(words)
    steps = ramp_ups(evaluated, line.day.index).get(line.place)
    return SaidLoad(
        words,
        ramp_set_words(kit, built.load, steps, brief.client.unit) if steps else "",
        plates_words(built) if plates_are_said(line.exercise, brief.owned) else "",
    )
