"""The page of a conflict: what was done to the client since the form's page was shown, and what can be done now."""

from __future__ import annotations

from urllib.parse import unquote

from starlette.datastructures import UploadFile
from starlette.requests import Request
from starlette.responses import Response

from setwright.solver.desk.pages import page, page_shown
from setwright.solver.desk.searches.task import told_of
from setwright.solver.desk.stamp import FIELD, Conflict


def conflicting(request: Request, error: Exception) -> Response:
    """What was changed, with the form's own fields ready to be sent again; a file must be chosen anew."""
    assert isinstance(error, Conflict)
    sent = list(request.state.form_items) if hasattr(request.state, "form_items") else []
    fields = [(name, value) for name, value in sent if isinstance(value, str) and name != FIELD]
    files = any(isinstance(value, UploadFile) and value.filename for _, value in sent)
    fragment = request.headers.get("hx-request") is not None
    document = {**error.document(), "faults": [told_of(fault) for fault in error.faults]}
    more = {"fields": fields, "files": files, "code": error.code, "shown": _shown(request, error.code)}
    more["target"] = request.headers.get("hx-target", "")
    return page(request, f"changes/{'conflict_part' if fragment else 'conflict'}.html", document, 409, **more)


def _shown(request: Request, code: str) -> str:
    """The address of the page that acted, else the client's own."""
    path = unquote(page_shown(request)) if request.headers.get("hx-request") else ""
    return path if path.startswith(f"/clients/{code}") else f"/clients/{code}"
