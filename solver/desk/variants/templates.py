"""All templates that are kept, and the act that writes one down."""

from __future__ import annotations

from typing import Any

from starlette.datastructures import UploadFile
from starlette.requests import Request
from starlette.responses import Response

from setwright.catalogue.faults import Fault, UsageFault
from setwright.catalogue.toml_text import decoded
from setwright.solver.desk.desk import desk_of
from setwright.solver.desk.forms import Fields
from setwright.solver.desk.pages import go_to, page
from setwright.solver.desk.variants.shelf import Shelf, safe_name, shelf_of, usual_name
from setwright.solver.search.limits import DEFAULT
from setwright.solver.uses.variants.result_store import MANIFEST
from setwright.solver.uses.variants.template import MOST_BYTES

SCHEMA = "setwright.templates/1"
EXAMPLE = """title = "Weeks by time"
name = "{days} x {minutes}, {kit}"

[vary]
days = [2, 3]
minutes = [30, 45, 60]

[vary.kits]
barbell = "barbell-garage"
dumbbells = "home-dumbbells"

[brief]
goal = "balanced"
"""


def show_all(request: Request) -> Response:
    """Every template that is kept."""
    shelf = shelf_of(desk_of(request))
    document = {"schema": SCHEMA, "templates": [_row(shelf, name) for name in shelf.names()], "example": EXAMPLE}
    return page(request, "variants/templates.html", document)


def add(request: Request, fields: Fields) -> Response:
    """Write down a template, pasted or sent as a file; raises UsageFault with every fault of it."""
    shelf = shelf_of(desk_of(request))
    text = _sent(request) or fields.get("template", "").replace("\r\n", "\n")
    if not text.strip():
        raise UsageFault(Fault("template", "is empty", "paste a template, or choose its file"))
    said = fields.get("name", "")
    name = safe_name(said) if said.strip() else usual_name(text)
    faults = []
    if not name:
        faults.append(Fault("name", f"got {said[:40]!r}, expected letters or digits", "write another name"))
    try:
        shelf.matrix_of_text(text, DEFAULT)
    except UsageFault as error:
        faults += error.faults
    if faults:
        raise UsageFault(faults)
    shelf.add(name, text)
    return go_to(request, f"/templates/{name}")


def _sent(request: Request) -> str:
    """The file that a form sent, as text; empty where none was chosen. Raises UsageFault."""
    upload = request.state.form.get("file")
    if not isinstance(upload, UploadFile) or not upload.filename:
        return ""
    data = upload.file.read(MOST_BYTES + 1)
    if len(data) > MOST_BYTES:
        raise UsageFault(Fault("file", "is larger than 1 MB, expected a template of a page", "choose the template"))
    return decoded(data, "file", UsageFault)


def _row(shelf: Shelf, name: str) -> dict[str, Any]:
    """One template: its name, title and number of variants, or what is wrong with it."""
    try:
        matrix = shelf.matrix(name, DEFAULT)
    except UsageFault as error:
        return {"name": name, "title": "", "variants": None, "fault": str(error), "run": False}
    run = (shelf.results(name).folder / MANIFEST).exists()
    return {"name": name, "title": matrix.title, "variants": len(matrix.variants), "fault": "", "run": run}
