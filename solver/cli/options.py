"""Options that several commands share."""

from __future__ import annotations

from collections.abc import Callable
from pathlib import Path
from typing import TYPE_CHECKING, Any, TypeVar

import click

from setwright.solver.cli.output import say

if TYPE_CHECKING:
    from setwright.catalogue.entries import Catalogue

Command = TypeVar("Command", bound=Callable[..., Any])
FILE = click.Path(path_type=Path)

json_option = click.option("--json", "as_json", is_flag=True, help="Print one JSON document.")
catalogue_option = click.option(
    "--catalogue", "overlay", type=FILE, metavar="FILE", help="Lay your own catalogue file over the shipped one."
)


def output_options(command: Command) -> Command:
    """--json, -o FILE and --force."""
    force = click.option("--force", is_flag=True, help="Let -o write over a file.")
    out = click.option(
        "-o", "--output", "target", type=FILE, metavar="FILE", help="Write to FILE; a name in .json asks for JSON."
    )
    return json_option(out(force(command)))


def wants_json(as_json: bool, target: Path | None) -> bool:
    """Whether JSON is asked for, by the flag or by the file's name."""
    return as_json or (target is not None and target.suffix.lower() == ".json")


def open_catalogue(overlay: Path | None) -> Catalogue:
    """The catalogue, with what an overlay changed said on stderr."""
    from setwright.catalogue.load import load_catalogue

    catalogue = load_catalogue(overlay)
    for changed in catalogue.changed:
        say(changed)
    return catalogue
