"""One template: what it makes, how its variants stand, and the acts that change and run it."""

from __future__ import annotations

from typing import Any, Final

from starlette.requests import Request
from starlette.responses import Response

from setwright.catalogue.faults import Fault, UsageFault
from setwright.solver.brief.defaults import MOST_WEEKS_SHOWN
from setwright.solver.desk.desk import Desk, desk_of
from setwright.solver.desk.field_values import effort_said
from setwright.solver.desk.forms import Fields
from setwright.solver.desk.pages import go_to, page
from setwright.solver.desk.searches.search import Search
from setwright.solver.desk.searches.task import told_of
from setwright.solver.desk.variants.shelf import Shelf, digest_of, shelf_of
from setwright.solver.search.limits import SEARCHES
from setwright.solver.sheets.variants.matrix_document import matrix_document
from setwright.solver.sheets.variants.plan_screen import duration, plan_document
from setwright.solver.sheets.variants.variant_rows import read_variant_rows
from setwright.solver.uses.variants.expected_time import expected_seconds
from setwright.solver.uses.variants.manifest import read_earlier

SCHEMA: Final = "setwright.template/1"
DIGEST: Final = "digest"
"""The field of a form that says which text its page showed."""
QUICK: Final = "quick"


def show(request: Request) -> Response:
    """A template, its text and its grid as far as it was run."""
    name: str = request.path_params["name"]
    desk = desk_of(request)
    shelf = shelf_of(desk)
    text, faults = shelf.text(name), []
    try:
        matrix = shelf.matrix(name, QUICK)
        every = range(len(matrix.variants))
        plan: dict[str, Any] | None = plan_document(matrix, QUICK, 1, expected_seconds(matrix, every, QUICK, 1))
        times = {effort: duration(expected_seconds(matrix, every, effort, 1)) for effort in SEARCHES}
    except UsageFault as error:
        plan, times = None, {}
        faults = [told_of(fault) for fault in error.faults]
    running = _running(desk, name)
    document = {
        "schema": SCHEMA,
        "name": name,
        "template": text,
        "digest": digest_of(text),
        "faults": faults,
        "plan": plan,
        "expected": times,
        "matrix": _standing(shelf, name),
        "matrix_of": shelf.run_of(name),
        "running": None if running is None else running.id,
    }
    return page(request, "variants/template.html", document, efforts=tuple(SEARCHES))


def save(request: Request, fields: Fields) -> Response:
    """Change a template's text; raises UsageFault with every fault of it, and then keeps the old text."""
    name: str = request.path_params["name"]
    desk = desk_of(request)
    shelf = shelf_of(desk)
    shelf.text(name)
    text = fields.get("template", "").replace("\r\n", "\n")
    shelf.matrix_of_text(text, QUICK, name)
    with desk.turn(_asker(name)):
        shelf.change(name, fields.get(DIGEST, ""), text)
    return go_to(request, f"/templates/{name}")


def run(request: Request, fields: Fields) -> Response:
    """Begin to solve what a template's folder does not hold yet; raises UsageFault for too many variants.

    While one run of a template goes on no other of it begins: the page of that run is gone to.
    """
    name: str = request.path_params["name"]
    desk = desk_of(request)
    shelf = shelf_of(desk)
    effort = effort_said(fields, QUICK)
    with desk.turn(_asker(name)):
        text = shelf.check_shown(name, fields.get(DIGEST, ""))
        count = len(shelf.matrix_of_text(text, effort, name).variants)
        if count > MOST_WEEKS_SHOWN:
            said = f"makes {count} variants, at most {MOST_WEEKS_SHOWN} are run here"
            remedy = "leave some out with [[exclude]], or part the template"
            raise UsageFault(Fault(f"template {name}", said, remedy))
        arguments = {"called": name, "template": text, "folder": str(shelf.results(name).folder)}
        search = _running(desk, name) or desk.crew.ask(
            _asker(name), desk.task("variants", search=effort, overlay=desk.overlay, **arguments)
        )
    return go_to(request, f"/searches/{search.id}")


def _asker(name: str) -> str:
    """Who asks for the runs of a template: no client's code has a space."""
    return f"template {name}"


def _running(desk: Desk, name: str) -> Search | None:
    """The run of a template that goes on or waits; None where there is none."""
    latest = desk.crew.latest(_asker(name), "variants")
    return None if latest is None or latest.told.ended else latest


def _standing(shelf: Shelf, name: str) -> dict[str, Any] | None:
    """The matrix as it was run last; None before the first run."""
    store = shelf.results(name)
    matrix = read_earlier(store.folder)
    return None if matrix is None else matrix_document(matrix, read_variant_rows(matrix, store))
