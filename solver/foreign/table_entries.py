"""The lines of a table as a week's own values: what they do not say is as the brief would have it, and their pairs."""

from __future__ import annotations

from dataclasses import replace

from setwright.catalogue.faults import Fault
from setwright.solver.evaluation.prescriptions import pair_rests, reps_of, rests_of, rir_of
from setwright.solver.evaluation.resolved_brief import ResolvedBrief
from setwright.solver.evaluation.week import Entry
from setwright.solver.foreign.table_rows import TableLine
from setwright.solver.sheets.common.words import clock


def entry_of(line: TableLine, resolved: ResolvedBrief, day: int) -> Entry:
    """One line as the week's own value; what it does not say is as the brief would have it."""
    exercise = resolved.catalogue.exercises[line.exercise]
    in_pairs = pair_rests(resolved, exercise) if line.pair else ()
    rests = in_pairs or rests_of(resolved, exercise)
    low, high = line.reps or reps_of(resolved, exercise, resolved.days[day])
    return Entry(
        exercise=line.exercise,
        sets=line.sets,
        reps=(low, high),
        rir=rir_of(resolved, exercise) if line.rir is None else line.rir,
        rest=rests[0] if line.rest is None else line.rest,
        technique=line.technique,
        drops=line.drops,
        partner=line.pair,
    )


def with_pairs(entries: list[Entry], at: str, faults: list[Fault], notes: list[str]) -> tuple[Entry, ...]:
    """A day's lines with each pair said by both and resting alike."""
    partners = {e.exercise: e.partner for e in entries if e.partner}
    here = {e.exercise for e in entries}
    for one, other in sorted(partners.items()):
        if one == other:
            faults.append(Fault(f"{at}, pair", f"{one} is paired with itself", "name the other exercise of the pair"))
        elif other not in here or partners.get(other, one) != one:
            faults.append(Fault(f"{at}, pair", f"{one} is paired with {other}, which is not", "name each other"))
    both = {**{other: one for one, other in partners.items()}, **partners}
    rests = {e.exercise: e.rest for e in entries}
    found = []
    for entry in entries:
        partner = both.get(entry.exercise)
        rest = max(entry.rest, rests.get(partner, 0)) if partner else entry.rest
        if partner and rest != entry.rest:
            day = at.rpartition(": ")[2]
            notes.append(f"{day}: {entry.exercise} rests {clock(rest)}, as its pair does after each round")
        found.append(replace(entry, partner=partner, rest=rest))
    return tuple(found)
