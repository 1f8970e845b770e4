"""The line of a table that is its heading, and what is said where none is."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from typing import Final

from setwright.catalogue.faults import Fault, UsageFault
from setwright.catalogue.near import did_you_mean, nearest
from setwright.solver.foreign.log.tables.log_columns import FIELDS, WORDS, asked_field, columns_of, meant, plain_heading

DONE: Final = frozenset(("reps", "done", "set", "sets", "sets x reps"))
"""Fields of which a heading has one at least, or numbered ones."""


def is_heading(cells: Sequence[str], said: Mapping[str, str]) -> bool:
    """Whether a line is a heading of sets: it names the lift and what was done, or all that the caller names."""
    if said and not {plain_heading(heading) for heading in said.values()} <= {plain_heading(cell) for cell in cells}:
        return False
    if not said and not any(plain_heading(cell) in WORDS for cell in cells):
        return False
    found = columns_of(cells, said)
    return "exercise" in found.at and bool(
        found.numbered or {"reps", "done", "set", "sets", "sets x reps"} & found.at.keys()
    )


def check_asked(said: Mapping[str, str], where: str) -> None:
    """Raise UsageFault with each name that is no field."""
    faults = []
    for name in said:
        found = asked_field(name)[1]
        if found not in FIELDS:
            remedy = did_you_mean(name, FIELDS) or f"the fields are {', '.join(FIELDS)}"
            faults.append(Fault(f"{where}: columns", f"{name!r} is no field of a log", remedy))
    if faults:
        raise UsageFault(faults)


def no_heading(lines: Sequence[Sequence[str]], said: Mapping[str, str], where: str) -> UsageFault:
    """The error of a table without a heading: what the line that comes nearest to one lacks."""
    named = {plain_heading(heading): heading for heading in said.values()}

    def hits(cells: Sequence[str]) -> int:
        return sum(plain_heading(cell) in named or meant(plain_heading(cell))[1] is not None for cell in cells)

    best = max(lines, key=hits, default=())
    there = {plain_heading(cell) for cell in best if cell}
    place = f"{where}: heading"
    if said and hits(best):
        faults = [
            Fault(place, f"the column {heading!r} is missing", _near(heading, best))
            for plain, heading in named.items()
            if plain not in there
        ]
        if faults:
            return UsageFault(faults)
    found = columns_of(best, said).at if hits(best) else {}
    wanted = [name for name in ("exercise", "reps") if name not in found]
    if not hits(best) or not wanted:
        told = "has no heading that names the lift and what was done"
        return UsageFault(Fault(where, told, "head them date, exercise, load, reps, RIR, or say which column is which"))
    return UsageFault([Fault(place, f"the column {name!r} is missing", _near(name, best)) for name in wanted])


def _near(name: str, head: Sequence[str]) -> str:
    near = nearest(name, [text for text in head if text and meant(plain_heading(text))[1] is None])
    return f"is it {near!r}? Then name that column" if near else "name the column that holds it"
