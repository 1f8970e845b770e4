"""Options that several commands share."""

from __future__ import annotations

from collections.abc import Callable
from pathlib import Path
from typing import TYPE_CHECKING, Any, Final, TypeVar

import click

from setwright.solver.cli.console.messages import say
from setwright.solver.search.limits import SEARCHES

if TYPE_CHECKING:
    from setwright.catalogue.entries import Catalogue

Command = TypeVar("Command", bound=Callable[..., Any])
FILE: Final = click.Path(path_type=Path)

catalogue_option = click.option(
    "--catalogue", "overlay", type=FILE, metavar="FILE", help="Lay your own catalogue file over the shipped one."
)
brief_option = click.option("--brief", metavar="BRIEF", help="Hold the week against this brief, a phrase or a file.")


def search_option(default: str | None, help_text: str = "How hard to search.") -> Callable[[Command], Command]:
    """--search, one of the searches by name."""
    kinds = click.Choice(tuple(SEARCHES))
    return click.option("--search", type=kinds, default=default, show_default=default is not None, help=help_text)


def output_options(command: Command) -> Command:
    """--json, -o FILE and --force."""
    force = click.option("--force", is_flag=True, help="Let -o write over a file.")
    out = click.option(
        "-o", "--output", "target", type=FILE, metavar="FILE", help="Write to FILE; a name in .json asks for JSON."
    )
    json = click.option("--json", "as_json", is_flag=True, help="Print one JSON document.")
    return json(out(force(command)))


def wants_json(as_json: bool, target: Path | None) -> bool:
    """Whether JSON is asked for, by the flag or by the file's name."""
    return as_json or (target is not None and target.suffix.lower() == ".json")


def open_catalogue(overlay: Path | None) -> Catalogue:
    """The catalogue, with what an overlay changed said on standard error; raises CatalogueFault."""
    from setwright.catalogue.load import load_catalogue

    catalogue = load_catalogue(overlay)
    for changed in catalogue.changed:
        say(changed)
    return catalogue
