"""The week a command is asked about: read from its file, or planned from a brief."""

from __future__ import annotations

import sys
from dataclasses import dataclass
from pathlib import Path
from typing import TYPE_CHECKING, Any, assert_never

from setwright.catalogue.faults import Fault, SetwrightError, UsageFault
from setwright.solver.cli.output import engines_silent, say
from setwright.solver.cli.week import CLASH, OUT_OF_TIME, understood_of, warn

if TYPE_CHECKING:
    from setwright.catalogue.entries import Catalogue
    from setwright.solver.auditing import Audit
    from setwright.solver.brief.parsed_brief import ParsedBrief
    from setwright.solver.search.limits import Limits

WITHHELD = (
    "the week was written without its client's cautions, so exercises that they close would be open here; "
    "name the brief with --brief, or write the week with --private"
)

WEEK_FILES = (".json", ".csv", ".tsv", ".txt")
"""The endings of a week's file, whether or not it is there."""


@dataclass(frozen=True)
class Opened:
    """A week's brief, its audit, and the document it was read from (empty where it was planned now)."""

    parsed: ParsedBrief
    audit: Audit
    document: dict[str, Any]


def opened(source: str, brief: str | None, catalogue: Catalogue, accept_near: bool = False) -> Opened:
    """The week of a file (JSON or CSV, - for standard input); `brief` takes the place of its own."""
    from setwright.solver.auditing import audit
    from setwright.solver.foreign.foreign_week import read_any
    from setwright.solver.rulebook import resolve

    where = "standard input" if source == "-" else source
    asked = None if brief is None else understood_of(brief, catalogue)
    found = read_any(bytes_of(Path(source)), where, catalogue, asked, accept_near)
    for note in found.notes:
        say(note)
    return Opened(found.parsed, audit(resolve(found.parsed.brief, catalogue), found.week), found.document)


def planned_or_opened(source: str, brief: str | None, search: str | None, catalogue: Catalogue) -> Opened:
    """The week of a file, or the one planned from a phrase or a brief's file."""
    if brief is None and is_brief(source):
        return planned(source, search, catalogue)
    found = opened(source, brief, catalogue)
    if brief is None and found.document.get("private_left_out"):
        raise UsageFault(Fault(source, WITHHELD))
    return found


def is_brief(source: str) -> bool:
    """Whether a source is a phrase or a TOML file rather than a week's file."""
    path = Path(source)
    if source == "-" or path.suffix.lower() in WEEK_FILES:
        return False
    return path.suffix.lower() == ".toml" or not path.exists()


def planned(source: str, search: str | None, catalogue: Catalogue) -> Opened:
    """A week planned now."""
    from setwright.solver.planning import Clash, OutOfTime, Solved, plan

    parsed = understood_of(source, catalogue)
    warn(parsed, catalogue, True)
    with engines_silent():
        end = plan(parsed, catalogue, limits_of(search, {}), with_pairs_note=False)
    match end:
        case Solved():
            return Opened(parsed, end.audit, {})
        case Clash():
            raise NoWeek(Fault("brief", "no week is possible", "`setwright week` names what clashes"), CLASH)
        case OutOfTime():
            raise NoWeek(Fault("brief", f"no week was found ({end.ended_by})", "try --search thorough"), OUT_OF_TIME)
        case _:
            assert_never(end)


class NoWeek(SetwrightError):
    """A brief that was to be planned first gave no week."""

    def __init__(self, fault: Fault, exit_code: int) -> None:
        super().__init__(fault)
        self.exit_code = exit_code


def limits_of(search: str | None, document: dict[str, Any]) -> Limits:
    """The search asked for, else the one the week was made with."""
    from setwright.solver.search.limits import DEFAULT, SEARCHES

    made_by = document.get("made_by")
    limits = made_by.get("limits") if isinstance(made_by, dict) else None
    used = limits.get("search") if isinstance(limits, dict) else None
    return SEARCHES[search or (used if isinstance(used, str) and used in SEARCHES else DEFAULT)]


def bytes_of(path: Path) -> bytes:
    """The file's bytes, a little more than the most that is read."""
    from setwright.solver.sheets.document.json_values import MOST_BYTES

    if str(path) == "-":
        return sys.stdin.buffer.read(MOST_BYTES + 1)
    try:
        with path.open("rb") as file:
            return file.read(MOST_BYTES + 1)
    except OSError as error:
        raise UsageFault(Fault(str(path), f"cannot be read: {error.strerror or error}", "name a week's file")) from None
