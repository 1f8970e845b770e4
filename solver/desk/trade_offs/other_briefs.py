"""The briefs that a form sets beside a client's own: a phrase on a line, or @CODE for another client's newest brief."""

from __future__ import annotations

from collections.abc import Callable
from typing import Any, Final

from setwright.catalogue.faults import Fault, SetwrightError, UsageFault
from setwright.solver.book.clients import brief_of, client_of
from setwright.solver.book.opened import Book
from setwright.solver.brief.parsed_brief import ParsedBrief, parse_brief, raw_of
from setwright.solver.brief.schema import Brief
from setwright.solver.desk.brief.said import from_phrase
from setwright.solver.desk.desk import Desk
from setwright.solver.rulebook import RULES
from setwright.solver.sheets.screen.over_time.clients import asked

MARK: Final = "@"
MOST_LINES: Final = 11
"""Briefs that a form may name beside the client's own (convention)."""


def other_briefs(text: str, own: Brief, book: Book, desk: Desk) -> list[ParsedBrief]:
    """The brief of each line; a phrase is for the client of `own`. Raises UsageFault with the faults of every line."""
    lines = [line.strip() for line in text.splitlines() if line.strip()]
    if len(lines) > MOST_LINES:
        said = f"{len(lines)} lines, expected at most {MOST_LINES}"
        raise UsageFault(Fault("other briefs", said, "leave some out"))
    found, faults = list[ParsedBrief](), list[Fault]()
    for number, line in enumerate(lines, 1):
        try:
            found.append(_reader(line, own, book, desk)())
        except SetwrightError as error:
            faults += (fault.at(f"other brief {number}: {fault.where}") for fault in error.faults)
    if faults:
        raise UsageFault(faults)
    return found


def named(brief: Brief) -> str:
    """A brief by whose it is, and the days it asks for; nothing else of it is said."""
    return f"{MARK}{brief.client.code}: {asked(raw_of(brief))}"


def _reader(line: str, own: Brief, book: Book, desk: Desk) -> Callable[[], ParsedBrief]:
    """How the brief of a line is read."""
    if not line.startswith(MARK):
        return lambda: from_phrase(line, own, desk.catalogue)

    def of_the_book() -> ParsedBrief:
        raw: dict[str, Any] = brief_of(book, client_of(book, line.removeprefix(MARK)))
        return parse_brief(raw, desk.catalogue, line, tuple(RULES))

    return of_the_book
