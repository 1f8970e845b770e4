"""`setwright evidence`: every number with where it comes from."""

from __future__ import annotations

from pathlib import Path

import click

from setwright.catalogue.faults import Fault, UsageFault
from setwright.catalogue.near import did_you_mean
from setwright.solver.cli.console.messages import columns
from setwright.solver.cli.console.output import check_target, deliver
from setwright.solver.cli.lazy_group import PrintingCommand
from setwright.solver.cli.options import catalogue_option, open_catalogue, output_options, wants_json


@click.command("evidence", cls=PrintingCommand)
@click.argument("name", required=False, metavar="[ID]")
@catalogue_option
@output_options
def command(name: str | None, overlay: Path | None, as_json: bool, target: Path | None, force: bool) -> None:
    """List every number that a week is scored with: value, interval, unit, mark, source; or show one by its ID."""
    from setwright.solver.sheets.screen.listing import evidence_document, evidence_text

    check_target(target, force)
    evidence = open_catalogue(overlay).evidence
    if name and name not in evidence:
        within = [known for known in evidence if name in known]
        near = did_you_mean(name, evidence) or (f"did you mean {' or '.join(within[:5])}?" if within else "")
        remedy = near or "`setwright evidence` lists them all"
        raise UsageFault(Fault("evidence", f"{name!r} is not a number's id", remedy))
    numbers = [evidence[name]] if name else list(evidence.values())
    as_document = wants_json(as_json, target)
    deliver(evidence_document(numbers) if as_document else evidence_text(numbers, columns()), target, force)
