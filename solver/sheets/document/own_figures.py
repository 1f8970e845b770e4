"""Whether a document's week index and swaps are those of its own lines, or were changed by hand or by a new version."""

from __future__ import annotations

from collections.abc import Iterator
from itertools import chain

from setwright.catalogue.faults import Fault
from setwright.solver.evaluation.evaluated_week import EvaluatedWeek, Line
from setwright.solver.sheets.document.day_parts import swaps_digest
from setwright.solver.sheets.document.week_model import WeekDocument
from setwright.solver.uses.edits.substitutes import candidates, same_work

NEAR = 0.001
"""Index points between a document's week index and the one that its lines have."""
BY_WHAT_ELSE_IS_OPEN = ("close-press", "stand-in")
"""Rules that close an exercise while a better one is open: a caution that closes the better one opens it again, so that
they decide nothing where a document leaves its cautions out."""
STALE = (
    "plan it again, or name the catalogue file it was planned with: "
    "a week changed by hand, or made by another version, would print what is not its own"
)


def foreign_figures(document: WeekDocument, evaluated: EvaluatedWeek, where: str) -> list[Fault]:
    """A fault for the week index where the lines have another, and for each swap that is not the line's own."""
    return [*_index_faults(document, evaluated, where), *_swap_faults(document, evaluated, where)]


def _index_faults(document: WeekDocument, evaluated: EvaluatedWeek, where: str) -> Iterator[Fault]:
    place = f"{where}: stimulus"
    if "stimulus" not in document.model_fields_set:
        yield Fault(place, "is missing, expected the week index", "name a week that setwright wrote as JSON")
    elif abs(document.stimulus - evaluated.stimulus) > NEAR:
        yield Fault(place, f"says {document.stimulus:.2f}, the entries have {evaluated.stimulus:.2f}", STALE)


def _swap_faults(document: WeekDocument, evaluated: EvaluatedWeek, where: str) -> Iterator[Fault]:
    """Each swap that cannot be the line's own; where none can be named, that some are not as written."""
    lines = [[(line.exercise, line.swaps) for line in day.entries] for day in document.days]
    if document.swaps_digest == swaps_digest(lines):
        return
    found = list(_wrong_swaps(document, evaluated, where))
    yield from found
    if not found and document.swaps_digest is not None:
        yield Fault(f"{where}: swaps", "are not the ones that the week was written with", STALE)


def _wrong_swaps(document: WeekDocument, evaluated: EvaluatedWeek, where: str) -> Iterator[Fault]:
    """The swaps that no line of this week could have; what a caution closes is known where the document says it."""
    withheld = document.private_left_out
    for day, lines in zip(document.days, evaluated.on, strict=True):
        for said, line in zip(day.entries, lines, strict=True):
            able = {exercise.id for exercise in chain(*candidates(evaluated, line))}
            for place, swap in enumerate(said.swaps):
                why = _why_not(evaluated, line, swap, able, withheld)
                if why:
                    path = f"days[{line.day.index}].entries[{line.place}].swaps[{place}]"
                    yield Fault(f"{where}: {path}", f"{swap!r} {why}", STALE)


def _why_not(evaluated: EvaluatedWeek, line: Line, swap: str, able: set[str], withheld: bool) -> str:
    """What keeps an exercise from standing in for a line, or nothing."""
    exercise = evaluated.resolved.catalogue.exercises[swap]
    undecided = BY_WHAT_ELSE_IS_OPEN if withheld else ()
    closed_by = [rule for rule in evaluated.resolved.excluded_by(exercise, line.day) if rule not in undecided]
    if closed_by:
        return f"is closed on that day by {', '.join(closed_by)}"
    fits = swap in able or (withheld and same_work(evaluated, exercise, line.exercise))
    return "" if fits else f"cannot stand in for {line.exercise.id}"
