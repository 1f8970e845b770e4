"""`setwright schema`: the JSON Schema of a document."""

from __future__ import annotations

from pathlib import Path

import click

from setwright.solver.cli.options import output_options
from setwright.solver.cli.output import check_target, deliver


@click.command("schema")
@click.argument("document", type=click.Choice(["brief", "week"]))
@output_options
def command(document: str, as_json: bool, target: Path | None, force: bool) -> None:
    """Print the JSON Schema of a brief or of a week."""
    from setwright.solver.brief.schema_json import brief_schema
    from setwright.solver.sheets.document.json_values import dumped
    from setwright.solver.sheets.document.printed_schema import week_schema

    check_target(target, force)
    deliver(dumped(brief_schema() if document == "brief" else week_schema()), target, force)
