"""A session as it is written down in the gym: big rows of sets filled in with their targets, or with what was done."""

from __future__ import annotations

import secrets
from collections.abc import Iterator
from datetime import date
from itertools import groupby
from typing import Any

from starlette.requests import Request
from starlette.responses import Response

from setwright.catalogue.entries import Catalogue, Exercise
from setwright.catalogue.faults import Fault, UsageFault
from setwright.solver.book.clients import Client, client_of
from setwright.solver.book.opened import Book
from setwright.solver.book.sessions import sessions_of
from setwright.solver.desk.clock import today
from setwright.solver.desk.desk import desk_of
from setwright.solver.desk.pages import page
from setwright.solver.desk.weeks.dates import date_said
from setwright.solver.evaluation.evaluated_week import Line
from setwright.solver.log.values import LoggedSession, LoggedSet
from setwright.solver.records.logs.session_at_hand import SessionAtHand, session_at_hand
from setwright.solver.sheets.common.words import BREATH, day_name
from setwright.solver.sheets.document.card_labels import line_labels
from setwright.solver.sheets.document.progress.next_document import next_document
from setwright.solver.sheets.screen.progress.next_table import next_row
from setwright.solver.uses.progress.next_targets import NextTarget

TODAY = "today"


def show_session(request: Request) -> Response:
    """The session of a day to write down; with ?anew=1 the one that stands there, to be written in its place."""
    desk, on, query = desk_of(request), day_of(request), request.query_params
    number = int(query["session"]) if query.get("session", "").isdecimal() else None
    with desk.book() as book:
        client = client_of(book, request.path_params["code"])
        standing = _standing(book, client, on, number, query.get("started")) if "anew" in query else None
        hand = session_at_hand(book, client, desk.catalogue, on, None if standing else number)
    document = next_document(hand.targets, hand.evaluated, client.unit, on) if hand else _nothing(client, on)
    planned = list(_planned_lines(hand)) if hand and standing is None else []
    more: dict[str, Any] = {
        "code": client.code,
        "on": on,
        "key": secrets.token_urlsafe(12),
        "unit": client.unit,
        "lines": _done_lines(standing, desk.catalogue) if standing else planned,
        "empty": _empty_line(),
        "standing": standing,
        "choices": _choices(hand) if hand and standing is None else [],
        "number": _number(hand, standing),
        "names": sorted(exercise.name for exercise in desk.catalogue.exercises.values()),
    }
    return page(request, "log/gym.html", document, **more)


def day_of(request: Request) -> date:
    """The day that an address names, a date or `today`; raises UsageFault."""
    said = request.path_params["day"]
    return today() if said == TODAY else date_said(said, "day")


def _nothing(client: Client, on: date) -> dict[str, Any]:
    """The document of a day for which nothing is planned."""
    return {"schema": "setwright.next/1", "on": on.isoformat(), "unit": client.unit, "lines": []}


def _number(hand: SessionAtHand | None, standing: LoggedSession | None) -> int | None:
    """The number of the session in its week, where the log has one or the week is planned."""
    if standing is not None:
        return standing.session
    return None if hand is None else hand.day + 1


def _choices(hand: SessionAtHand) -> list[dict[str, Any]]:
    """The week's sessions: number, name, when it was done, whether it is the one shown."""
    days = hand.evaluated.resolved.days
    return [
        {"number": day.index + 1, "name": day_name(day), "done": hand.done_on[day.index], "here": day.index == hand.day}
        for day in days
        if hand.evaluated.on[day.index]
    ]


def _planned_lines(hand: SessionAtHand) -> Iterator[dict[str, Any]]:
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


def _done_lines(session: LoggedSession, catalogue: Catalogue) -> list[dict[str, Any]]:
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


def _empty_line() -> dict[str, Any]:
    """A lift that is added in the gym: its name is written, and its first set."""
    head = {"lift": "", "name": "", "timed": False, "has_load": True}
    return {**head, **_unplanned(), "sets": [_set(1, "", "", "")]}


def _standing(book: Book, client: Client, on: date, number: int | None, started: str | None) -> LoggedSession:
    """The session that stands on a day; raises UsageFault where none does."""
    for session in sessions_of(book, client):
        clock = None if session.session or session.started is None else f"{session.started:%H:%M}"
        if session.on == on and session.session == number and clock == started:
            return session
    raise UsageFault(Fault("session", f"none is logged there on {on}", "see the log"))
