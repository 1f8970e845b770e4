"""The form of a session in the gym read: the sets that are marked as done, lift by lift."""

from __future__ import annotations

import re
from collections.abc import Iterator, Mapping
from dataclasses import replace
from datetime import date
from functools import partial
from typing import Final

from setwright.catalogue.entries import Catalogue, Exercise
from setwright.catalogue.fault_collector import FaultCollector
from setwright.catalogue.faults import Fault, UsageFault
from setwright.solver.brief.phrase.named import entry_named
from setwright.solver.brief.schema import Unit
from setwright.solver.desk.log.fields import moment, of_a_session, said
from setwright.solver.foreign.log.cells.numbers import load_of, reserve_of, side_of
from setwright.solver.foreign.log.cells.repetitions import reps_of
from setwright.solver.log.values import LoggedSession, LoggedSet
from setwright.solver.sheets.document.progress.log_model import MOST_SETS

Fields = Mapping[str, str]
_DONE: Final = re.compile(r"done-(\d{1,3})-(\d{1,3})")


def session_of(fields: Fields, on: date, catalogue: Catalogue, unit: Unit, today: date) -> LoggedSession:
    """The session that a form says was done on a day; raises UsageFault with every fault."""
    faults = FaultCollector()
    of = faults.result_of(lambda: of_a_session(fields, on))
    if on > today:
        faults.add([Fault("day", f"{on} is in the future, today is {today}", "write it down when it is done")])
    if fields.get("unit", unit) != unit:
        faults.add([Fault("loads", f"are in {fields['unit']}, those of the client in {unit}", "open the page anew")])
    sets: list[LoggedSet] = []
    for line, numbers in _marked(fields):
        lift = faults.result_of(partial(_lift, fields, line, catalogue))
        for number in numbers:
            done = faults.result_of(partial(_set, fields, line, number, lift, unit))
            sets += [done] if done is not None else []
    if not sets and not any(_marked(fields)):
        faults.add([Fault("sets", "none is marked as done", "mark each set that was done")])
    faults.raise_all()
    assert of is not None
    return LoggedSession(on, _in_order(sets), unit, **of)


def _marked(fields: Fields) -> Iterator[tuple[int, list[int]]]:
    """(line, the numbers of its sets that are marked as done), as the form has them in order."""
    found: dict[int, list[int]] = {}
    for name in fields:
        if marked := _DONE.fullmatch(name):
            found.setdefault(int(marked[1]), []).append(int(marked[2]))
    for line in sorted(found):
        yield line, sorted(found[line])


def _lift(fields: Fields, line: int, catalogue: Catalogue) -> Exercise:
    """The lift of a line by its id, its name or an alias; raises UsageFault with the nearest one."""
    word = fields.get(f"lift-{line}", "").strip()
    if not word:
        raise UsageFault(Fault(f"lift {line + 1}", "has sets and no name", "write which lift it was"))
    return catalogue.exercises[entry_named(word, f"lift {line + 1}", ("exercise",), catalogue)[1]]


def _set(fields: Fields, line: int, number: int, lift: Exercise | None, unit: Unit) -> LoggedSet:
    """One set; number 0, to be counted later. Raises UsageFault with all that is wrong with it."""
    faults, at = FaultCollector(), f"{line}-{number}"
    where = f"{lift.name if lift else f'lift {line + 1}'}, set {number}"
    reps = faults.result_of(lambda: said(fields, f"reps-{at}", where, reps_of, bool(lift and lift.timed)))
    load = faults.result_of(lambda: said(fields, f"load-{at}", where, load_of))
    left = faults.result_of(lambda: said(fields, f"left-{at}", where, reserve_of, False))
    side = faults.result_of(lambda: said(fields, f"side-{at}", where, side_of))
    ended = faults.result_of(lambda: said(fields, f"ended-{at}", where, moment))
    if load is not None and load[1] not in (None, unit):
        faults.add([Fault(where, f"its load is in {load[1]}, expected {unit}", f"write it in {unit}")])
    if not fields.get(f"reps-{at}", "").strip():
        faults.add([Fault(where, "is marked as done without repetitions", "write how many, or take the mark off")])
    elif reps is not None and len(reps) != 1:
        faults.add([Fault(where, f"has {len(reps)} numbers of repetitions, expected one", "write one set a row")])
    faults.raise_all()
    assert reps is not None
    return LoggedSet(
        exercise=lift.id if lift else "",
        number=0,
        reps=reps[0],
        load=load[0] if load else None,
        rir=left[0] if left else None,
        side=side,
        ended=ended,
    )


def _in_order(sets: list[LoggedSet]) -> tuple[LoggedSet, ...]:
    """The sets as they were done, by their ends where all say them, counted within each lift and side."""
    ordered = sorted(sets, key=lambda s: s.ended) if all(s.ended for s in sets) else sets  # type: ignore[arg-type,return-value]
    counted: dict[tuple[str, str | None], int] = {}
    found = []
    for done in ordered:
        key = (done.exercise, done.side)
        counted[key] = counted.get(key, 0) + 1
        found.append(replace(done, number=counted[key]))
    if any(count > MOST_SETS for count in counted.values()):
        raise UsageFault(Fault("sets", f"more than {MOST_SETS} of one lift", "write what was done"))
    return tuple(found)
