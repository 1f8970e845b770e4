"""A session from the gym taken into the book: once, and never in the place of another unless the coach says so."""

from __future__ import annotations

from dataclasses import dataclass, replace
from typing import Final

from starlette.requests import Request
from starlette.responses import Response

from setwright.catalogue.faults import Fault, UsageFault
from setwright.solver.book.clients import Client, client_of
from setwright.solver.book.opened import Book
from setwright.solver.book.sessions import Kept, log_sessions, sessions_of, was_taken
from setwright.solver.desk.clock import today
from setwright.solver.desk.desk import Desk, desk_of
from setwright.solver.desk.forms import Fields
from setwright.solver.desk.log.drafts import refuse_another
from setwright.solver.desk.log.gym import day_of
from setwright.solver.desk.log.session_form import session_of
from setwright.solver.desk.pages import go_to, page, wants_json
from setwright.solver.log.values import LoggedSession
from setwright.solver.records.logs.session_at_hand import session_at_hand
from setwright.solver.records.logs.written_log import kept_words
from setwright.solver.sheets.document.progress.log_model import log_document
from setwright.solver.sheets.screen.over_time.log import lift_rows, session_facts, session_title

SCHEMA: Final = "setwright.session-taken/1"
HOW: Final = ("", "add", "replace")
"""What is to be done where another session stands: ask, write the sets after its own, or write in its place."""
LONGEST_ID: Final = 80


@dataclass(frozen=True)
class Conflict:
    """A session that stands where another is to be written, and that other."""

    standing: LoggedSession
    typed: LoggedSession


def take_session(request: Request, fields: Fields) -> Response:
    """Write a session down once, whatever its `id`; asks where a different one stands there. Raises UsageFault."""
    desk, on = desk_of(request), day_of(request)
    how, key = fields.get("how", ""), fields.get("id", "").strip()
    if how not in HOW or not 0 < len(key) <= LONGEST_ID:
        raise UsageFault(Fault("session", "was sent without its mark", "open the page anew"))
    with desk.book() as book:
        client = client_of(book, request.path_params["code"])
        refuse_another(client, fields)
        session = session_of(fields, on, desk.catalogue, client.unit, today())
        with book.writing():
            found = _written(book, client, desk, session, how, f"a session from the gym, {key}".encode())
    if isinstance(found, Conflict):
        return _asked(request, desk, fields, found)
    if not wants_json(request):
        return go_to(request, f"/clients/{client.code}/log")
    counts = {"written": found.written, "there_already": found.there_already, "replaced": found.replaced}
    said = kept_words(client.code, found)
    return page(request, "", {"schema": SCHEMA, "state": "taken", **counts, "said": said, "sets": len(session.sets)})


def _written(book: Book, client: Client, desk: Desk, session: LoggedSession, how: str, mark: bytes) -> Kept | Conflict:
    """What became of a session, or that another stands there."""
    if was_taken(book, client, mark):
        return Kept(0, 1, 0)
    standing = _standing(book, client, desk, session)
    if standing is None or _same(standing, session):
        whole = session if standing is None else standing
    elif how == "add":
        whole = standing.followed_by(session)
    elif how == "replace":
        started = session.started if standing.session else standing.started
        whole = replace(session, session=standing.session, started=started)
    else:
        return Conflict(standing, session)
    return log_sessions(book, client, [whole], source=mark, replace=how != "", once=True)


def _standing(book: Book, client: Client, desk: Desk, session: LoggedSession) -> LoggedSession | None:
    """The session of that day that stands for the same one of the week, the last where there are several."""
    held = [one for one in sessions_of(book, client) if one.on == session.on]
    hand = session_at_hand(book, client, desk.catalogue, session.on, session.session) if held else None
    if hand is None:
        return held[-1] if held else None
    return next((one for one in reversed(held) if hand.is_of_it(one)), None)


def _same(one: LoggedSession, other: LoggedSession) -> bool:
    """Whether two sessions say the same, however they are numbered."""
    return replace(one, session=None, started=None) == replace(other, session=None, started=None)


def _asked(request: Request, desk: Desk, fields: Fields, found: Conflict) -> Response:
    """The question what is to be done, with both sessions in words; nothing was written."""
    words = [
        {"title": session_title(one), "facts": session_facts(one), "lifts": lift_rows(one, desk.catalogue)}
        for one in (found.standing, found.typed)
    ]
    said = (
        f"another session of {found.typed.on} is in the book: {session_facts(found.standing)}; the one typed here has "
        f"{session_facts(found.typed)}"
    )
    document = {
        "schema": SCHEMA,
        "state": "conflict",
        "said": said,
        "standing": log_document([found.standing])["sessions"][0],
        "typed": log_document([found.typed])["sessions"][0],
    }
    more = {"code": request.path_params["code"], "words": words, "fields": dict(fields), "path": request.url.path}
    return page(request, "log/conflict.html", document, 409, **more)
