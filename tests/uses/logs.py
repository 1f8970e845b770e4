"""Logs in compact form: "80x12,12,11" with the repetitions left as "@2,2,1"."""

from __future__ import annotations

from datetime import date, timedelta

from setwright.catalogue.load import load_catalogue
from setwright.solver.brief.schema import Unit
from setwright.solver.evaluation.week import Entry, Week
from setwright.solver.log.values import LoggedSession, LoggedSet
from setwright.solver.uses.loads.buildable import Kit
from setwright.solver.uses.loads.kits import usual_kit
from setwright.solver.uses.progress.next_targets import KitOf, NextTarget, next_targets

CATALOGUE = load_catalogue()
BENCH, CURL, RAISE = "barbell-bench-press", "dumbbell-curl", "dumbbell-side-raise"
FIRST = date(2026, 3, 2)


def sets_of(exercise: str, text: str) -> tuple[LoggedSet, ...]:
    """The sets of "80x12,12,11 @2,2,1"; without a load "x12,12", without what was left no "@"."""
    done, _, left = text.partition("@")
    load, _, reps = done.strip().partition("x")
    counts = [int(part) for part in reps.split(",")]
    rirs = [int(part) for part in left.split(",")] if left else [None] * len(counts)
    rirs = rirs * len(counts) if len(rirs) == 1 else rirs
    return tuple(
        LoggedSet(exercise, number, count, float(load) if load else None, rir)
        for number, (count, rir) in enumerate(zip(counts, rirs, strict=True), 1)
    )


def log_of(exercise: str, *texts: str, every: int = 4, unit: Unit = "kg") -> list[LoggedSession]:
    """One session for each text, some days apart."""
    return [
        LoggedSession(FIRST + timedelta(days=every * place), sets_of(exercise, text), unit=unit)
        for place, text in enumerate(texts)
    ]


def next_of(
    exercise: str,
    *texts: str,
    reps: tuple[int, int] = (8, 12),
    rir: int = 2,
    sets: int = 3,
    kit: Kit | None = None,
    after: int = 3,
    every: int = 4,
    technique: str = "straight",
) -> NextTarget:
    """The next target of one line after a log, so many days after its last session."""
    sessions = log_of(exercise, *texts, every=every)
    week = Week(((Entry(exercise, sets, reps, rir, 90, technique),),))
    on = (sessions[-1].on if sessions else FIRST) + timedelta(days=after)
    return next_targets(week, sessions, usual_kits(kit), CATALOGUE, "kg", on)[0]


def usual_kits(kit: Kit | None = None) -> KitOf:
    """One kit for every lift, or the usual ones."""
    return lambda exercise, day: kit or usual_kit(exercise, "kg", None, None)
