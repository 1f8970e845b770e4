"""`setwright book export` and `erase`: a client's right to the data, and to be forgotten."""

from __future__ import annotations

from pathlib import Path

import click

from setwright.catalogue.faults import Fault, UsageFault
from setwright.solver.cli.books import book_option, the_book
from setwright.solver.cli.console.messages import say
from setwright.solver.cli.console.output import cannot_write, there_already
from setwright.solver.cli.lazy_group import PrintingCommand
from setwright.solver.cli.options import FILE


@click.command("export", cls=PrintingCommand)
@click.argument("code")
@click.argument("folder", type=FILE)
@click.option("--force", is_flag=True, help="Write over files that are there.")
@book_option
def export_command(code: str, folder: Path, force: bool) -> None:
    """Write what the book knows of CODE into FOLDER: client.json, sets.csv, and health.json for health notes."""
    from setwright.solver.atomic import write_files
    from setwright.solver.book.clients import client_of
    from setwright.solver.book.export import exported

    with the_book() as book:
        files = exported(book, client_of(book, code))
    try:
        write_files(files, folder, replace=force)
    except FileExistsError:
        raise UsageFault(there_already(folder, "folder")) from None
    except OSError as error:
        raise cannot_write(folder, error) from None
    for name in files:
        say(f"written: {folder / name}")
    if "health.json" in files:
        say("health.json holds health notes: hand it to the client alone")


@click.command("erase", cls=PrintingCommand)
@click.argument("code")
@click.option("--yes", is_flag=True, help="Erase without asking.")
@book_option
def erase_command(code: str, yes: bool) -> None:
    """Erase CODE from the book for ever: briefs, health notes, weeks, blocks, sessions."""
    from setwright.solver.book.care import BEYOND, erase
    from setwright.solver.book.clients import client_of

    with the_book() as book:
        client = client_of(book, code)
        if not yes:
            said = f"everything of @{client.code} would be erased for ever"
            raise UsageFault(Fault("book erase", said, "add --yes, after `setwright book export` if it is to be kept"))
        erase(book, client)
    say(f"erased: @{client.code}")
    say(BEYOND)
