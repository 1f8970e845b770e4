"""The pages of a week that life got into: what happened, the week found for what is left, kept or left."""

from __future__ import annotations

from typing import Final

from starlette.routing import Route

from setwright.solver.desk.forms import with_form
from setwright.solver.desk.replan.happened import keep, replan, show

ROUTES: Final = (
    Route("/clients/{code}/replan", show),
    Route("/clients/{code}/replan", with_form(replan), methods=["POST"]),
    Route("/clients/{code}/replan/keep", with_form(keep), methods=["POST"]),
)
