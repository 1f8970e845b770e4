"""The pages of a client's log: sessions as done, written down in the gym, typed, read from a file, looked through."""

from __future__ import annotations

from typing import Final

from starlette.routing import Route

from setwright.solver.desk.forms import with_form
from setwright.solver.desk.log.drafts import keeper
from setwright.solver.desk.log.from_file import read_file, show_form
from setwright.solver.desk.log.gym import show_session
from setwright.solver.desk.log.looked_through import show_checks, show_pace, take
from setwright.solver.desk.log.sessions import add, show
from setwright.solver.desk.log.taken import take_session

ROUTES: Final = (
    Route("/clients/{code}/log", show),
    Route("/clients/{code}/log/add", with_form(add), methods=["POST"]),
    Route("/clients/{code}/log/import", show_form),
    Route("/clients/{code}/log/import", with_form(read_file), methods=["POST"]),
    Route("/clients/{code}/log/check", show_checks),
    Route("/clients/{code}/log/pace", show_pace),
    Route("/clients/{code}/log/pace", with_form(take), methods=["POST"]),
    Route("/clients/{code}/log/keeper.js", keeper),
    Route("/clients/{code}/log/{day}", show_session),
    Route("/clients/{code}/log/{day}", with_form(take_session), methods=["POST"]),
)
