"""The book that commands read and write, and the clients in it that they are asked about as @CODE."""

from __future__ import annotations

from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path
from typing import TYPE_CHECKING, Any, Final

import click

from setwright.solver.cli.options import FILE

if TYPE_CHECKING:
    from setwright.catalogue.entries import Catalogue
    from setwright.solver.book.opened import Book
    from setwright.solver.brief.parsed_brief import ParsedBrief

MARK: Final = "@"
"""Leads a client's code where a brief or a week is expected."""
KEY: Final = "setwright.book"


def _remember(ctx: click.Context, parameter: click.Parameter, value: Path | None) -> None:
    """Keep the named book for the whole command."""
    if value is not None:
        ctx.meta[KEY] = value


book_option = click.option(
    "--book",
    type=FILE,
    metavar="FILE",
    expose_value=False,
    is_eager=True,
    callback=_remember,
    help="The book in which @CODE stands; your own unless named.",
)


def named_book() -> Path:
    """The path of the command's book."""
    from setwright.solver.book.place import book_place

    named: Path | None = click.get_current_context().meta.get(KEY)
    return book_place(named)


@contextmanager
def the_book() -> Iterator[Book]:
    """The command's book, open; raises SetwrightError."""
    from setwright.solver.book.opened import open_book

    with open_book(named_book(), through="a command") as book:
        yield book


def is_code(source: str) -> bool:
    """Whether a source is a client of the book."""
    return source.startswith(MARK)


def brief_of_client(code: str, catalogue: Catalogue) -> ParsedBrief:
    """The newest brief of a client, health notes included; raises UsageFault and SetwrightError."""
    from setwright.solver.book.clients import brief_of, client_of
    from setwright.solver.brief.parsed_brief import parse_brief
    from setwright.solver.rulebook import RULES

    with the_book() as book:
        client = client_of(book, code)
        raw: dict[str, Any] = brief_of(book, client)
    return parse_brief(raw, catalogue, f"{MARK}{client.code}", tuple(RULES))
