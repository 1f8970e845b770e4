"""One session of a week on screen: its minutes, its lines, the warm-up, and what may stand in for each line."""

from __future__ import annotations

from setwright.solver.evaluation.evaluated_week import EvaluatedWeek
from setwright.solver.sheets.common.grid import grid
from setwright.solver.sheets.common.labels import LABELS
from setwright.solver.sheets.common.loads.ramp import ramp_steps, ramp_ups, warm_up_said
from setwright.solver.sheets.common.loads.said_loads import SaidLoads, said_loads
from setwright.solver.sheets.common.time_breakdown import seconds_by_kind
from setwright.solver.sheets.common.words import (
    clock,
    day_name,
    dose,
    listed,
    note,
    whole_minutes,
    wrapped,
)
from setwright.solver.sheets.document.card_labels import line_labels
from setwright.solver.uses.edits.card_swaps import CardSwaps

NOTE = 20
LOAD = 24
"""The widest a column of loads may be."""
OTHER_COLUMNS = 26 + 2 * 5 + NOTE
"""Columns of a day beside the exercise: label 2, sets 16, RIR 3, rest 5, five gaps, note."""


def day_lines(evaluated: EvaluatedWeek, day: int, swaps: CardSwaps | None, width: int) -> list[str]:
    """One session as a coach reads it; `day` is its place in the week, from 0.

    `swaps` holds those of its lines; without it the session's minutes are told by what they go into.
    """
    said = said_loads(evaluated)
    resolved, lines = evaluated.resolved.days[day], evaluated.on[day]
    focus = f", {resolved.focus}" if resolved.focus else ""
    if resolved.missed and not lines:
        return [f"{day_name(resolved)}{focus}: missed"]
    if not lines:
        return [f"{day_name(resolved)}{focus}: no exercises ({resolved.minutes} min given)"]
    return [
        f"{day_name(resolved)}{focus}: {whole_minutes(evaluated.seconds(day))} of {resolved.minutes} min",
        *_rows(evaluated, day, said, width),
        *_warm_up_lines(evaluated, day, said, width),
        *(_time_lines(evaluated, day, width) if swaps is None else _swap_lines(evaluated, day, swaps, width)),
    ]


def _rows(evaluated: EvaluatedWeek, day: int, loads: SaidLoads, width: int) -> list[str]:
    """The lines of a card as a table, with a column of loads where the week names any."""
    table = []
    for label, line in zip(line_labels(evaluated, day), evaluated.on[day], strict=True):
        # The first of a pair is followed by its partner at once; the rest comes after both.
        rest = "0:00" if label.paired and label.place == 1 else clock(line.entry.rest)
        doing = dose(line.entry.sets, line.entry.reps, line.exercise)
        said = loads.get((day, line.place))
        load = [said.load if said else ""] if loads else []
        more = [*load, note(line.entry, line.exercise)]
        table.append([str(label), line.exercise.name, doing, str(line.entry.rir), rest, *more])
    if loads:
        widest_load = min(LOAD, max(len(row[5]) for row in table))
        named = max(16, width - OTHER_COLUMNS - widest_load - 2)
        titles = ["", "Exercise", "Sets x reps", "RIR", "Rest", "Load", "Note"]
        return grid(titles, table, "lllrrll", [None, named, None, None, None, LOAD, NOTE])
    widest = [None, max(16, width - OTHER_COLUMNS), None, None, None, NOTE]
    return grid(["", "Exercise", "Sets x reps", "RIR", "Rest", "Note"], table, "lllrrl", widest)


def _warm_up_lines(evaluated: EvaluatedWeek, day: int, loads: SaidLoads, width: int) -> list[str]:
    """The general warm-up, then each lift's ramp-up sets."""
    done, planned = evaluated.warm_up(day), evaluated.resolved.days[day].warm_up
    cut = f" (cut from {clock(planned)} to fit the day)" if done < planned else ""
    lines = [f"Warm-up: {warm_up_said(evaluated, day)}{cut}"]
    for place, sets in ramp_ups(evaluated, day).items():
        exercise = evaluated.on[day][place].exercise
        said = loads.get((day, place))
        steps = (said and said.ramp_up) or ramp_steps(exercise, sets)
        lines += wrapped(f"Ramp-up before {exercise.name}: {steps}", width, "  ")
    return lines


def _time_lines(evaluated: EvaluatedWeek, day: int, width: int) -> list[str]:
    """What the session's minutes go into, those that take none left out."""
    parts = [
        f"{LABELS[kind].lower()} {clock(seconds)}"
        for kind, seconds in seconds_by_kind(evaluated, day).items()
        if seconds
    ]
    return wrapped(f"Time: {', '.join(parts)}", width, "  ")


def _swap_lines(evaluated: EvaluatedWeek, day: int, swaps: CardSwaps, width: int) -> list[str]:
    """What may stand in for each line, in one paragraph."""
    found = [
        f"{label} {listed((e.name for e in swaps[day, place]), 'or')}"
        for place, label in enumerate(line_labels(evaluated, day))
        if swaps[day, place]
    ]
    return wrapped(f"Swaps: {'; '.join(found)}", width, "  ") if found else []
