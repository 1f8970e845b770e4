"""The lines of a week kept on their days, and their sets, rests and techniques solved anew."""

from __future__ import annotations

from collections.abc import Iterator, Mapping

from setwright.solver.engines.build import day_sheet
from setwright.solver.linear.columns import Atom, Board, Cell, Column, board_of, cells_of_days, pair_columns
from setwright.solver.engines.cpsat import Program
from setwright.solver.linear.linear_model import Sheet
from setwright.solver.auditing import Audit, audit
from setwright.solver.evaluation.resolved_brief import Terms
from setwright.solver.evaluation.week import Entry, Week
from setwright.solver.uses.edits.editing import entry_as, sorted_as_done

WORK = 6.0
"""CP-SAT's deterministic time: few columns are open, so this is mostly to the end."""
SECONDS = 60.0
"""A net only."""
Lines = Mapping[tuple[int, int], str]
"""(class, day) -> the exercise of that class that stands on the day."""


def settled(terms: Terms, week: Week, keep: tuple[tuple[int, str], ...] = ()) -> Audit | None:
    """The best week of these lines on these days; lines not in `keep`, (day, exercise id), may be left out.

    None when no way of doing them, with `keep` among them, passes the audit. The same week gives the same answer.
    """
    board = board_of(terms)
    lines = lines_of(board, week)
    sheet = day_sheet(board, columns_of(board, week, lines))
    for day, exercise in keep:
        if (here := standing(sheet, lines, day, exercise)) is None:
            return None
        sheet.row("kept", here, low=1)
    program = Program(sheet)
    program.maximise()
    seen: list[frozenset[int]] = []
    program.solve(WORK, SECONDS, seen.append)
    found = (audit(terms, week_of(sheet, lines, columns)) for columns in reversed(seen))
    return max((a for a in found if not a.broken), key=lambda a: a.score_units, default=None)


def lines_of(board: Board, week: Week) -> dict[tuple[int, int], str]:
    """The lines whose exercise is open on its day, by class."""
    classes = {member.id: i for i, cls in enumerate(board.classes) for member in cls.members}
    found: dict[tuple[int, int], str] = {}
    for day, entries in enumerate(week.days):
        for entry in entries:
            cls = classes.get(entry.exercise)
            if cls is not None and board.classes[cls].options[board.group_of[day]]:
                found.setdefault((cls, day), entry.exercise)
    return found


def columns_of(board: Board, week: Week, lines: Lines) -> list[Column]:
    """Every way to do each line alone, and each pair of the week as a pair."""
    found: list[Column] = []
    for cell in cells_of_days(board):
        atoms = {name: atoms_of(board, cell, cls) for (cls, day), name in lines.items() if day == cell.index}
        found += [Column(cell.index, (a,)) for here in atoms.values() for a in here if not a.option.paired]
        for one, other in pairs_of(week.days[cell.index]):
            halves = [a for name in (one, other) for a in atoms.get(name, ()) if a.option.paired]
            found += pair_columns(board, cell, halves)
    return found


def atoms_of(board: Board, cell: Cell, cls: int) -> list[Atom]:
    return [Atom(cls, option) for option in board.classes[cls].options[cell.group]]


def pairs_of(entries: tuple[Entry, ...]) -> Iterator[tuple[str, str]]:
    """The pairs of a day, each once."""
    for entry in entries:
        if entry.partner is not None and entry.exercise < entry.partner:
            yield entry.exercise, entry.partner


def standing(sheet: Sheet, lines: Lines, day: int, exercise: str) -> dict[int, int] | None:
    """The columns that hold an exercise on a day, or None where there are none."""
    mine = {key for key, name in lines.items() if name == exercise and key[1] == day}
    here = {j: 1 for j, c in enumerate(sheet.columns) if any((a.cls, c.cell) in mine for a in c.atoms)}
    return here or None


def week_of(sheet: Sheet, lines: Lines, columns: frozenset[int]) -> Week:
    """The week of some columns, every line under its own name."""
    terms = sheet.terms
    days: list[list[Entry]] = [[] for _ in terms.days]
    for j in sorted(columns):
        column = sheet.columns[j]
        names = [lines[a.cls, column.cell] for a in column.atoms]
        for name, atom, partner in zip(names, column.atoms, reversed(names), strict=True):
            exercise = terms.catalogue.exercises[name]
            paired = partner if len(names) == 2 else None
            days[column.cell].append(entry_as(terms, exercise, terms.days[column.cell], atom.option, paired))
    return Week(tuple(sorted_as_done(terms, entries) for entries in days))
