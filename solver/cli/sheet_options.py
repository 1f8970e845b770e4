"""What commands that write sheets are told alike: the formats, the coach's file and what is laid over it."""

from __future__ import annotations

from collections.abc import Callable
from datetime import date
from pathlib import Path
from typing import TYPE_CHECKING, Any, Final, TypeVar

import click

from setwright.catalogue.fault_collector import FaultCollector
from setwright.catalogue.faults import Fault
from setwright.solver.cli.console.input import bytes_of
from setwright.solver.cli.option_types import DayType, GatheredType, WordsType
from setwright.solver.cli.options import FILE
from setwright.solver.sheets.formats import DATED, FORMATS

if TYPE_CHECKING:
    from setwright.catalogue.entries import Catalogue
    from setwright.solver.sheets.handout.coach import Coach

Command = TypeVar("Command", bound=Callable[..., Any])
FORMAT_NAMES: Final = GatheredType(WordsType(tuple(FORMATS), "format"), instead=())

coach_option = click.option(
    "--coach", "coach_file", type=FILE, metavar="FILE", help="Letterhead, words and defaults (coach.toml)."
)
start_option = click.option(
    "--start",
    type=GatheredType(DayType()),
    metavar="YYYY-MM-DD",
    help="Each session falls on its first weekday from this day on.",
)


def sheets_options(command: Command) -> Command:
    """--sheets FOLDER, --as FORMATS and --coach of the commands of a block."""
    folder = click.option("--sheets", "folder", type=FILE, metavar="FOLDER", help="Write the sheets into FOLDER.")
    formats = click.option(
        "--as", "formats", type=FORMAT_NAMES, metavar="FORMATS", help="Formats of the sheets, as in sheet; pdf."
    )
    return folder(formats(coach_option(command)))


def coach_with(coach_file: Path | None, catalogue: Catalogue, **options: date | str | int | None) -> Coach:
    """The coach's file with the options that were given laid over it; raises UsageFault with every fault of both."""
    from setwright.solver.sheets.handout.coach import DEFAULT_COACH, MOST_BYTES, overlaid, parse_coach

    collector = FaultCollector()
    coach = DEFAULT_COACH
    if coach_file is not None:
        read = collector.result_of(
            lambda: parse_coach(
                bytes_of(coach_file, MOST_BYTES, "name the coach's own TOML file"), catalogue, str(coach_file)
            )
        )
        coach = read or coach
    found = collector.result_of(lambda: overlaid(coach, options))
    collector.raise_all()
    assert found is not None
    return found


def undated_faults(formats: tuple[str, ...], coach: Coach | None) -> list[Fault]:
    """The fault of a format that needs a start date and has none."""
    needs = [name for name in formats if name in DATED]
    if coach is None or coach.start is not None or not needs:
        return []
    return [Fault("--start", f"is missing, {' and '.join(needs)} cannot be dated", "add --start YYYY-MM-DD")]
