"""The brief of a client: a form of its fields and a phrase beside it, each filled from the other."""

from __future__ import annotations

from typing import Final

from starlette.routing import Route

from setwright.solver.desk.brief.page import read, save, show
from setwright.solver.desk.forms import with_form

ROUTES: Final = (
    Route("/clients/{code}/brief", show),
    Route("/clients/{code}/brief", with_form(save), methods=["POST"]),
    Route("/clients/{code}/brief/read", with_form(read, writes=False), methods=["POST"]),
)
