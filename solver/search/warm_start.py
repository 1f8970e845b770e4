"""A search that starts from a week at hand: the columns of that week, opened among the candidates."""

from __future__ import annotations

from setwright.solver.linear.columns import Atom, Board, Column
from setwright.solver.search.candidates import Candidates
from setwright.solver.evaluation.week import Entry, Week


def opened_with(board: Board, candidates: Candidates, start: Week | None) -> tuple[Candidates, frozenset[int]]:
    """The candidates with the columns of a week among them, and which those are; none if the board lacks any."""
    found = columns_of(board, start) if start else ()
    if not found:
        return candidates, frozenset()
    columns, places = list(candidates.columns), {column: j for j, column in enumerate(candidates.columns)}
    ranked = [list(day) for day in candidates.ranked]
    for column in found:
        if column not in places:
            places[column] = len(columns)
            columns.append(column)
            ranked[column.cell].append(places[column])
    wider = Candidates(tuple(columns), tuple(tuple(day) for day in ranked), candidates.must)
    return wider, frozenset(places[column] for column in found)


def columns_of(board: Board, week: Week) -> tuple[Column, ...]:
    """The columns that make a week on a board; empty where an exercise or the way it is done is not open there."""
    found: list[Column] = []
    for day, entries in enumerate(week.days[: len(board.terms.days)]):
        atoms = {entry.exercise: atom_of(board, day, entry) for entry in entries}
        for entry in entries:
            pair = [atoms[entry.exercise], *([atoms.get(entry.partner)] if entry.partner else [])]
            here = [atom for atom in pair if atom is not None]
            if len(here) < len(pair):
                return ()
            column = Column(day, tuple(sorted(here, key=lambda atom: atom.cls)))
            if column not in found:
                found.append(column)
    return tuple(found)


def atom_of(board: Board, day: int, entry: Entry) -> Atom | None:
    """One line as an atom of its class, if it is open that day."""
    wanted = (entry.sets, entry.rest, entry.technique, entry.drops, entry.partner is not None)
    for i, cls in enumerate(board.classes):
        if any(member.id == entry.exercise for member in cls.members):
            for option in cls.options[board.group_of[day]]:
                if (option.sets, option.rest, option.technique, option.drops, option.paired) == wanted:
                    return Atom(i, option)
    return None
