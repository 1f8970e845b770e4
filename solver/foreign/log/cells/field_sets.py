"""The sets of one group of columns: in a diary's notation, or as load, repetitions and a number of sets."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any, Final

from setwright.catalogue.entries import Exercise
from setwright.catalogue.faults import shown
from setwright.solver.foreign.log.cells.filled_fields import FilledFields
from setwright.solver.foreign.log.cells.numbers import load_of, whole_of
from setwright.solver.foreign.log.cells.repetitions import MOST_HELD, breaths_of, reps_of
from setwright.solver.foreign.log.cells.set_text import EXPECTED, SetText, is_notation, sets_of
from setwright.solver.sheets.document.log_model import MOST_SETS
from setwright.solver.sheets.xlsx.log_keys import MOST_REPS

LOADLESS: Final = ("bodyweight", "band")
"""Kinds of load of which repetitions alone are a set."""
_MAY_HOLD: Final = ("done", "reps", "load", "set", "sets")


def notation_in(given: Mapping[str, Any]) -> str | None:
    """The field whose cell holds whole sets: always `done`, another where it looks so."""
    return next((n for n in _MAY_HOLD if n in given and (n == "done" or is_notation(given[n]))), None)


def typed_sets(name: str, fields: FilledFields, lift: Exercise | None) -> list[SetText]:
    """The sets of a cell in notation; a load beside it goes with repetitions that have none."""
    cell = fields.given[name]
    load, unit = (None, None) if name == "load" else fields.one("load", load_of) or (None, None)
    timed = lift is not None and lift.timed
    most, noun = (MOST_HELD, "s") if timed else (MOST_REPS, "repetitions")
    sets = []
    for done in fields.one(name, sets_of) or ():
        if not done.weighted and "load" not in fields.given and lift and lift.load not in LOADLESS:
            fields.fault(name, f"got {shown(cell)}, {EXPECTED}")
            return []
        if done.reps > most or (done.held and lift and not timed):
            fields.fault(name, f"got {shown(cell)}, expected at most {most} {noun}")
            return []
        one = (done.load, done.unit) if done.weighted else (load, unit)
        sets.append(SetText(breaths_of(done.reps) if timed else done.reps, *one, done.rir, note=done.note))
    return sets


def counted_sets(fields: FilledFields, lift: Exercise | None) -> list[SetText]:
    """The sets of a load, repetitions and a number of sets in columns of their own."""
    given = fields.given
    if "reps" not in given:
        first = next((name for name in ("load", "rir", "rpe") if name in given), None)
        if first:
            what = "a load" if first == "load" else shown(given[first])
            fields.fault(
                "reps" if "reps" in fields.at else first, f"{what} without repetitions", "write how many were done"
            )
        return []
    reps = fields.one("reps", reps_of, lift is not None and lift.timed) or ()
    loads = fields.each("load", load_of) if "load" in given else [(None, None)]
    times = fields.one("sets", whole_of, 1, MOST_SETS)
    if not reps or not loads:
        return []
    wanted = len(reps) if len(reps) > 1 else times or len(loads)
    if times not in (None, wanted) or len(loads) not in (1, wanted):
        said = f"has {len(reps)} numbers of repetitions, {len(loads)} loads and {times or len(reps)} sets"
        fields.fault("reps", said, "write one for each set, or one for all")
        return []
    return [SetText(reps[n % len(reps)], *loads[n % len(loads)]) for n in range(wanted)]
