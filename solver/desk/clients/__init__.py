"""The pages of the clients: all of them with what is due, and each by itself."""

from __future__ import annotations

from typing import Final

from starlette.routing import Route

from setwright.solver.desk.clients.all_clients import add, show_all
from setwright.solver.desk.clients.book_file import download
from setwright.solver.desk.clients.client import erasing, export, name, resting, show
from setwright.solver.desk.forms import with_form

ROUTES: Final = (
    Route("/", show_all),
    Route("/clients", with_form(add), methods=["POST"]),
    Route("/book/backup", download),
    Route("/clients/{code}", show),
    Route("/clients/{code}/name", with_form(name), methods=["POST"]),
    Route("/clients/{code}/rest", with_form(resting), methods=["POST"]),
    Route("/clients/{code}/export", export),
    Route("/clients/{code}/erase", with_form(erasing), methods=["POST"]),
)
