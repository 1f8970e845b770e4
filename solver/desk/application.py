"""The desk as a web application: which address is answered by which function."""

from __future__ import annotations

import asyncio
from collections.abc import AsyncIterator
from contextlib import asynccontextmanager
from typing import Final

from anyio import CapacityLimiter, to_thread
from starlette.applications import Starlette
from starlette.exceptions import HTTPException
from starlette.middleware import Middleware
from starlette.routing import Mount
from starlette.staticfiles import StaticFiles

from setwright.catalogue.faults import SetwrightError
from setwright.solver.desk import blocks, brief, changes, clients, log, replan, trade_offs, variants, weeks
from setwright.solver.desk.changes.conflict import conflicting
from setwright.solver.desk.desk import Desk
from setwright.solver.desk.entry import entrance
from setwright.solver.desk.entry.guard import Guard
from setwright.solver.desk.pages import DATA, environment
from setwright.solver.desk.refusals import missing, refused
from setwright.solver.desk.searches import addresses as searches
from setwright.solver.desk.stamp import Conflict, Stamping, page_state, stamp_field
from setwright.solver.desk.week_words import week_filters

PAGES_AT_ONCE: Final = 4
"""Pages that are made at once. More threads than that wait for each other and for the loop, by Python's one lock."""
ACTS_AT_ONCE: Final = 16
"""Acts that are done at once, beside the pages: one that waits for its turn keeps no page from being made."""
UNWATCHED_SECONDS: Final = 20.0
"""How long a search goes on after its last page went away, unless a page out of sight waits for it."""


def application(desk: Desk, hosts: frozenset[str]) -> Starlette:
    """The application of a desk that answers under the names in `hosts`, each with its port."""

    @asynccontextmanager
    async def lifespan(app: Starlette) -> AsyncIterator[None]:
        to_thread.current_default_thread_limiter().total_tokens = PAGES_AT_ONCE
        desk.crew.start()
        sweeping = asyncio.create_task(_sweep(desk))
        yield
        sweeping.cancel()
        desk.close()

    app = Starlette(
        routes=[
            *entrance.ROUTES,
            *clients.ROUTES,
            *changes.ROUTES,
            *brief.ROUTES,
            *weeks.ROUTES,
            *trade_offs.ROUTES,
            *variants.ROUTES,
            *blocks.ROUTES,
            *log.ROUTES,
            *replan.ROUTES,
            *searches.ROUTES,
            Mount("/static", StaticFiles(directory=DATA / "static")),
        ],
        middleware=[Middleware(Guard, desk.keys, hosts), Middleware(Stamping)],
        exception_handlers={Conflict: conflicting, SetwrightError: refused, HTTPException: missing},
        lifespan=lifespan,
    )
    app.state.desk, app.state.house = desk, environment()
    app.state.house.globals |= {"page_state": page_state, "stamp_field": stamp_field}
    app.state.house.filters |= week_filters(desk.catalogue) | trade_offs.filters(desk.catalogue)
    app.state.house.filters |= variants.FILTERS
    app.state.ending = lambda: False
    app.state.acting = CapacityLimiter(ACTS_AT_ONCE)
    return app


async def _sweep(desk: Desk) -> None:
    """Stop, again and again, the searches that nobody looks at any more."""
    while True:
        await asyncio.sleep(UNWATCHED_SECONDS / 4)
        stop_unwatched(desk, UNWATCHED_SECONDS)


def stop_unwatched(desk: Desk, seconds: float) -> None:
    """Stop the searches at which no page has looked for so long and for which none waits out of sight."""
    desk.crew.stop_unwatched(seconds, desk.is_waited_for)
