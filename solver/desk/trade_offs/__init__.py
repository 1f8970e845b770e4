"""The pages of a client's trade-offs: goals side by side, what time buys, and a season in blocks."""

from __future__ import annotations

from typing import Final

from starlette.routing import Route

from setwright.solver.desk.forms import with_form
from setwright.solver.desk.trade_offs import compare, minutes, season
from setwright.solver.desk.trade_offs.filters import filters

ROUTES: Final = (
    Route("/clients/{code}/compare", compare.show),
    Route("/clients/{code}/compare", with_form(compare.ask, writes=False), methods=["POST"]),
    Route("/clients/{code}/minutes", minutes.show),
    Route("/clients/{code}/minutes", with_form(minutes.ask, writes=False), methods=["POST"]),
    Route("/clients/{code}/season", season.show),
    Route("/clients/{code}/season", with_form(season.ask, writes=False), methods=["POST"]),
)

__all__ = ["ROUTES", "filters"]
