"""`setwright audit`: any week reckoned."""

from __future__ import annotations

import sys
from pathlib import Path

import click

from setwright.catalogue.faults import Fault, UsageFault
from setwright.solver.cli.options import FILE, catalogue_option, open_catalogue, output_options, wants_json
from setwright.solver.cli.output import check_target, columns, deliver


@click.command("audit")
@click.argument("week", type=FILE)
@click.option("--strict", is_flag=True, help="Exit with 1 when a rule is broken.")
@catalogue_option
@output_options
@click.pass_context
def command(
    ctx: click.Context,
    week: Path,
    strict: bool,
    overlay: Path | None,
    as_json: bool,
    target: Path | None,
    force: bool,
) -> None:
    """Reckon a WEEK written with --json (- for standard input): minutes, sets per muscle, rules broken and missed."""
    from setwright.solver.reckoning.audit import audit
    from setwright.solver.reckoning.resolve import resolve
    from setwright.solver.sheets.audit import audit_document, audit_text
    from setwright.solver.sheets.document import dumped
    from setwright.solver.sheets.reading import parse_week, read_week

    check_target(target, force)
    catalogue = open_catalogue(overlay)
    where = "standard input" if str(week) == "-" else str(week)
    understood, read = read_week(parse_week(bytes_of(week), where), catalogue, where)
    found = audit(resolve(understood.brief, catalogue), read)
    as_document = wants_json(as_json, target)
    deliver(dumped(audit_document(found)) if as_document else audit_text(found, columns()), target, force)
    ctx.exit(1 if strict and found.broken else 0)


def bytes_of(path: Path) -> bytes:
    """The file's bytes, a little more than the most that is read."""
    from setwright.solver.sheets.reading import MOST_BYTES

    if str(path) == "-":
        return sys.stdin.buffer.read(MOST_BYTES + 1)
    try:
        with path.open("rb") as file:
            return file.read(MOST_BYTES + 1)
    except OSError as error:
        raise UsageFault(Fault(str(path), f"cannot be read: {error.strerror or error}", "name a week's file")) from None
