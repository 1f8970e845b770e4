"""The matrix of variants as one page that needs nothing else: a coach's price list of time, for screen and paper."""

from __future__ import annotations

from collections.abc import Callable, Mapping, Sequence
from pathlib import Path
from typing import TYPE_CHECKING, Any, Final

from setwright.catalogue.version import own_version
from setwright.solver.sheets.charts.drawing import UNFIT
from setwright.solver.sheets.common.caution import CAUTION
from setwright.solver.sheets.common.words import counted
from setwright.solver.sheets.html.templates import templates_in
from setwright.solver.sheets.screen.muscle_table import WHAT_INDEX_IS

if TYPE_CHECKING:
    from jinja2 import Environment
    from markupsafe import Markup

DATA: Final = Path(__file__).parents[1] / "data"
Link = Callable[[Mapping[str, Any]], str]
"""From a field of the document to the address of its week's page; empty where there is none."""
Sheets = Callable[[Mapping[str, Any]], Sequence[tuple[str, str]]]
"""From a field to (kind, address) of each of its week's sheets."""


def matrix_page(document: Mapping[str, Any], link: Link = lambda field: "") -> bytes:
    """The page of a matrix's document as UTF-8 bytes, the same for the same document; needs the extra `page`."""
    from markupsafe import Markup

    house = _environment()
    text = house.get_template("matrix.html").render(
        d=document,
        grid=grid_markup(document, link),
        style=Markup(house.get_template("matrix.css").render()),
        caution=CAUTION,
        index_is=WHAT_INDEX_IS,
        made_by=own_version(),
    )
    return UNFIT.sub("\ufffd", text).encode()


def grid_markup(document: Mapping[str, Any], link: Link, sheets: Sheets = lambda field: ()) -> Markup:
    """The grids and steps alone, to stand on a page that loads `grid_css`; needs the extra `page`."""
    from markupsafe import Markup

    return Markup(_environment().get_template("matrix_grid.html").render(d=document, link=link, sheets=sheets))


def grid_css() -> str:
    """How the grids and steps are set."""
    return (DATA / "matrix_grid.css").read_text(encoding="utf-8")


def _environment() -> Environment:
    """The templates of the page with what they alone use."""
    house = templates_in(DATA)
    house.globals |= {"down_words": _down_words, "scale_of": _scale_of}
    house.filters |= {"signed": lambda value: f"{value:+.1f}", "points": lambda value: f"{value:.1f}"}
    return house


def _scale_of(document: Mapping[str, Any]) -> float:
    """Parts of a hundred to an index point, so that every interval fits on a line of a hundred parts."""
    fields = [field for grid in document["grids"] for row in grid["rows"] for field in row["fields"]]
    highs = [float(field["interval"][1]) for field in fields if field and field["interval"]]
    return 100.0 / max([1.0, *highs])


def _down_words(label: str) -> str:
    """A label of days as a row's head: 1 day, 3 days, and weekdays as they are."""
    if not label.isdecimal():
        return label
    return counted(int(label), "day")
