"""The next load and repetitions of every lift as a table for each day: last time, next time, and why."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from setwright.catalogue.entries import Catalogue, Exercise
from setwright.solver.evaluation.evaluated_week import EvaluatedWeek
from setwright.solver.sheets.common.caution import CAUTION
from setwright.solver.sheets.common.grid import grid
from setwright.solver.sheets.common.loads.load_words import FIND_IT, load_on_a_line
from setwright.solver.sheets.common.loads.said_loads import SaidLoads, said_load
from setwright.solver.sheets.common.words import day_name, page_width, wrapped
from setwright.solver.sheets.screen.progress.amounts import built_words, day_month, load_words, one_aim, sets_words
from setwright.solver.sheets.screen.progress.why_words import BY_REPS_ALONE, why_sentence
from setwright.solver.uses.progress.exposure import Exposure
from setwright.solver.uses.progress.next_targets import NextTarget

ALONE = f"{BY_REPS_ALONE} The log does not say how many repetitions were left: decided by the repetitions alone."
FIND = (
    "To find a load: begin with one that is easily lifted ten times, do the planned repetitions, and go up a step at a "
    "time with the planned rest until as many are left as are asked for. Write down the load and what was left."
)
FIRST_SET = "The first set decides: where it leaves fewer than asked, take the load down for the others."


def next_text(targets: Sequence[NextTarget], evaluated: EvaluatedWeek, width: int = 100) -> str:
    """A table for each day of the week, what its marks mean, and how far to trust it."""
    width = page_width(width)
    catalogue = evaluated.resolved.catalogue
    parts: list[list[str]] = []
    for day in evaluated.resolved.days:
        here = [target for target in targets if target.day == day.index]
        if here:
            parts.append([day_name(day), *_table(here, catalogue, width)])
    parts += [wrapped(said, width) for said in next_notes(targets, catalogue)]
    return "\n\n".join("\n".join(part) for part in parts) + "\n"


def _table(targets: Sequence[NextTarget], catalogue: Catalogue, width: int) -> list[str]:
    rows = [next_row(target, catalogue.exercises[target.exercise]) for target in targets]
    room = width - 6
    widest = [round(room * share) for share in (0.21, 0.22, 0.22)]
    return grid(["Lift", "Last time", "Next time", "Why"], rows, "llll", [*widest, room - sum(widest)])


def next_row(target: NextTarget, exercise: Exercise) -> list[str]:
    """A lift, what was done last time, what comes next time, and why."""
    return [
        exercise.name,
        "" if target.last is None else _last(target.last, target.unit, exercise),
        _next(target, exercise),
        why_sentence(target, exercise),
    ]


def _last(last: Exposure, unit: str, exercise: Exercise) -> str:
    """60 kg, 3 x 12, 2 left, 2 Mar."""
    said = [rir for rir in last.rirs if rir is not None]
    left = "" if not said else f"{min(said)} left" if min(said) == max(said) else f"{min(said)}-{max(said)} left"
    parts = (load_words(last.load, unit, exercise), sets_words(last.reps, exercise), left, day_month(last.on))
    return ", ".join(part for part in parts if part)


def _next(target: NextTarget, exercise: Exercise) -> str:
    """62.5 kg (20 + 1.25 a side), 3 x 8, 2 left."""
    load = "" if target.load is None else built_words(target.load, target.unit, exercise)
    return ", ".join(part for part in (load, sets_words(target.aims, exercise), f"{target.rir} left") if part)


def next_notes(targets: Sequence[NextTarget], catalogue: Catalogue) -> Iterator[str]:
    """What the marks mean, how a load is found, how far to trust it, and the caution."""
    if any(target.reason.by_reps_alone for target in targets):
        yield ALONE
    if any(target.reason.why in ("never-done", "load-unsaid") for target in targets):
        yield FIND
    yield f"{FIRST_SET} {left_more(catalogue)}"
    yield f"Caution: {CAUTION}"


def card_loads(evaluated: EvaluatedWeek, targets: Sequence[NextTarget]) -> SaidLoads:
    """What the card says of each line's load: 62.5 kg x 8, find it, 9 reps."""
    lines = [line for day in evaluated.on for line in day]
    said = {}
    for line, target in zip(lines, targets, strict=True):
        aims = one_aim(target.aims[0], line.exercise)
        if target.load is not None:
            words = f"{load_on_a_line(target.load.load, target.unit, line.exercise)} x {aims}"
        elif target.reason.why in ("never-done", "load-unsaid") and line.exercise.has_load:
            words = FIND_IT
        else:
            words = f"{aims} reps"
        load = None if target.load is None else target.load.load
        said[line.day.index, line.place] = said_load(words, line, load, evaluated)
    return said


def left_more(catalogue: Catalogue) -> str:
    """By how much people misjudge what they leave, with its source."""
    found = catalogue.evidence["halperin-2022-underprediction"]
    return (
        f"People leave on average about one repetition more than they say ({found.value:g}, {found.low:g} to "
        f"{found.high:g}; {found.source}); nothing here is corrected for it."
    )
