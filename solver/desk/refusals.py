"""The answers to what cannot be done: why, and what to do next, as a page, as a part of one or as JSON."""

from __future__ import annotations

from typing import Final
from urllib.parse import urlsplit

from starlette.exceptions import HTTPException
from starlette.requests import Request
from starlette.responses import Response

from setwright.catalogue.faults import Fault, SetwrightError
from setwright.solver.book.clients import UnknownClient
from setwright.solver.desk.pages import page
from setwright.solver.desk.searches.task import told_of

GONE: Final = "is not in this book: the client was erased, or never written down"
GONE_REMEDY: Final = "nothing was written; the first page shows who is in the book"


def faults_of(error: SetwrightError) -> list[dict[str, str]]:
    """The faults of an error as the desk says them."""
    if isinstance(error, UnknownClient):
        return [told_of(Fault(error.faults[0].where, GONE, GONE_REMEDY))]
    return [told_of(fault) for fault in error.faults]


def refused(request: Request, error: Exception) -> Response:
    """The answer to an error that was raised on purpose: every fault with its place and its remedy."""
    assert isinstance(error, SetwrightError)
    document = {"faults": faults_of(error)}
    if request.headers.get("hx-request") is not None:
        return page(request, "faults.html", document, 422)
    acted = request.method != "GET"
    return page(request, "refused.html", document, 422, acted=acted, before=_page_before(request))


def missing(request: Request, error: Exception) -> Response:
    """The page of an address that leads nowhere, or of an act that it does not know."""
    assert isinstance(error, HTTPException)
    return page(request, "missing.html", {"faults": [told_of(Fault("address", error.detail))]}, error.status_code)


def _page_before(request: Request) -> str | None:
    """The path of the desk's own page that a browser comes from; None where that is not known, or this very address."""
    said = urlsplit(request.headers.get("referer", ""))
    here = request.url
    if (said.scheme, said.netloc) != (here.scheme, here.netloc) or said.path == here.path:
        return None
    return f"{said.path}?{said.query}" if said.query else said.path
