"""The desk as a web application: which address is answered by which function."""

from __future__ import annotations

from collections.abc import AsyncIterator
from contextlib import asynccontextmanager

from starlette.applications import Starlette
from starlette.middleware import Middleware
from starlette.routing import Mount
from starlette.staticfiles import StaticFiles

from setwright.catalogue.faults import SetwrightError
from setwright.solver.desk import blocks, clients, log, replan, weeks
from setwright.solver.desk.desk import Desk
from setwright.solver.desk.guard import Guard
from setwright.solver.desk.pages import DATA, environment, refused
from setwright.solver.desk.searches import addresses as searches


def application(desk: Desk, hosts: frozenset[str], secure: bool = False) -> Starlette:
    """The application of a desk that answers under the names in `hosts`, each with its port."""

    @asynccontextmanager
    async def lifespan(app: Starlette) -> AsyncIterator[None]:
        desk.crew.start()
        yield
        desk.crew.close()

    app = Starlette(
        routes=[
            *clients.ROUTES,
            *weeks.ROUTES,
            *blocks.ROUTES,
            *log.ROUTES,
            *replan.ROUTES,
            *searches.ROUTES,
            Mount("/static", StaticFiles(directory=DATA / "static")),
        ],
        middleware=[Middleware(Guard, desk.keys, hosts, secure)],
        exception_handlers={SetwrightError: refused},
        lifespan=lifespan,
    )
    app.state.desk, app.state.house = desk, environment()
    return app
