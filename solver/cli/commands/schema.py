"""`setwright schema`: the JSON Schema of a document."""

from __future__ import annotations

from pathlib import Path

import click

from setwright.solver.cli.console.output import check_target, deliver
from setwright.solver.cli.lazy_group import PrintingCommand
from setwright.solver.cli.options import output_options


@click.command("schema", cls=PrintingCommand)
@click.argument("document", type=click.Choice(["brief", "week", "season"]))
@output_options
def command(document: str, as_json: bool, target: Path | None, force: bool) -> None:
    """Print the JSON Schema of a brief, of a week or of a season."""
    check_target(target, force)
    if document == "brief":
        from setwright.solver.brief.schema_json import brief_schema

        deliver(brief_schema(), target, force)
    elif document == "season":
        from setwright.solver.sheets.document.season.season_model import season_schema

        deliver(season_schema(), target, force)
    else:
        from setwright.solver.sheets.document.printed_schema import week_schema

        deliver(week_schema(), target, force)
