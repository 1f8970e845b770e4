"""`setwright book undo`: the last act on a client taken back, or done again."""

from __future__ import annotations

import click

from setwright.catalogue.faults import Fault, UsageFault
from setwright.solver.cli.books import book_option, the_book
from setwright.solver.cli.console.messages import say
from setwright.solver.cli.console.standard_output import print_text
from setwright.solver.cli.lazy_group import PrintingCommand


@click.command("undo", cls=PrintingCommand)
@click.argument("code")
@click.option("--again", is_flag=True, help="Do again what was taken back last.")
@click.option("--list", "listed", is_flag=True, help="List what can be taken back, the newest first; change nothing.")
@book_option
def undo_command(code: str, again: bool, listed: bool) -> None:
    """Take back the last act on CODE: a new brief, a week or block that was kept, sessions that were logged.

    Called twice it takes back the last two acts. What stood before holds again, and nothing is lost: --again does the
    act again while nothing else was done since.

    \b
    setwright book undo @M
    """
    from setwright.solver.book.clients import client_of
    from setwright.solver.book.undone import acts, do_again, take_back

    if again and listed:
        raise UsageFault(Fault("--list", "changes nothing, --again does", "leave one of them out"))
    with the_book() as book:
        client = client_of(book, code)
        if listed:
            print_text("".join(f"{act.moment[:10]}  {act.said}\n" for act in acts(book, client)))
            return
        act = do_again(book, client) if again else take_back(book, client)
    say(f"{'done again' if again else 'taken back'}: {act.said}")
