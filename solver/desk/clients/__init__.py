"""The pages of the clients: all of them with what is due, and each by itself."""

from __future__ import annotations

from typing import Final

from starlette.routing import Route

from setwright.solver.desk.clients.all_clients import add, show_all
from setwright.solver.desk.clients.client import show
from setwright.solver.desk.forms import with_form

ROUTES: Final = (
    Route("/", show_all),
    Route("/clients", with_form(add), methods=["POST"]),
    Route("/clients/{code}", show),
)
