"""The lines of a session in the gym: as planned, each set filled in with its target, or as they were done."""

from __future__ import annotations

from collections.abc import Iterator
from itertools import groupby
from typing import Any

from setwright.catalogue.entries import Catalogue, Exercise
from setwright.solver.evaluation.evaluated_week import Line
from setwright.solver.log.values import LoggedSession, LoggedSet
from setwright.solver.records.logs.session_at_hand import SessionAtHand
from setwright.solver.sheets.common.words import BREATH
from setwright.solver.sheets.document.card_labels import line_labels
from setwright.solver.sheets.screen.progress.next_table import next_row
from setwright.solver.uses.progress.next_targets import NextTarget


def planned_lines(hand: SessionAtHand) -> Iterator[dict[str, Any]]:
    """The lines of a session, each set filled in with its target."""
    labels = line_labels(hand.evaluated, hand.day)
    for place, (line, target) in enumerate(zip(hand.evaluated.on[hand.day], hand.targets, strict=True)):
        _, last, next_words, why = next_row(target, line.exercise)
        yield {
            **_head(line.exercise),
            "label": str(labels[place]),
            "target": next_words,
            "last": last,
            "why": why,
            "rest": line.entry.rest,
            "finds": target.load is None and line.exercise.has_load,
            "sets": list(_target_sets(line, target)),
        }


def _target_sets(line: Line, target: NextTarget) -> Iterator[dict[str, Any]]:
    scale = BREATH if line.exercise.timed else 1
    for number, aim in enumerate(target.aims, 1):
        load = "" if target.load is None else f"{target.load.load:g}"
        yield _set(number, load, scale * aim, target.rir)


def done_lines(session: LoggedSession, catalogue: Catalogue) -> list[dict[str, Any]]:
    """The lines of a session as it was logged, its sets marked as done."""
    lines = []
    for lift, sets in groupby(session.sets, key=lambda done: done.exercise):
        exercise = catalogue.exercises[lift]
        held = [_done_set(place, done, exercise) for place, done in enumerate(sets, 1)]
        lines.append({**_head(exercise), **_unplanned(), "sets": held})
    return lines


def _done_set(place: int, done: LoggedSet, exercise: Exercise) -> dict[str, Any]:
    scale = BREATH if exercise.timed else 1
    load = "" if done.load is None else f"{done.load:g}"
    left = "" if done.rir is None else done.rir
    ended = "" if done.ended is None else done.ended.isoformat()
    return {**_set(place, load, scale * done.reps, left), "done": True, "ended": ended, "side": done.side or ""}


def _set(number: int, load: str, reps: int | str, left: int | str) -> dict[str, Any]:
    return {"number": number, "load": load, "reps": reps, "left": left, "done": False, "ended": "", "side": ""}


def _head(exercise: Exercise) -> dict[str, Any]:
    return {"lift": exercise.id, "name": exercise.name, "timed": exercise.timed, "has_load": exercise.has_load}


def _unplanned() -> dict[str, Any]:
    return {"label": "", "target": "", "last": "", "why": "", "rest": 0, "finds": False}


def empty_line() -> dict[str, Any]:
    """A lift that is added in the gym: its name is written, and its first set."""
    head = {"lift": "", "name": "", "timed": False, "has_load": True}
    return {**head, **_unplanned(), "sets": [_set(1, "", "", "")]}
