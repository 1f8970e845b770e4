"""The next load and repetitions of every line of a week, each with one reason."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from dataclasses import dataclass
from datetime import date

from setwright.catalogue.entries import Catalogue, Exercise
from setwright.solver.brief.schema import Unit
from setwright.solver.evaluation.week import Week
from setwright.solver.log.values import LoggedSession
from setwright.solver.uses.loads.buildable import Built, Kit
from setwright.solver.uses.progress.case import Case
from setwright.solver.uses.progress.exposure import Exposure, exposures_of_line
from setwright.solver.uses.progress.ladder import Ladder
from setwright.solver.uses.progress.matching import refuse_other_units
from setwright.solver.uses.progress.numbers import ProgressNumbers
from setwright.solver.uses.progress.reason import Reason
from setwright.solver.uses.progress.rules import decide

KitOf = Callable[[Exercise, int], Kit | None]
"""The loads that can be built for an exercise on a day (its index); None for body weight and bands."""


@dataclass(frozen=True)
class NextTarget:
    """What to do on one line next time."""

    exercise: str
    day: int
    """The index of the day in the week."""
    sets: int
    aims: tuple[int, ...]
    """The repetitions aimed at in each set, as the catalogue counts the lift."""
    reps: tuple[int, int]
    """The planned range."""
    rir: int
    """The repetitions to leave in reserve."""
    load: Built | None
    """None where there is none to set, where it is to be found, or where nothing so light can be built."""
    unit: Unit
    reason: Reason
    last: Exposure | None
    """The session it goes on from."""


def next_targets(
    week: Week,
    sessions: Sequence[LoggedSession],
    kit_of: KitOf,
    catalogue: Catalogue,
    unit: Unit,
    on: date,
) -> tuple[NextTarget, ...]:
    """The next target of every line in the week's order, for sessions that are done on `on` or soon after.

    Raises UsageFault where logged loads are in another unit than `unit`, with every such session.
    """
    refuse_other_units(sessions, unit)
    numbers = ProgressNumbers.of(catalogue)
    known = [session for session in sessions if session.on <= on]
    found: list[NextTarget] = []
    for day, entries in enumerate(week.days):
        for entry in entries:
            exercise = catalogue.exercises[entry.exercise]
            kit = kit_of(exercise, day)
            past = exposures_of_line(known, entry, exercise, day, week)
            ladder = None if kit is None else Ladder(exercise, kit, numbers)
            decision = decide(Case(entry, exercise, past, ladder, on, numbers))
            found.append(
                NextTarget(
                    exercise=entry.exercise,
                    day=day,
                    sets=entry.sets,
                    aims=decision.aims,
                    reps=entry.reps,
                    rir=entry.rir,
                    load=decision.load,
                    unit=unit,
                    reason=decision.reason,
                    last=past[-1] if past else None,
                )
            )
    return tuple(found)
