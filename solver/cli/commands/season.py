"""`setwright season`: a span of weeks laid out in training blocks."""

from __future__ import annotations

from datetime import date
from pathlib import Path
from typing import TYPE_CHECKING, Final

import click

from setwright.catalogue.fault_collector import FaultCollector
from setwright.catalogue.faults import Fault
from setwright.solver.cli.books import book_option
from setwright.solver.cli.briefs import brief_from, say_cautions
from setwright.solver.cli.console.folder_output import deliver_all, folder_faults
from setwright.solver.cli.console.input import bytes_of
from setwright.solver.cli.console.left_behind import LeftBehind, done_or_left, end_process
from setwright.solver.cli.console.messages import columns, say
from setwright.solver.cli.console.output import check_target, deliver
from setwright.solver.cli.console.progress import ProgressLine
from setwright.solver.cli.console.silence import silent_engines
from setwright.solver.cli.console.stopping import SEASON_FOLLOWS, Stopping
from setwright.solver.cli.exit_codes import ExitCode, NoWeekError
from setwright.solver.cli.lazy_group import PrintingCommand
from setwright.solver.cli.option_types import DayType, GatheredType, SpanType, WholeNumberType, gathered_faults
from setwright.solver.cli.options import FILE, catalogue_option, open_catalogue, output_options, wants_json
from setwright.solver.uses.season.ranges import BLOCK_WEEKS, SEASON_WEEKS

if TYPE_CHECKING:
    from collections.abc import Callable

    from setwright.catalogue.entries import Catalogue
    from setwright.solver.brief.parsed_brief import ParsedBrief
    from setwright.solver.uses.season.season import Season
    from setwright.solver.uses.season.season_asked import SeasonAsked
    from setwright.solver.uses.season.season_weeks import CalendarRow

CALENDAR_BYTES: Final = 1_000_000
NONE_FOUND: Final = "no season was found (stopped)"


