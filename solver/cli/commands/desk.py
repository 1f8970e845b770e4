"""`setwright desk`: the whole job on a local page in the browser."""

from __future__ import annotations

from pathlib import Path

import click

from setwright.catalogue.faults import Fault, SetwrightError
from setwright.solver.cli.books import book_option, named_book
from setwright.solver.cli.console.messages import say
from setwright.solver.cli.lazy_group import PrintingCommand
from setwright.solver.cli.options import catalogue_option, open_catalogue


@click.command("desk", cls=PrintingCommand)
@click.option(
    "--port", type=click.IntRange(1, 65_535), metavar="N", help="The port; the next free one where it is in use."
)
@click.option("--no-open", is_flag=True, help="Print the address and open no browser.")
@book_option
@catalogue_option
def command(port: int | None, no_open: bool, overlay: Path | None) -> None:
    """Open the desk: a page in the browser on which the whole job is done. It is served to this machine alone.

    \b
    setwright desk
    """
    try:
        from setwright.solver.desk.server import serve
    except ModuleNotFoundError as error:
        missing = (error.name or "").split(".")[0]
        if missing == "setwright":
            raise
        fault = Fault("desk", f"needs {missing}, which is not installed", "pip install 'setwright[desk]'")
        raise SetwrightError(fault) from None
    from setwright.solver.book.opened import open_book
    from setwright.solver.desk.desk import Desk
    from setwright.solver.desk.guard import Keys
    from setwright.solver.desk.searches.crew import Crew

    catalogue, place = open_catalogue(overlay), named_book().resolve()
    with open_book(place):
        pass
    own = None if overlay is None else str(overlay.resolve())

    def ready(address: str, said: str) -> None:
        if said:
            say(said)
        click.echo(f"The desk is open: {address}\nThe book is {place}. Ctrl-C closes the desk.")
        if not no_open:
            import webbrowser

            webbrowser.open(address)

    serve(Desk(place, catalogue, Crew(), Keys(), own), port, ready)
