"""The sessions of a week as its document has them: a day, a line, and the digest of what may stand in for the lines."""

from __future__ import annotations

import hashlib
from collections.abc import Iterable
from typing import Any

from setwright.catalogue.entries import Exercise
from setwright.solver.evaluation.evaluated_week import EvaluatedWeek, Line
from setwright.solver.evaluation.week import Entry
from setwright.solver.sheets.common.loads.ramp import ramp_ups
from setwright.solver.sheets.common.loads.said_loads import SaidLoad, SaidLoads
from setwright.solver.sheets.common.purpose import line_purpose
from setwright.solver.sheets.common.time_breakdown import seconds_by_kind
from setwright.solver.sheets.document.card_labels import is_second, line_labels
from setwright.solver.uses.edits.card_swaps import CardSwaps


def day_part(evaluated: EvaluatedWeek, day: int, swaps: CardSwaps, loads: SaidLoads) -> dict[str, Any]:
    """One session; `day` is its place in the week, from 0. `loads` is what is said of those of its lines."""
    resolved = evaluated.resolved.days[day]
    ramps, labels = ramp_ups(evaluated, day), line_labels(evaluated, day)
    held = bool(evaluated.on[day])
    return {
        "weekday": resolved.weekday,
        "minutes": resolved.minutes,
        "seconds": evaluated.seconds(day) if held else 0,
        "warm_up_seconds": evaluated.warm_up(day) if held else 0,
        "ramp_up_seconds": sum(seconds for (d, _), seconds in evaluated.ramp_up.items() if d == day),
        "seconds_by_kind": seconds_by_kind(evaluated, day),
        "entries": [
            {
                **line_part(evaluated, line, swaps.get((day, line.place), ())),
                "group": label.letter,
                "place": label.place,
                "ramp_up_sets": len(ramps.get(line.place, ())),
                **_load_part(loads.get((day, line.place))),
            }
            for line, label in zip(evaluated.on[day], labels, strict=True)
        ],
    }


def _load_part(said: SaidLoad | None) -> dict[str, Any]:
    """The load of a line; its ramp-up sets and plates only where they are known."""
    if said is None:
        return {"load": None}
    more = {"ramp_up": said.ramp_up, "plates": said.plates}
    return {"load": said.load, **{name: words for name, words in more.items() if words}}


def line_part(evaluated: EvaluatedWeek, line: Line, swaps: tuple[Exercise, ...]) -> dict[str, Any]:
    """One line of a card, as far as it does not depend on the lines around it."""
    entry, exercise = line.entry, line.exercise
    halves = line.prescription.half_seconds
    return {
        "order": line.place + 1,
        **entry_part(entry),
        "name": exercise.name,
        "limb": exercise.limb,
        "seconds": halves // 2 if is_second(evaluated, line) else (halves + 1) // 2,
        "why": line_purpose(evaluated, line),
        "swaps": [e.id for e in swaps],
    }


def entry_part(entry: Entry) -> dict[str, Any]:
    """What is done on a line, as it is read back."""
    return {
        "exercise": entry.exercise,
        "sets": entry.sets,
        "reps": list(entry.reps),
        "rir": entry.rir,
        "rest_seconds": entry.rest,
        "technique": entry.technique,
        "drops": entry.drops,
        "paired_with": entry.partner,
    }


def swaps_digest(days: Iterable[Iterable[tuple[str, Iterable[str]]]]) -> str:
    """Twelve letters that change with any swap of any line; `days` holds each line's exercise and its swaps, as ids."""
    said = "\n\n".join("\n".join(" ".join((exercise, *instead)) for exercise, instead in day) for day in days)
    return hashlib.sha256(said.encode()).hexdigest()[:12]
