"""What was done to a client told to every window that shows them, taken back and done again."""

from __future__ import annotations

from typing import Final

from starlette.routing import Route

from setwright.solver.desk.changes.turned import again, back
from setwright.solver.desk.changes.watched import changes
from setwright.solver.desk.forms import with_form

ROUTES: Final = (
    Route("/clients/{code}/changes", changes),
    Route("/clients/{code}/back", with_form(back), methods=["POST"]),
    Route("/clients/{code}/again", with_form(again), methods=["POST"]),
)
