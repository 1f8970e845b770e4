"""`setwright sheet`: a week's JSON in, the files that a client is handed out."""

from __future__ import annotations

from dataclasses import replace
from datetime import date
from functools import partial
from pathlib import Path
from typing import TYPE_CHECKING, Any

import click

from setwright.catalogue.fault_collector import FaultCollector
from setwright.catalogue.faults import Fault, UsageFault
from setwright.solver.cli.books import book_option, is_code
from setwright.solver.cli.console.folder_output import deliver_all, folder_faults
from setwright.solver.cli.console.input import bytes_of, place_of
from setwright.solver.cli.console.messages import say
from setwright.solver.cli.lazy_group import PrintingCommand
from setwright.solver.cli.opened_week import week_of_client
from setwright.solver.cli.option_types import GatheredType, WholeNumberType, gathered_faults
from setwright.solver.cli.options import FILE, catalogue_option, open_catalogue
from setwright.solver.cli.sheet_options import FORMAT_NAMES, coach_option, coach_with, start_option, undated_faults

if TYPE_CHECKING:
    from setwright.catalogue.entries import Catalogue
    from setwright.solver.sheets.handout.coach import Coach
    from setwright.solver.sheets.handout.handout import Handout
    from setwright.solver.sheets.html.page import Plots


@click.command("sheet", cls=PrintingCommand)
@click.argument("week", type=FILE)
@click.option(
    "--as",
    "formats",
    type=FORMAT_NAMES,
    required=True,
    metavar="FORMATS",
    help="pdf, xlsx, ics, html, csv, md, json; commas.",
)
@click.option("-o", "--output", "folder", type=FILE, required=True, metavar="FOLDER", help="Write into FOLDER.")
@coach_option
@start_option
@click.option(
    "--paper",
    type=GatheredType(click.Choice(("a4", "letter"), case_sensitive=False)),
    metavar="PAPER",
    help="a4 or letter; a4 unless coach.toml says so.",
)
@click.option(
    "--weeks",
    type=GatheredType(WholeNumberType(1, 52)),
    metavar="N",
    help="How many weeks the calendar repeats the week.",
)
@click.option(
    "--revision",
    type=GatheredType(WholeNumberType(0, 10_000)),
    metavar="N",
    help="Raise it so that a calendar imported before is updated.",
)
@click.option(
    "--beside",
    type=FILE,
    multiple=True,
    metavar="FILE",
    help="Show a curve's or a comparison's JSON on the page; may be repeated.",
)
@click.option("--private", is_flag=True, help="Let json carry the client's cautions and clearance.")
@click.option("--force", is_flag=True, help="Write over files that are there.")
@book_option
@catalogue_option
@click.pass_context
def command(
    ctx: click.Context,
    week: Path,
    formats: tuple[str, ...],
    folder: Path,
    coach_file: Path | None,
    start: date | None,
    paper: str | None,
    weeks: int | None,
    revision: int | None,
    beside: tuple[Path, ...],
    private: bool,
    force: bool,
    overlay: Path | None,
) -> None:
    """Write a WEEK (its JSON; - for standard input) as the files that a client is handed.

    Health notes stand in none of them. A week whose client needs clearance is refused until it is recorded.
    """
    from setwright.solver.sheets.formats import file_name, written

    catalogue = open_catalogue(overlay)
    collector = FaultCollector()
    collector.add(gathered_faults(ctx))
    collector.add(_private_faults(formats, private))
    coach = collector.result_of(
        partial(coach_with, coach_file, catalogue, start=start, paper=paper, weeks=weeks, revision=revision)
    )
    collector.add(undated_faults(formats, coach))
    plots = collector.result_of(lambda: _plots_beside(beside, formats, catalogue))
    read = collector.result_of(lambda: (_week_document(week, catalogue),))
    handout = read and collector.result_of(lambda: _handed(*read, catalogue, coach, place_of(week), formats, private))
    files = {name: file_name(name, handout) for name in formats} if handout else {}
    collector.add(folder_faults(folder, tuple(files.values()), force))
    collector.raise_all()
    assert handout is not None and read is not None
    private_handout = replace(handout, document=read[0]) if private else handout
    contents: dict[str, bytes] = {}
    for name in formats:
        data = collector.result_of(partial(written, name, private_handout if name == "json" else handout, plots))
        contents |= {} if data is None else {files[name]: data}
    collector.raise_all()
    deliver_all(contents, folder, force)
    if read[0]["brief"].get("title") and not handout.document["brief"]["title"]:
        say("note: the brief's title tells of health and is left out")
    if private:
        say("note: the json carries health notes (--private); it is not for the client's folder")


def _private_faults(formats: tuple[str, ...], private: bool) -> list[Fault]:
    if not private or "json" in formats:
        return []
    return [Fault("--private", "is for json alone, which is not asked for", "drop it, or add json to --as")]


def _week_document(source: Path, catalogue: Catalogue) -> Any:
    """The document of a file, or of the week that the book has for a client (@CODE) today; raises UsageFault.

    A client's has the health notes, by which its figures are checked; the handout takes them out again.
    """
    from setwright.solver.sheets.handout.handout import private_document

    if not is_code(str(source)):
        return _document_of(source)
    found = week_of_client(str(source), catalogue)
    return private_document(found.document, found.parsed.brief)


def _document_of(source: Path) -> Any:
    """The JSON of a file; raises UsageFault."""
    from setwright.solver.sheets.common.json_values import MOST_BYTES, parse_json

    return parse_json(bytes_of(source, MOST_BYTES, "name a week's file"), place_of(source))


def _plots_beside(paths: tuple[Path, ...], formats: tuple[str, ...], catalogue: Catalogue) -> Plots | None:
    """What is shown beside the week, from files of `curve` and `compare`; raises UsageFault."""
    from setwright.solver.sheets.formats import WITH_PLOTS
    from setwright.solver.sheets.html.beside import plots_of_documents

    if not paths:
        return None
    if WITH_PLOTS not in formats:
        remedy = f"add {WITH_PLOTS} to --as, or drop it"
        raise UsageFault(Fault("--beside", f"is for {WITH_PLOTS} alone, which is not asked for", remedy))
    return plots_of_documents([(place_of(path), _document_of(path)) for path in paths], catalogue)


def _handed(
    document: Any, catalogue: Catalogue, coach: Coach | None, where: str, formats: tuple[str, ...], private: bool
) -> Handout:
    """The handout of a week's document; raises UsageFault, and SetwrightError where a clearance is missing.

    Only a private json, alone, waits for no clearance: it stays with the coach.
    """
    from setwright.solver.sheets.handout.coach import DEFAULT_COACH
    from setwright.solver.sheets.handout.handout import handout_of

    due = not (private and formats == ("json",))
    return handout_of(document, catalogue, coach or DEFAULT_COACH, where=where, clearance_due=due)
