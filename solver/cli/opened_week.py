"""The week a command is asked about: read from its file, or planned from a brief."""

from __future__ import annotations

from dataclasses import dataclass
from datetime import date
from pathlib import Path
from typing import TYPE_CHECKING, Any, Final, assert_never

from setwright.catalogue.faults import Fault, UsageFault
from setwright.solver.cli.books import MARK, is_code, the_book
from setwright.solver.cli.briefs import brief_from, say_cautions
from setwright.solver.cli.console.input import STANDARD_INPUT, bytes_of, place_of
from setwright.solver.cli.console.messages import say
from setwright.solver.cli.console.silence import silent_engines
from setwright.solver.cli.exit_codes import ExitCode, NoWeekError
from setwright.solver.records.efforts import limits_of

if TYPE_CHECKING:
    from setwright.catalogue.entries import Catalogue
    from setwright.solver.auditing import Audit
    from setwright.solver.brief.parsed_brief import ParsedBrief

WITHHELD: Final = (
    "the week was written without its client's cautions and age, so exercises that they close would be open here; "
    "name the brief with --brief, or write the week with --private"
)
WEEK_FILES: Final = (".json", ".csv", ".tsv", ".txt", ".xlsx")
"""The endings of a week's file, whether or not it is there."""


@dataclass(frozen=True)
class OpenedWeek:
    """A week's brief, its audit, and the document it was read from (empty where it was planned now)."""

    parsed: ParsedBrief
    audit: Audit
    document: dict[str, Any]


def open_week(source: str, brief: str | None, catalogue: Catalogue, accept_near: bool = False) -> OpenedWeek:
    """The week of a file (JSON or CSV, - for standard input) or of a client; `brief` takes the place of its own.

    Raises UsageFault with every fault of the file or of the brief.
    """
    from setwright.solver.auditing import audit
    from setwright.solver.foreign.foreign_week import read_any
    from setwright.solver.rulebook import resolve
    from setwright.solver.sheets.common.json_values import MOST_BYTES

    if is_code(source) and brief is None:
        return week_of_client(source, catalogue)
    asked = None if brief is None else brief_from(brief, catalogue)
    data = bytes_of(Path(source), MOST_BYTES, "name a week's file")
    found = read_any(data, place_of(source), catalogue, asked, accept_near)
    for note in found.notes:
        say(note)
    return OpenedWeek(found.parsed, audit(resolve(found.parsed.brief, catalogue), found.week), found.document)


def week_of_client(code: str, catalogue: Catalogue) -> OpenedWeek:
    """The week that the book has for a client today; raises UsageFault where it has none."""
    found = _at_hand(code, catalogue, date.today())
    if found is None:
        remedy = "`setwright block plan` plans weeks with dates, `setwright week` one without"
        raise UsageFault(Fault(code, "no week is planned for today", remedy))
    return found


def _at_hand(code: str, catalogue: Catalogue, day: date) -> OpenedWeek | None:
    """The week that the book has for a client on a day, said where it comes from; raises UsageFault."""
    from setwright.solver.book.clients import client_of
    from setwright.solver.records.week_at_hand import week_at_hand

    with the_book() as book:
        client = client_of(book, code)
        found = week_at_hand(book, client, catalogue, day)
    if found is None:
        return None
    say(f"{MARK}{client.code}: {found.said}")
    return OpenedWeek(found.parsed, found.audit, found.document)


def open_or_plan(
    source: str, brief: str | None, search: str | None, catalogue: Catalogue, day: date | None = None
) -> OpenedWeek:
    """The week of a file, or the one planned from a phrase or a brief's file.

    A client's is the one that the book has for a day, today's unless it is said, else planned. Raises UsageFault, also
    where the file's client has cautions that it does not say, and NoWeekError.
    """
    if is_code(source) and brief is None and (at_hand := _at_hand(source, catalogue, day or date.today())):
        return at_hand
    if brief is None and _is_brief(source):
        return _planned(source, search, catalogue)
    found = open_week(source, brief, catalogue)
    if brief is None and found.document.get("private_left_out"):
        raise UsageFault(Fault(source, WITHHELD))
    return found


def _is_brief(source: str) -> bool:
    """Whether a source is a phrase or a TOML file rather than a week's file."""
    path = Path(source)
    if source == STANDARD_INPUT or path.suffix.lower() in WEEK_FILES:
        return False
    try:
        return path.suffix.lower() == ".toml" or not path.exists()
    except (OSError, ValueError):  # a phrase too long for a file's name
        return True


def _planned(source: str, search: str | None, catalogue: Catalogue) -> OpenedWeek:
    from setwright.solver.planning import Clash, OutOfTime, Solved, plan
    from setwright.solver.search.solve_options import SolveOptions

    parsed = brief_from(source, catalogue)
    say_cautions(parsed, catalogue, True)
    with silent_engines():
        end = plan(parsed, catalogue, SolveOptions(limits_of(search, {}), pairs_note=False))
    match end:
        case Solved():
            return OpenedWeek(parsed, end.audit, {})
        case Clash():
            fault = Fault("brief", "no week is possible", "`setwright week` names what clashes")
            raise NoWeekError(fault, ExitCode.CLASH)
        case OutOfTime():
            from setwright.solver.sheets.common.findings import no_week_words

            fault = Fault("brief", no_week_words(end), "try --search thorough")
            raise NoWeekError(fault, ExitCode.OUT_OF_TIME)
        case _:
            assert_never(end)
