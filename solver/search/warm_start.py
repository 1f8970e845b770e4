"""A search that starts from a week at hand: the columns of that week, opened among the candidates."""

from __future__ import annotations

from setwright.solver.evaluation.week import Entry, Week
from setwright.solver.linear.columns import Assignment, Column, Instance
from setwright.solver.search.candidates import Candidates


def opened_with(instance: Instance, candidates: Candidates, start: Week | None) -> tuple[Candidates, frozenset[int]]:
    """The candidates with the columns of a week among them, and which those are; none if the board lacks any."""
    found = columns_of(instance, start) if start else ()
    if not found:
        return candidates, frozenset()
    columns, places = list(candidates.columns), {column: j for j, column in enumerate(candidates.columns)}
    ranked = [list(day) for day in candidates.ranked]
    for column in found:
        if column not in places:
            places[column] = len(columns)
            columns.append(column)
            ranked[column.group].append(places[column])
    wider = Candidates(tuple(columns), tuple(tuple(day) for day in ranked), candidates.must)
    return wider, frozenset(places[column] for column in found)


def columns_of(instance: Instance, week: Week) -> tuple[Column, ...]:
    """The columns that make a week on a board; empty where an exercise or the way it is done is not open there."""
    found: list[Column] = []
    for day, entries in enumerate(week.days[: len(instance.resolved.days)]):
        assignments = {entry.exercise: assignment_of(instance, day, entry) for entry in entries}
        for entry in entries:
            pair = [assignments[entry.exercise], *([assignments.get(entry.partner)] if entry.partner else [])]
            here = [assignment for assignment in pair if assignment is not None]
            if len(here) < len(pair):
                return ()
            column = Column(day, tuple(sorted(here, key=lambda assignment: assignment.cls)))
            if column not in found:
                found.append(column)
    return tuple(found)


def assignment_of(instance: Instance, day: int, entry: Entry) -> Assignment | None:
    """One line as an atom of its class, if it is open that day."""
    wanted = (entry.sets, entry.rest, entry.technique, entry.drops, entry.partner is not None)
    for i, cls in enumerate(instance.classes):
        if any(member.id == entry.exercise for member in cls.members):
            for prescription in cls.prescriptions[instance.like_of[day]]:
                if (
                    prescription.sets,
                    prescription.rest,
                    prescription.technique,
                    prescription.drops,
                    prescription.paired,
                ) == wanted:
                    return Assignment(i, prescription)
    return None
