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
from setwright.solver.foreign.rows.typed_cells import plain, sets_and_reps
from setwright.solver.sheets.document.progress.log_model import MOST_SETS
from setwright.solver.sheets.xlsx.log_keys import MOST_REPS

MOST_GUESSED: Final = 10
"""3x8 alone may be three sets of 8: a load up to this without a unit is asked about (convention)."""
_MAY_HOLD: Final[tuple[str, ...]] = ("done", "reps", "load", "set", "sets")


def notation_in(given: Mapping[str, Any]) -> str | None:
    """The field whose cell holds whole sets: always `done`, another where it looks so.

    3x8 among the numbers of sets, beside a load, is sets x repetitions.
    """
    held = _MAY_HOLD[:-1] if "load" in given else _MAY_HOLD
    return next((n for n in held if n in given and (n == "done" or is_notation(given[n]))), None)


def typed_sets(name: str, fields: FilledFields, lift: Exercise | None) -> list[SetText]:
    """The sets of a cell in notation; a load beside it goes with repetitions that have none."""
    cell = fields.given[name]
    load, unit = (None, None) if name == "load" else fields.one("load", load_of) or (None, None)
    timed = lift is not None and lift.timed
    most, noun = (MOST_HELD, "s") if timed else (MOST_REPS, "repetitions")
    found: tuple[SetText, ...] = fields.one(name, sets_of) or ()
    if not fields.single and len(found) == 1 and _may_be_sets(found[0]):
        remedy = f"write {found[0].load:g} kg x {found[0].reps} for the load, else each set's load: 80x8x3"
        fields.fault(name, f"got {shown(cell)}, which may be a load or a number of sets", remedy)
        return []
    if name != "load" and "load" in fields.given and any(done.weighted for done in found):
        fields.fault(name, f"got {shown(cell)}, and a load in its own column", "write the repetitions alone: 8, 8, 7")
        return []
    sets = []
    for done in found:
        if not done.weighted and "load" not in fields.given and lift and lift.has_load:
            fields.fault(name, f"got {shown(cell)}, {EXPECTED}")
            return []
        if done.reps > most or (done.held and lift and not timed):
            fields.fault(name, f"got {shown(cell)}, expected at most {most} {noun}")
            return []
        own_load, own_unit = (done.load, done.unit) if done.weighted else (load, unit)
        reps = breaths_of(done.reps) if timed else done.reps
        sets.append(SetText(reps, own_load, own_unit, done.rir, note=done.note))
    return sets


def _may_be_sets(done: SetText) -> bool:
    """Whether the load of a lone set could be a number of sets."""
    small = done.load is not None and done.load.is_integer() and 0 < done.load <= MOST_GUESSED
    return small and done.unit is None and not done.added


def _schemed(fields: FilledFields) -> FilledFields:
    """The fields with 3x8 taken apart into sets and repetitions."""
    for name in ("sets x reps", "sets"):
        both = sets_and_reps(plain(fields.given.get(name)))
        if both is not None and "reps" not in fields.given:
            given = {**fields.given, "sets": both[0], "reps": both[1]}
            at = {**fields.at, "sets": fields.at[name], "reps": fields.at[name]}
            return FilledFields(given, at, fields.report, fields.kept)
    return fields


def counted_sets(fields: FilledFields, lift: Exercise | None) -> list[SetText]:
    """The sets of a load, repetitions and a number of sets in columns of their own."""
    fields = _schemed(fields)
    given = fields.given
    if "reps" not in given:
        first = next((name for name in ("load", "sets x reps", "rir", "rpe") if name in given), None)
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
