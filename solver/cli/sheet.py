"""`setwright sheet`: a week's JSON in, the files that a client is handed out."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import replace
from functools import partial
from pathlib import Path
from typing import TYPE_CHECKING, Any, TypeVar

import click

from setwright.catalogue.faults import Fault, SetwrightError, UsageFault
from setwright.solver.cli.folder import deliver_all, folder_faults
from setwright.solver.cli.opened import bytes_of
from setwright.solver.cli.options import FILE, catalogue_option, open_catalogue
from setwright.solver.cli.output import say

if TYPE_CHECKING:
    from setwright.catalogue.entries import Catalogue
    from setwright.solver.sheets.handout.coach import Coach
    from setwright.solver.sheets.handout.handout import Handout
    from setwright.solver.sheets.html.page import Plots

Found = TypeVar("Found")


@click.command("sheet")
@click.argument("week", type=FILE)
@click.option("--as", "formats", required=True, metavar="FORMATS", help="pdf, xlsx, ics, html, csv, md, json; commas.")
@click.option("-o", "--output", "folder", type=FILE, required=True, metavar="FOLDER", help="Write into FOLDER.")
@click.option("--coach", "coach_file", type=FILE, metavar="FILE", help="Letterhead, words and defaults (coach.toml).")
@click.option("--start", metavar="YYYY-MM-DD", help="Each session falls on its first weekday from this day on.")
@click.option("--paper", metavar="PAPER", help="a4 or letter; a4 unless coach.toml says so.")
@click.option("--weeks", metavar="N", help="How many weeks the calendar repeats the week.")
@click.option("--revision", metavar="N", help="Raise it so that a calendar imported before is updated.")
@click.option(
    "--beside",
    type=FILE,
    multiple=True,
    metavar="FILE",
    help="Show a curve's or a comparison's JSON on the page; may be repeated.",
)
@click.option("--private", is_flag=True, help="Let json carry the client's cautions and clearance.")
@click.option("--force", is_flag=True, help="Write over files that are there.")
@catalogue_option
def command(
    week: Path,
    formats: str,
    folder: Path,
    coach_file: Path | None,
    start: str | None,
    paper: str | None,
    weeks: str | None,
    revision: str | None,
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
    kept = Kept()
    names = kept.of(lambda: formats_of(formats, private)) or ()
    said = {"start": start, "paper": paper, "weeks": weeks, "revision": revision}
    coach = kept.of(lambda: coach_of(coach_file, said, catalogue))
    kept.all(undated(names, coach))
    plots = kept.of(lambda: plots_beside(beside, names, catalogue))
    read = kept.of(lambda: (document_of(week),))
    handout = None if read is None else kept.of(lambda: handed(*read, catalogue, coach, place_of(week), names, private))
    files = {} if handout is None else {name: file_name(name, handout) for name in names}
    kept.all(folder_faults(folder, tuple(files.values()), force))
    kept.stop()
    assert handout is not None and read is not None
    own = replace(handout, document=read[0]) if private else handout
    made: dict[str, bytes] = {}
    for name in names:
        data = kept.of(partial(written, name, own if name == "json" else handout, plots))
        made |= {} if data is None else {files[name]: data}
    kept.stop()
    deliver_all(made, folder, force)
    if read[0]["brief"].get("title") and not handout.document["brief"]["title"]:
        say("note: the brief's title tells of health and is left out")
    if private:
        say("note: the json carries health notes (--private); it is not for the client's folder")


class Kept:
    """The faults met, kept until all can be told at once."""

    def __init__(self) -> None:
        self.faults: list[Fault] = []
        self.usage = False

    def of(self, act: Callable[[], Found]) -> Found | None:
        """What the act returns, or None where it raised and its faults were kept."""
        try:
            return act()
        except SetwrightError as error:
            self.faults += error.faults
            self.usage = self.usage or isinstance(error, UsageFault)
            return None

    def all(self, faults: list[Fault]) -> None:
        self.faults += faults
        self.usage = self.usage or bool(faults)

    def stop(self) -> None:
        """Raise all that was kept: as wrong use when any of it is."""
        if self.faults:
            raise (UsageFault if self.usage else SetwrightError)(self.faults)


def formats_of(said: str, private: bool) -> tuple[str, ...]:
    """The formats named, each once."""
    from setwright.catalogue.near import did_you_mean
    from setwright.solver.sheets.formats import FORMATS

    names = tuple(dict.fromkeys(part.strip().lower() for part in said.split(",") if part.strip()))
    known = ", ".join(FORMATS)
    faults = [
        Fault("--as", f"{name!r} is no format", did_you_mean(name, FORMATS) or f"the formats are {known}")
        for name in names
        if name not in FORMATS
    ]
    if not names:
        faults.append(Fault("--as", "names no format", f"the formats are {known}"))
    if private and "json" not in names:
        faults.append(Fault("--private", "is for json alone, which is not asked for", "drop it, or add json to --as"))
    if faults:
        raise UsageFault(faults)
    return names


def coach_of(path: Path | None, said: dict[str, str | None], catalogue: Catalogue) -> Coach:
    """The coach's file with the options laid over it."""
    from setwright.solver.sheets.handout.coach import DEFAULT_COACH, overlaid, parse_coach

    kept = Kept()
    coach = DEFAULT_COACH
    if path is not None:
        data = kept.of(lambda: coach_bytes(path))
        coach = (kept.of(lambda: parse_coach(data, catalogue, str(path))) if data is not None else None) or coach
    found = kept.of(lambda: overlaid(coach, said))
    kept.stop()
    assert found is not None
    return found


