"""The grid of a template's variants as its sheet draws it, each field a link to its week on the desk."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from typing import Any, Final

from markupsafe import Markup
from starlette.requests import Request
from starlette.responses import Response

from setwright.solver.sheets.variants.matrix_page import grid_css, grid_markup

BESIDE: Final = ("pdf", "xlsx", "html")
"""The sheets that each field leads to."""


def variants_grid(document: Mapping[str, Any], name: str) -> Markup:
    """The grids and steps of a matrix's document."""

    def week_page(field: Mapping[str, Any]) -> str:
        return f"/templates/{name}/weeks/{field['file']}"

    def sheets(field: Mapping[str, Any]) -> list[tuple[str, str]]:
        return [(kind, f"{week_page(field)}/{kind}") for kind in BESIDE]

    return grid_markup(document, week_page, sheets)


def styles(request: Request) -> Response:
    """How the grids are set: the style sheet that the page of a run has in it."""
    return Response(grid_css(), media_type="text/css")


FILTERS: Final[dict[str, Callable[..., Any]]] = {"variants_grid": variants_grid}
