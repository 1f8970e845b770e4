"""`setwright schema`: the JSON Schemas of what is read and printed."""

from __future__ import annotations

from pathlib import Path
from typing import Any, Final

import click

from setwright.solver.cli.console.output import check_target, deliver
from setwright.solver.cli.lazy_group import PrintingCommand
from setwright.solver.cli.options import output_options

DOCUMENTS: Final = ("brief", "week", "block", "season", "log", "next", "pace")


@click.command("schema", cls=PrintingCommand)
@click.argument("document", type=click.Choice(DOCUMENTS))
@output_options
def command(document: str, as_json: bool, target: Path | None, force: bool) -> None:
    """Print the JSON Schema of a brief, or of another DOCUMENT."""
    check_target(target, force)
    deliver(_schema_of(document), target, force)


def _schema_of(document: str) -> dict[str, Any]:
    """The schema of what is read under a name."""
    if document == "brief":
        from setwright.solver.brief.schema_json import brief_schema

        return brief_schema()
    from setwright.solver.sheets.document import printed_schema

    makers = {
        "week": printed_schema.week_schema,
        "block": printed_schema.block_schema,
        "season": printed_schema.season_schema,
        "log": printed_schema.log_schema,
        "next": printed_schema.next_schema,
        "pace": printed_schema.pace_schema,
    }
    return makers[document]()