def coach_bytes(path: Path) -> bytes:
    from setwright.solver.sheets.handout.coach import MOST_BYTES

    try:
        with path.open("rb") as file:
            return file.read(MOST_BYTES + 1)
    except OSError as error:
        said = f"cannot be read: {error.strerror or error}"
        raise UsageFault(Fault(str(path), said, "name the coach's own TOML file")) from None


def undated(names: tuple[str, ...], coach: Coach | None) -> list[Fault]:
    """The fault of a format that needs a start date and has none."""
    from setwright.solver.sheets.formats import DATED

    needs = [name for name in names if name in DATED]
    if coach is None or coach.start is not None or not needs:
        return []
    return [Fault("--start", f"is missing, {' and '.join(needs)} cannot be dated", "add --start YYYY-MM-DD")]


def document_of(week: Path) -> Any:
    from setwright.solver.sheets.document.json_values import parse_json

    return parse_json(bytes_of(week), place_of(week))


def plots_beside(paths: tuple[Path, ...], names: tuple[str, ...], catalogue: Catalogue) -> Plots | None:
    """What is shown beside the week, from files of `curve` and `compare`."""
    from setwright.solver.sheets.formats import WITH_PLOTS
    from setwright.solver.sheets.html.beside import plots_of_documents

    if not paths:
        return None
    if WITH_PLOTS not in names:
        remedy = f"add {WITH_PLOTS} to --as, or drop it"
        raise UsageFault(Fault("--beside", f"is for {WITH_PLOTS} alone, which is not asked for", remedy))
    return plots_of_documents([(place_of(path), document_of(path)) for path in paths], catalogue)


def place_of(week: Path) -> str:
    return "standard input" if str(week) == "-" else str(week)


def handed(
    document: Any, catalogue: Catalogue, coach: Coach | None, where: str, names: tuple[str, ...], private: bool
) -> Handout:
    """The handout; only a private json, alone, waits for no clearance."""
    from setwright.solver.sheets.handout.coach import DEFAULT_COACH
    from setwright.solver.sheets.handout.handout import handout_of

    due = not (private and names == ("json",))
    return handout_of(document, catalogue, coach or DEFAULT_COACH, where=where, clearance_due=due)
