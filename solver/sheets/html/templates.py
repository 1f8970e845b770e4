"""Templates of pages, set so that nothing of a client can be taken for markup; needs the extra `page`."""

from __future__ import annotations

from pathlib import Path
from typing import TYPE_CHECKING

from setwright.solver.sheets.charts.drawing import number

if TYPE_CHECKING:
    from jinja2 import Environment


def templates_in(folder: Path, trimmed: bool = True) -> Environment:
    """A folder's templates: every value is text unless it is said to be markup, and a missing one is an error.

    `trimmed` leaves out the white space around what is not printed.
    """
    from jinja2 import Environment, FileSystemLoader, StrictUndefined

    house = Environment(
        autoescape=True,
        undefined=StrictUndefined,
        loader=FileSystemLoader(folder),
        trim_blocks=trimmed,
        lstrip_blocks=trimmed,
    )
    house.globals["number"] = number
    return house
