"""The pages of a client's weeks: found, kept, read."""

from __future__ import annotations

from typing import Final

from starlette.routing import Route

from setwright.solver.desk.forms import with_form
from setwright.solver.desk.weeks.find import find, keep
from setwright.solver.desk.weeks.kept import show

ROUTES: Final = (
    Route("/clients/{code}/find", with_form(find), methods=["POST"]),
    Route("/clients/{code}/keep", with_form(keep), methods=["POST"]),
    Route("/clients/{code}/weeks/{monday}", show),
)
