"""`setwright client add`: a new client with a brief."""

from __future__ import annotations

from pathlib import Path

import click

from setwright.solver.cli.books import book_option, the_book
from setwright.solver.cli.briefs import brief_from, say_cautions
from setwright.solver.cli.console.messages import say
from setwright.solver.cli.lazy_group import PrintingCommand
from setwright.solver.cli.options import catalogue_option, open_catalogue


@click.command("add", cls=PrintingCommand)
@click.argument("code")
@click.argument("brief", nargs=-1, required=True)
@click.option("--name", default="", metavar="NAME", help="A name, where you want one written down; no sheet shows it.")
@book_option
@catalogue_option
def command(code: str, brief: tuple[str, ...], name: str, overlay: Path | None) -> None:
    """Write down a client as CODE, with a BRIEF: a phrase, a TOML file, or - for standard input.

    \b
    setwright client add M "2 days x 30 min, commercial gym, novice"
    """
    from setwright.solver.book.clients import add_client
    from setwright.solver.brief.parsed_brief import raw_of

    catalogue = open_catalogue(overlay)
    parsed = brief_from(" ".join(brief), catalogue)
    say_cautions(parsed, catalogue, True)
    for assumption in parsed.assumed:
        if assumption.kind != "health":
            say(assumption.text)
    raw = raw_of(parsed.brief)
    with the_book() as book:
        client = add_client(book, code, {**raw, "client": {**raw["client"], "code": code.removeprefix("@")}}, name)
        say(f"written down: @{client.code} in {book.path}")
