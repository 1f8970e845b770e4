"""The pages of a client's block: planned, kept, read, written as sheets, and gone on with from the log."""

from __future__ import annotations

from typing import Final

from starlette.routing import Route

from setwright.solver.desk.blocks.going_on import show_next
from setwright.solver.desk.blocks.plan import keep, plan
from setwright.solver.desk.blocks.sheets import block_files, next_files
from setwright.solver.desk.blocks.show import show
from setwright.solver.desk.forms import with_form

ROUTES: Final = (
    Route("/clients/{code}/block", show),
    Route("/clients/{code}/block/plan", with_form(plan, writes=False), methods=["POST"]),
    Route("/clients/{code}/block/keep", with_form(keep), methods=["POST"]),
    Route("/clients/{code}/block/sheets", block_files),
    Route("/clients/{code}/next", show_next),
    Route("/clients/{code}/next/sheets", next_files),
)
