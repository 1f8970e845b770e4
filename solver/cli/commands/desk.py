"""`setwright desk`: the whole job on a local page in the browser."""

from __future__ import annotations

import os
import sys
from importlib.util import find_spec
from pathlib import Path
from typing import TYPE_CHECKING, Final

import click

from setwright.catalogue.faults import Fault, SetwrightError
from setwright.solver.cli.books import book_option, named_book
from setwright.solver.cli.console.messages import say
from setwright.solver.cli.lazy_group import PrintingCommand
from setwright.solver.cli.options import FILE, catalogue_option, open_catalogue

if TYPE_CHECKING:
    from setwright.solver.desk.entry.access import Access

LIBRARIES: Final = ("jinja2", "python_multipart", "starlette", "uvicorn")


@click.command("desk", cls=PrintingCommand)
@click.option("--port", type=click.IntRange(1, 65_535), metavar="N", help="The port; else the next free one.")
@click.option("--no-open", is_flag=True, help="Print the address and open no browser.")
@click.option("--host", metavar="ADDRESS", help="Serve this machine's ADDRESS on a network, by TLS and a password.")
@click.option("--certificate", type=FILE, metavar="FILE", help="The certificate for --host, as PEM.")
@click.option("--key", type=FILE, metavar="FILE", help="The certificate's key, as PEM.")
@book_option
@catalogue_option
def command(
    port: int | None,
    no_open: bool,
    host: str | None,
    certificate: Path | None,
    key: Path | None,
    overlay: Path | None,
) -> None:
    """Open the desk: a page in the browser on which the whole job is done. It is served to this machine alone.

    \b
    setwright desk
    setwright desk --host 192.168.1.20 --certificate desk.pem --key desk-key.pem
    """
    _needs_its_libraries()
    from setwright.solver.desk.open_desks import address_of_open_desk

    access = _access(host, certificate, key)
    place = named_book().resolve()
    if (address := address_of_open_desk(place)) and host is None:
        say("a desk is open on this book already; here it is")
        _show(address, no_open)
        return
    _serve(place, access, overlay, port, no_open)


def _serve(place: Path, access: Access, overlay: Path | None, port: int | None, no_open: bool) -> None:
    """Serve the desk of a book until Ctrl-C."""
    from setwright.solver.book.care import saved_before_migration
    from setwright.solver.book.opened import open_book
    from setwright.solver.desk.desk import Desk
    from setwright.solver.desk.entry.guard import Keys
    from setwright.solver.desk.entry.passwords import Entrance
    from setwright.solver.desk.searches.crew import Crew
    from setwright.solver.desk.server import serve

    catalogue = open_catalogue(overlay)
    if saved := saved_before_migration(place):
        say(f"the book is of an older version; as it was it is kept in {saved}")
    with open_book(place):
        pass
    own = None if overlay is None else str(overlay.resolve())
    desk = Desk(place, catalogue, Crew(), Keys(access.secure), Entrance(access.password), own)

    def ready(address: str, taken: int) -> None:
        if port is not None and taken != port:
            say(f"port {port} is in use; the desk has port {taken}")
        click.echo(f"The book is {place}. Ctrl-C closes the desk.")
        _show(address, no_open)

    serve(desk, access, port, ready)


def _show(address: str, no_open: bool) -> None:
    """Print the desk's address and open a browser on it, where there is one."""
    click.echo(f"The desk is open: {address}")
    if not no_open:
        import webbrowser

        if not webbrowser.open(address):
            say("no browser was found; open the address yourself")


def _access(host: str | None, certificate: Path | None, key: Path | None) -> Access:
    """How the desk is reached; raises UsageFault."""
    from setwright.solver.desk.entry.access import PASSWORD, Access, network_access

    if host is not None:
        return network_access(host, certificate, key, os.environ.get(PASSWORD) or _asked_password())
    if certificate or key:
        raise SetwrightError(Fault("--certificate", "is for --host alone", "name --host too, or leave it out"))
    return Access()


def _asked_password() -> str | None:
    """The password, typed twice; None where there is no terminal to ask on."""
    if not _is_terminal():
        return None
    said: str = click.prompt("Password of the desk", hide_input=True, confirmation_prompt=True, err=True)
    return said


def _is_terminal() -> bool:
    """Whether something can be asked."""
    return sys.stdin.isatty()


def _needs_its_libraries() -> None:
    """Raise SetwrightError where the desk's libraries are not installed."""
    missing = [name for name in LIBRARIES if find_spec(name) is None]
    if missing:
        said = f"needs {', '.join(missing)}, which is not installed"
        raise SetwrightError(Fault("desk", said, "pip install 'setwright[desk]'"))
