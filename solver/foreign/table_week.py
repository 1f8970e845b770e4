"""The rows of a table as a week: which days it has, its lines with what they leave unsaid, and its pairs."""

from __future__ import annotations

from collections import Counter
from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from types import MappingProxyType
from typing import Final

from setwright.catalogue.entries import Catalogue
from setwright.catalogue.faults import Fault, UsageFault
from setwright.solver.brief.defaults import WEEKDAYS
from setwright.solver.brief.parsed_brief import ParsedBrief
from setwright.solver.evaluation.week import Week
from setwright.solver.foreign.brief_from_week import brief_words, fewest_minutes, implied_brief
from setwright.solver.foreign.day_names import numbered_days
from setwright.solver.foreign.near_names import NearNames
from setwright.solver.foreign.notes import Notes
from setwright.solver.foreign.pair_letters import LetteredLine, paired
from setwright.solver.foreign.rows.header import WEEK
from setwright.solver.foreign.rows.plain_rows import LETTER, plain_rows
from setwright.solver.foreign.rows.raw_rows import TableRow, columns_passed_over
from setwright.solver.foreign.table_entries import entry_of, with_pairs
from setwright.solver.foreign.table_rows import TableLine, line_of_row
from setwright.solver.rulebook import resolve
from setwright.solver.sheets.common.words import counted, listed

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
    rows: Sequence[TableRow],
    where: str,
    catalogue: Catalogue,
    asked: ParsedBrief | None,
    accept_near: bool,
    before: Sequence[str] = (),
) -> TableWeek:
    """The rows as a week of the brief `asked`, or of the brief that they imply, with notes after those `before`.

    Raises UsageFault with every fault.
    """
    if not rows:
        raise UsageFault(Fault(where, "has no lines", "write a row for each line of the week"))
    if len(rows) > MOST_ROWS:
        raise UsageFault(Fault(where, f"has {len(rows)} lines, at most {MOST_ROWS} are read", "name one week"))
    kept = Notes()
    if others := columns_passed_over(rows):
        kept.add(f"not read: the column{'s' if len(others) > 1 else ''} {listed(others)}")
    lines = _lines(rows, where, catalogue, accept_near, kept)
    notes = [*before, *kept.sentences()]
    days = _days_in_order(list(dict.fromkeys(line.day for line in lines)), asked, where)
    parsed = asked or implied_brief(days, lines, [10] * len(days), catalogue, where)
    resolved = resolve(parsed.brief, catalogue)
    entries = [(line.day, entry_of(line, resolved, days.index(line.day))) for line in lines]
    faults: list[Fault] = []
    week = Week(
        tuple(with_pairs([e for on, e in entries if on == day], f"{where}: {day}", faults, notes) for day in days)
    )
    if faults:
        raise UsageFault(faults)
    if asked is None:
        parsed = implied_brief(days, lines, fewest_minutes(resolved, week, where), catalogue, where)
        notes.append(brief_words(parsed.brief, catalogue))
    unsaid = Counter(name for line in lines for name in TAKEN if getattr(line, name) is None)
    notes += [f"{name} was not said in {counted(n, 'line')}: {TAKEN[name]}" for name, n in unsaid.items()]
    return TableWeek(parsed, week, tuple(notes))


def _lines(
    rows: Sequence[TableRow], where: str, catalogue: Catalogue, accept_near: bool, notes: Notes
) -> list[TableLine]:
    """The rows as lines with their partners; raises UsageFault with the faults of all of them."""
    faults: list[Fault] = []
    _one_week_only(rows, where, faults)
    names = NearNames(catalogue, accept_near)
    plain = plain_rows(rows, names, where, notes, faults)
    days = numbered_days([row.get("day") for _, row in plain], where, notes, faults)
    found: list[LetteredLine] = []
    for at, row in plain:
        named = {**row, "day": days.get(str(row.get("day")), row.get("day"))}
        line = line_of_row(named, at, names, where, faults)
        while names.taken:
            said, name = names.taken.pop(0)
            notes.add(f"{said!r} was read as {name}", at)
        if line is not None:
            found.append((at, row.get(LETTER, ""), line))
    lines = paired(found, where, faults)
    if faults:
        raise UsageFault(faults)
    return lines


def _one_week_only(rows: Sequence[TableRow], where: str, faults: list[Fault]) -> None:
    """Keep a fault where a column says that the lines are those of several weeks."""
    weeks = {str(row[WEEK]).strip() for _, row in rows if row.get(WEEK) not in (None, "")}
    if len(weeks) > 1:
        faults.append(Fault(f"{where}: week", f"holds {len(weeks)} weeks, one is read", "keep the lines of one week"))


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
