"""The rows of a table as a week: which days it has, its lines with what they leave unsaid, and its pairs."""

from __future__ import annotations

from collections import Counter
from collections.abc import Mapping, Sequence
from dataclasses import dataclass, replace
from types import MappingProxyType
from typing import Final

from setwright.catalogue.entries import Catalogue
from setwright.catalogue.faults import Fault, UsageFault
from setwright.solver.brief.defaults import WEEKDAYS
from setwright.solver.brief.parsed_brief import ParsedBrief
from setwright.solver.evaluation.prescriptions import pair_rests, reps_of, rests_of, rir_of
from setwright.solver.evaluation.resolved_brief import ResolvedBrief
from setwright.solver.evaluation.week import Entry, Week
from setwright.solver.foreign.brief_from_week import fewest_minutes, implied_brief
from setwright.solver.foreign.near_names import NearNames
from setwright.solver.foreign.raw_rows import TableRow, columns_passed_over
from setwright.solver.foreign.table_rows import TableLine, line_of_row
from setwright.solver.rulebook import resolve
from setwright.solver.sheets.common.words import clock, listed

MOST_ROWS: Final = 500
TAKEN: Final[Mapping[str, str]] = MappingProxyType(
    {
        "reps": "the catalogue's range was taken",
        "rir": "the kind of lift decides it, as in a planned week",
        "rest": "the goal's shortest was taken",
    }
)
"""What stands in for a cell that says nothing."""


@dataclass(frozen=True)
class TableWeek:
    """A table read as a week, its brief, and notes on what was passed over or taken as said."""

    parsed: ParsedBrief
    week: Week
    notes: tuple[str, ...]


def week_of_table(
    rows: Sequence[TableRow], where: str, catalogue: Catalogue, asked: ParsedBrief | None, accept_near: bool
) -> TableWeek:
    """The rows as a week of the brief `asked`, or of the brief that they imply; raises UsageFault with every fault."""
    if not rows:
        raise UsageFault(Fault(where, "has no lines", "write a row for each line of the week"))
    if len(rows) > MOST_ROWS:
        raise UsageFault(Fault(where, f"has {len(rows)} lines, at most {MOST_ROWS} are read", "name one week"))
    others = columns_passed_over(rows)
    notes = [f"not read: the column{'s' if len(others) > 1 else ''} {listed(others)}"] if others else []
    lines = _lines(rows, where, catalogue, accept_near, notes)
    days = _days_in_order(list(dict.fromkeys(line.day for line in lines)), asked, where)
    parsed = asked or implied_brief(days, lines, [10] * len(days), catalogue, where)
    resolved = resolve(parsed.brief, catalogue)
    entries = [(line.day, _entry(line, resolved, days.index(line.day))) for line in lines]
    faults: list[Fault] = []
    week = Week(
        tuple(_with_pairs([e for on, e in entries if on == day], f"{where}: {day}", faults, notes) for day in days)
    )
    if faults:
        raise UsageFault(faults)
    if asked is None:
        parsed = implied_brief(days, lines, fewest_minutes(resolved, week, where), catalogue, where)
        notes.append("brief: days and minutes were taken from the week, all else is by default")
    unsaid = Counter(name for line in lines for name in TAKEN if getattr(line, name) is None)
    notes += [f"{name} was not said in {n} lines: {TAKEN[name]}" for name, n in unsaid.items()]
    return TableWeek(parsed, week, tuple(notes))


def _lines(
    rows: Sequence[TableRow], where: str, catalogue: Catalogue, accept_near: bool, notes: list[str]
) -> list[TableLine]:
    faults: list[Fault] = []
    found = []
    for at, row in rows:
        names = NearNames(catalogue, accept_near)
        found.append(line_of_row(row, at, names, where, faults))
        notes += [f"{at}: {said!r} was read as {name}" for said, name in names.taken]
    if faults:
        raise UsageFault(faults)
    return [line for line in found if line is not None]


def _days_in_order(used: list[str], asked: ParsedBrief | None, where: str) -> list[str]:
    """The week's days in order: the brief's, or those that the lines name."""
    numbers = [day for day in used if day.isdecimal()]
    if asked is None:
        if numbers and len(numbers) < len(used):
            said = f"has weekdays and numbers ({', '.join(used)})"
            raise UsageFault(Fault(f"{where}: day", said, "use one or the other"))
        return sorted(used, key=int) if numbers else [day for day in WEEKDAYS if day in used]
    brief = asked.brief
    by_number = brief.any_order or len(numbers) == len(used)
    there = [str(place) if by_number else day.weekday or "" for place, day in enumerate(brief.days, 1)]
    lost = [day for day in used if day not in there]
    if lost:
        said = f"stands on {listed(lost)}, the brief has {listed(there)}"
        raise UsageFault(Fault(f"{where}: day", said, "mend the brief's days or the week's"))
    return there


def _entry(line: TableLine, resolved: ResolvedBrief, day: int) -> Entry:
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


def _with_pairs(entries: list[Entry], at: str, faults: list[Fault], notes: list[str]) -> tuple[Entry, ...]:
    """A day's lines with each pair said by both and resting alike."""
    partners = {e.exercise: e.partner for e in entries if e.partner}
    here = {e.exercise for e in entries}
    for one, other in sorted(partners.items()):
        if other not in here or partners.get(other, one) != one:
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
