"""The search that a form names, as an act on what it found needs it: ended, and the client's own."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any

from starlette.requests import Request

from setwright.catalogue.faults import Fault, UsageFault
from setwright.solver.book.clients import Client, client_of
from setwright.solver.book.opened import Book
from setwright.solver.desk.desk import Desk
from setwright.solver.desk.forms import Fields
from setwright.solver.desk.searches.search import Search


def ended_search(desk: Desk, fields: Fields, what: str = "week") -> Search:
    """The search that a form names in `found`, once it has ended; raises UsageFault. `what` is what it looked for."""
    search = desk.crew.search(fields.get("found", ""))
    if search is None:
        raise UsageFault(Fault(what, "the search that found it is forgotten", "find one anew"))
    if not search.told.ended:
        raise UsageFault(Fault(what, "is still being searched for", "stop the search, or wait for its end"))
    return search


def is_theirs(week: Mapping[str, Any], code: str) -> bool:
    """Whether a week's document was planned for a client: one of a comparison may be of another's brief."""
    return week["brief"].get("client", {}).get("code", "") in ("", code)


def client_of_search(book: Book, request: Request, search: Search, what: str = "week") -> Client:
    """The client of an address; raises UsageFault where a search was another's."""
    client = client_of(book, request.path_params["code"])
    if search.asker != client.code:
        said = f"was found for @{search.asker}, not for @{client.code}"
        raise UsageFault(Fault(what, said, f"find one for @{client.code}"))
    return client