@click.command("season", cls=PrintingCommand)
@click.argument("brief", nargs=-1, required=True)
@click.option(
    "--from",
    "start",
    type=GatheredType(DayType()),
    required=True,
    metavar="YYYY-MM-DD",
    help="The first day; each week of the season begins on its weekday.",
)
@click.option(
    "--weeks",
    "count",
    type=GatheredType(WholeNumberType(*SEASON_WEEKS)),
    metavar="N",
    help=f"Weeks of the season, {SEASON_WEEKS[0]} to {SEASON_WEEKS[1]}; a year if unsaid.",
)
@click.option(
    "--block-weeks",
    type=GatheredType(SpanType(*BLOCK_WEEKS)),
    metavar="FROM-TO",
    help="Weeks that a block may have, its lighter week included, such as 4-6.",
)
@click.option(
    "--calendar", type=FILE, metavar="FILE", help="CSV of days off and other minutes: from,to,days,minutes,kit."
)
@click.option("--emphasis", metavar="MUSCLES", help="What is wanted most, in order, such as delts,quads.")
@click.option("--plot", type=FILE, metavar="FILE.svg", help="Draw the weekly sets of each muscle into FILE.")
@click.option("--briefs", "folder", type=FILE, metavar="FOLDER", help="Write a brief for each block into FOLDER.")
@book_option
@catalogue_option
@output_options
@click.pass_context
def command(
    ctx: click.Context,
    brief: tuple[str, ...],
    start: date | None,
    count: int | None,
    block_weeks: tuple[int, int] | None,
    calendar: Path | None,
    emphasis: str | None,
    plot: Path | None,
    folder: Path | None,
    overlay: Path | None,
    as_json: bool,
    target: Path | None,
    force: bool,
) -> None:
    """Lay out a season for a BRIEF: training blocks, and in each what is specialised, what grows and what is held.

    \b
    setwright season "3 days x 40 min" --from 2026-01-05 --emphasis delts,quads
    setwright season client.toml --from 2026-01-05 --calendar days.csv --briefs blocks --plot season.svg
    """
    from setwright.solver.sheets.screen.over_time.season import season_text

    collector = FaultCollector()
    collector.add(gathered_faults(ctx))
    catalogue = open_catalogue(overlay)
    defaults = catalogue.defaults.season
    lengths = block_weeks or defaults.block_weeks
    count = count or defaults.weeks
    _check_places(collector, (target, plot), folder, _file_names(count // lengths[0]), force)
    parsed, asked = _asked(collector, " ".join(brief), start, count, lengths, calendar, emphasis, catalogue)
    collector.raise_all()
    assert parsed is not None and asked is not None
    say_cautions(parsed, catalogue, wants_json(as_json, target))
    try:
        with Stopping(SEASON_FOLLOWS) as stopping:
            season = _searched(parsed, asked, catalogue, stopping)
    except LeftBehind:
        say(NONE_FOUND)
        end_process(ExitCode.STOPPED)
    if season is None:
        say(NONE_FOUND)
        ctx.exit(ExitCode.STOPPED)
    if wants_json(as_json, target):
        from setwright.solver.sheets.document.season.season_document import season_document

        deliver(season_document(season), target, force)
    else:
        deliver(season_text(season, columns()), target, force)
    if plot is not None:
        from setwright.solver.sheets.charts.season import drawn_season

        deliver(drawn_season(season), plot, force)
    if folder is not None:
        deliver_all(_brief_files(season), folder, force)
    ctx.exit(ExitCode.STOPPED if stopping.asked else ExitCode.DONE)


def _check_places(
    collector: FaultCollector,
    targets: tuple[Path | None, ...],
    folder: Path | None,
    names: tuple[str, ...],
    force: bool,
) -> None:
    """Collect what stands in the way of every file that is to be written."""
    for target in targets:
        collector.result_of(lambda target=target: check_target(target, force))  # type: ignore[misc]
    named = [target for target in targets if target is not None]
    if len(set(named)) < len(named):
        collector.add([Fault("--plot", f"{named[0]} is the file of -o too", "name another file")])
    if folder is not None:
        collector.add(folder_faults(folder, names, force))


def _asked(
    collector: FaultCollector,
    brief: str,
    start: date | None,
    count: int,
    block_weeks: tuple[int, int],
    calendar: Path | None,
    emphasis: str | None,
    catalogue: Catalogue,
) -> tuple[ParsedBrief | None, SeasonAsked | None]:
    """The brief, its weeks by date and its turns, as far as they can be read; faults are collected."""
    from setwright.solver.foreign.season_calendar import read_calendar
    from setwright.solver.uses.season.season_asked import season_asked
    from setwright.solver.uses.season.turns import places_of, turns_of

    parsed = collector.result_of(lambda: brief_from(brief, catalogue))
    rows: tuple[CalendarRow, ...] = ()
    if calendar is not None:
        said = "name a CSV file"
        rows = (
            collector.result_of(
                lambda: read_calendar(bytes_of(calendar, CALENDAR_BYTES, said), str(calendar), catalogue)
            )
            or ()
        )
    words = () if emphasis is None else tuple(word.strip() for word in emphasis.split(",") if word.strip())
    if emphasis is not None and not words:
        collector.add([Fault("--emphasis", "names no muscle", "write for example delts,quads")])
    if parsed is None:
        collector.result_of(lambda: places_of(words, catalogue))
        return None, None
    if start is None:
        collector.result_of(lambda: turns_of(parsed.brief, words, catalogue))
        return parsed, None
    return parsed, collector.result_of(
        lambda: season_asked(parsed.brief, start, count, block_weeks, rows, words, catalogue)
    )


def _searched(
    parsed: ParsedBrief,
    asked: SeasonAsked,
    catalogue: Catalogue,
    stopping: Stopping,
) -> Season | None:
    """The season, with a line of progress on a terminal; None where it was stopped before there was one.

    Raises NoWeekError where no reference week is possible, and LeftBehind where it goes on after it was stopped.
    """
    with silent_engines():
        from setwright.solver.engines.stopped import StoppedRun
        from setwright.solver.search.solve_options import SolveOptions
        from setwright.solver.uses.season.season_search import NoReferenceWeek, season_of

        line = ProgressLine()
        try:
            options, tell = SolveOptions(stopped=stopping), _on_progress_line(line)
            weeks, turns, lengths = asked.weeks, asked.turns, asked.block_weeks
            return done_or_left(lambda: season_of(parsed, weeks, turns, lengths, catalogue, options, tell), stopping)
        except NoReferenceWeek as error:
            raise NoWeekError(error.faults, ExitCode.CLASH) from None
        except StoppedRun:
            return None
        finally:
            line.clear()


def _on_progress_line(line: ProgressLine) -> Callable[[int, int], None]:
    def tell(minutes: int, days: int) -> None:
        if line.on:
            line.write(f"solving a reference week of {minutes} minutes on {days} days")

    return tell


def _file_names(count: int) -> tuple[str, ...]:
    return tuple(f"block-{number:02d}.toml" for number in range(1, count + 1))


def _brief_files(season: Season) -> dict[str, bytes]:
    """A brief file for each block."""
    from setwright.solver.sheets.plain.brief_toml import brief_toml
    from setwright.solver.sheets.screen.over_time.season import block_comment

    names = _file_names(len(season.blocks))
    return {
        name: brief_toml(block.brief.brief, block_comment(season, block))
        for name, block in zip(names, season.blocks, strict=True)
    }
