"""`setwright book where`, `backup` and `check`."""

from __future__ import annotations

from pathlib import Path

import click

from setwright.catalogue.faults import Fault, SetwrightError
from setwright.solver.cli.books import book_option, named_book, the_book
from setwright.solver.cli.console.messages import say
from setwright.solver.cli.console.standard_output import print_text
from setwright.solver.cli.lazy_group import PrintingCommand
from setwright.solver.cli.options import FILE


@click.command("where", cls=PrintingCommand)
@book_option
def where_command() -> None:
    """Print the path of the book, whether or not it is there yet."""
    print_text(f"{named_book()}\n")


@click.command("backup", cls=PrintingCommand)
@click.argument("file", type=FILE)
@book_option
def backup_command(file: Path) -> None:
    """Copy the whole book to FILE, also while others write to it; never over a file."""
    from setwright.solver.book.care import backup

    with the_book() as book:
        backup(book, file)
    say(f"written: {file}")


@click.command("check", cls=PrintingCommand)
@book_option
def check_command() -> None:
    """Check every page of the file and every reference between rows."""
    from setwright.solver.book.care import check

    with the_book() as book:
        amiss = check(book)
        if amiss:
            raise SetwrightError(Fault(str(book.path), said, "bring back a backup") for said in amiss)
        print_text(f"{book.path}: all is well\n")
