"""The pages of templates: kept as files beside the book, run as searches, shown as grids of their variants."""

from __future__ import annotations

from typing import Final

from starlette.routing import Route

from setwright.solver.desk.forms import with_form
from setwright.solver.desk.variants.grid import FILTERS, styles
from setwright.solver.desk.variants.template import run, save, show
from setwright.solver.desk.variants.templates import add, show_all
from setwright.solver.desk.variants.week import sheet, show_week

ROUTES: Final = (
    Route("/templates", show_all),
    Route("/templates", with_form(add), methods=["POST"]),
    Route("/templates/grid.css", styles),
    Route("/templates/{name}", show),
    Route("/templates/{name}", with_form(save), methods=["POST"]),
    Route("/templates/{name}/run", with_form(run), methods=["POST"]),
    Route("/templates/{name}/weeks/{week}", show_week),
    Route("/templates/{name}/weeks/{week}/{format}", sheet),
)

__all__ = ["FILTERS", "ROUTES"]
