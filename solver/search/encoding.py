"""From a week to the columns that make it: the way back from `decoding`."""

from __future__ import annotations

from setwright.solver.evaluation.week import Entry, Week
from setwright.solver.linear.columns import Column, paired_column
from setwright.solver.linear.instance import Assignment, Instance


def columns_of(instance: Instance, week: Week) -> tuple[Column, ...]:
    """The columns that make a week, a pair as one column; empty where a line or its prescription is not open."""
    found: dict[Column, None] = {}
    for day, entries in enumerate(week.days[: len(instance.resolved.days)]):
        assignments = {entry.exercise: assignment_of(instance, day, entry) for entry in entries}
        for entry in entries:
            names = (entry.exercise,) if entry.partner is None else (entry.exercise, entry.partner)
            here = [assignment for name in names if (assignment := assignments.get(name)) is not None]
            if len(here) < len(names):
                return ()
            if len(here) == 2:
                found.setdefault(paired_column(instance, day, instance.like_of[day], (here[0], here[1])))
            else:
                found.setdefault(Column(day, tuple(here)))
    return tuple(found)


def assignment_of(instance: Instance, day: int, entry: Entry) -> Assignment | None:
    """The class and prescription that an entry was made from; None where they are not open on that day."""
    cls = instance.class_of.get(entry.exercise)
    if cls is None:
        return None
    wanted = (entry.sets, entry.rest, entry.technique, entry.drops, entry.partner is not None)
    for p in instance.classes[cls].prescriptions[instance.like_of[day]]:
        if (p.sets, p.rest, p.technique, p.drops, p.paired) == wanted:
            return Assignment(cls, p)
    return None


def open_entries(instance: Instance, week: Week) -> dict[tuple[int, int], Entry]:
    """(class, day) -> the week's entry, for the exercises that are open on their day; the first where two share one."""
    found: dict[tuple[int, int], Entry] = {}
    for day, entries in enumerate(week.days):
        for entry in entries:
            cls = instance.class_of.get(entry.exercise)
            if cls is not None and instance.classes[cls].prescriptions[instance.like_of[day]]:
                found.setdefault((cls, day), entry)
    return found
