"""What is known of lifts, held against the catalogue: whether a load can be reckoned from it at all."""

from __future__ import annotations

from collections.abc import Iterator

from setwright.catalogue.entries import Catalogue, Exercise
from setwright.catalogue.faults import Fault
from setwright.solver.brief.defaults import MOST_PAIRS
from setwright.solver.brief.schema import Brief, LiftAsk


def lift_faults(brief: Brief, catalogue: Catalogue) -> Iterator[Fault]:
    """A fault for each lift without a load to choose, each set or maximum that says no load, and too many plates."""
    for name, ask in (brief.lifts or {}).items():
        exercise = catalogue.exercises.get(name)
        where = f"lifts.{name}"
        if exercise is not None:
            yield from _of_exercise(where, exercise, brief.client.unit)
        yield from _of_set(where, ask, round(catalogue.number("brzycki-pole")))
    pairs = len(brief.owned.plates)
    if brief.lifts is not None and pairs > MOST_PAIRS:
        yield Fault("owned.plates", f"got {pairs} pairs, expected {MOST_PAIRS} at most", "drop those that stay unused")


def _of_exercise(where: str, exercise: Exercise, unit: str) -> Iterator[Fault]:
    remedy = "leave it out, its card says the repetitions"
    if not exercise.has_load:
        yield Fault(where, f"{exercise.name} has no load in {unit} to choose", remedy)
    elif exercise.timed:
        yield Fault(where, f"{exercise.name} is held for a time, a load is reckoned from repetitions only", remedy)


def _of_set(where: str, ask: LiftAsk, pole: int) -> Iterator[Fault]:
    parts = [name for name in ("load", "reps", "rir") if getattr(ask, name) is not None]
    if ask.maximum is not None and parts:
        yield Fault(where, f"names a maximum and {parts[0]} too", "say a set, or the maximum alone")
    elif ask.maximum is None and (ask.load is None or ask.reps is None):
        lacks = " and ".join(name for name in ("load", "reps") if getattr(ask, name) is None)
        yield Fault(where, f"lacks {lacks}, expected a set or a maximum", "write '80x8', or { maximum = 120 }")
    elif ask.reps is not None and ask.reps + (ask.rir or 0) >= pole:
        said = f"{ask.reps} repetitions" + (f" with {ask.rir} left" if ask.rir else "")
        remedy = "name a set of 12 repetitions or fewer"
        yield Fault(where, f"got {said}, expected fewer than {pole} in all: no formula holds from there on", remedy)
