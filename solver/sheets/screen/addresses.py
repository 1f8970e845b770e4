"""Where a line stands, as a person writes it: mon:A, mon:B1, 2:A, or the day with an exercise."""

from __future__ import annotations

from setwright.catalogue.faults import Fault, UsageFault
from setwright.catalogue.near import nearest
from setwright.solver.brief.defaults import WEEKDAY_NAMES
from setwright.solver.brief.phrase.lexicon import lexicon_of
from setwright.solver.evaluation.evaluated_week import EvaluatedWeek, Line
from setwright.solver.evaluation.resolved_brief import ResolvedBrief
from setwright.solver.evaluation.resolved_day import ResolvedDay
from setwright.solver.sheets.common.words import day_name, listed
from setwright.solver.sheets.document.card_labels import line_labels

FORM = "write the day and the line as mon:A, mon:B1 or mon:EXERCISE (1:A for sessions without weekdays)"


def line_at(evaluated: EvaluatedWeek, address: str) -> Line:
    """The line that an address names; raises UsageFault, which lists what there is, where it names none."""
    day_word, colon, word = (part.strip() for part in address.partition(":"))
    if not colon or not word:
        raise UsageFault(Fault("entry", f"got {address!r}, expected a day and a line", FORM))
    day = day_at(evaluated.resolved, day_word)
    lines = evaluated.on[day.index]
    labels = [str(label) for label in line_labels(evaluated, day.index)]
    for label, line in zip(labels, lines, strict=True):
        if word.upper() == label or word == line.exercise.id:
            return line
    found = lexicon_of(evaluated.resolved.catalogue).resolve(word, ("exercise",))
    for line in lines:
        if found and found[1] == line.exercise.id:
            return line
    near = nearest(word, [name for line in lines for name in (line.exercise.id, line.exercise.name)])
    there = listed(f"{label} {line.exercise.name}" for label, line in zip(labels, lines, strict=True))
    remedy = f"did you mean '{day_word}:{near}'?" if near else f"there are {there}" if there else "the day is empty"
    raise UsageFault(Fault("entry", f"{day.name} has no line {word!r}", remedy))


def day_at(resolved: ResolvedBrief, word: str, where: str = "entry") -> ResolvedDay:
    """The day that a word names: mon, monday or the session's number; raises UsageFault where it names none."""
    small = word.lower()
    for day in resolved.days:
        if small in (_day_address(day), str(day.index + 1)) or (small in WEEKDAY_NAMES and small[:3] == day.weekday):
            return day
    there = [_day_address(day) for day in resolved.days]
    near = nearest(small, [*there, *(day_name(day).lower() for day in resolved.days if day.weekday)])
    meant = f"did you mean {near!r}? " if near else ""
    raise UsageFault(Fault(where, f"the week has no day {word!r}", f"{meant}expected {listed(there, 'or')}"))


def _day_address(day: ResolvedDay) -> str:
    """mon, or 1 for a session without a weekday."""
    return day.weekday or str(day.index + 1)


def address(evaluated: EvaluatedWeek, line: Line) -> str:
    """A line's address, such as mon:A."""
    return f"{_day_address(line.day)}:{line_labels(evaluated, line.day.index)[line.place]}"
