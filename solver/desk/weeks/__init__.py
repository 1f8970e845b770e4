"""The pages of a client's weeks: found, kept, read, changed by hand, explained, handed over."""

from __future__ import annotations

from typing import Final

from starlette.routing import Route

from setwright.solver.desk.forms import with_form
from setwright.solver.desk.weeks import check, kept, line, sheets, why
from setwright.solver.desk.weeks.find import concede, find, keep

WEEK: Final = "/clients/{code}/weeks/{monday}"
ROUTES: Final = (
    Route("/clients/{code}/find", with_form(find, writes=False), methods=["POST"]),
    Route("/clients/{code}/keep", with_form(keep), methods=["POST"]),
    Route("/clients/{code}/concede", with_form(concede), methods=["POST"]),
    Route("/clients/{code}/others", with_form(why.others, writes=False), methods=["POST"]),
    Route("/clients/{code}/check", check.show),
    Route("/clients/{code}/check", with_form(check.check, writes=False), methods=["POST"]),
    Route("/clients/{code}/weeks", kept.show_all),
    Route(WEEK, kept.show),
    Route(f"{WEEK}/line", line.show),
    Route(f"{WEEK}/line", with_form(line.edit), methods=["POST"]),
    Route(f"{WEEK}/why", why.show),
    Route(f"{WEEK}/ask", with_form(why.ask), methods=["POST"]),
    Route(f"{WEEK}/sheets", sheets.show),
    Route(f"{WEEK}/page", sheets.show_page),
    Route(f"{WEEK}/sheet.{{format}}", sheets.download),
)
