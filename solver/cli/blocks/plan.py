"""`setwright block plan`: a brief in, several weeks out; those of a client are kept in the book."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import replace
from datetime import date
from functools import partial
from pathlib import Path
from typing import TYPE_CHECKING, Any

import click

from setwright.catalogue.fault_collector import FaultCollector
from setwright.catalogue.faults import UsageFault
from setwright.solver.cli.blocks.output import output_faults, result_of, sheets_of
from setwright.solver.cli.blocks.types_of_spans import SetsNowType, ShortType, SpanType, TravelType
from setwright.solver.cli.books import book_option, is_code, the_book
from setwright.solver.cli.briefs import brief_from, say_cautions
from setwright.solver.cli.console.folder_output import deliver_all, folder_faults
from setwright.solver.cli.console.messages import say
from setwright.solver.cli.console.output import check_target, deliver
from setwright.solver.cli.console.progress import ProgressLine
from setwright.solver.cli.console.silence import silent_engines
from setwright.solver.cli.console.stopping import Stopping
from setwright.solver.cli.exit_codes import ExitCode, NoWeekError
from setwright.solver.cli.lazy_group import PrintingCommand
from setwright.solver.cli.option_types import DayType, GatheredType, gathered_faults
from setwright.solver.cli.options import (
    FILE,
    catalogue_option,
    open_catalogue,
    output_options,
    search_option,
    wants_json,
)
from setwright.solver.cli.sheet_options import coach_with, sheets_options, undated_faults
from setwright.solver.log.mondays import coming_monday
from setwright.solver.search.limits import DEFAULT, SEARCHES
from setwright.solver.search.solve_options import SolveOptions
from setwright.solver.uses.blocks.ask import BlockAsk

if TYPE_CHECKING:
    from setwright.catalogue.entries import Catalogue
    from setwright.solver.brief.parsed_brief import ParsedBrief
    from setwright.solver.evaluation.week import Week
    from setwright.solver.uses.blocks.block import Block, NoBlock


@click.command("plan", cls=PrintingCommand)
@click.argument("brief", nargs=-1, required=True)
@click.option("--weeks", type=GatheredType(click.INT, 6), default=6, show_default=True, metavar="N", help="Weeks.")
@click.option("--starts", type=GatheredType(DayType()), metavar="MONDAY", help="The first day, as YYYY-MM-DD.")
@click.option("--lighter-every", type=GatheredType(click.INT), metavar="N", help="Every Nth week is lighter; 0: none.")
@click.option("--off", type=GatheredType(SpanType()), multiple=True, metavar="FROM..TO", help="Days without training.")
@click.option(
    "--travel",
    type=GatheredType(TravelType()),
    multiple=True,
    metavar="'FROM..TO KIT [2x25]'",
    help="Days away, with the kit there.",
)
@click.option(
    "--short",
    type=GatheredType(ShortType()),
    multiple=True,
    metavar="'FROM..TO 2x30'",
    help="Weeks of other sessions than usual.",
)
@click.option(
    "--minimum", type=GatheredType(SpanType()), multiple=True, metavar="FROM..TO", help="Weeks at the minimum dose."
)
@click.option("--shift", is_flag=True, help="Such weeks push the others back; else the calendar goes on.")
@click.option(
    "--break", "break_weeks", type=GatheredType(click.INT, 0), default=0, metavar="N", help="Weeks off before it."
)
@click.option(
    "--now", type=GatheredType(SetsNowType(), ()), default=(), metavar="'CHEST 6, ..'", help="Weekly sets at present."
)
@click.option("--week", "week_file", type=FILE, metavar="FILE", help="Make it of this week; else one is planned.")
@sheets_options
@click.option("--plot", type=FILE, metavar="FILE", help="Draw sets and loads by week into an SVG file.")
@click.option("--private", is_flag=True, help="Let JSON carry the client's cautions and clearance.")
@search_option(DEFAULT)
@book_option
@catalogue_option
@output_options
@click.pass_context
def command(
    ctx: click.Context,
    /,
    brief: tuple[str, ...],
    week_file: Path | None,
    folder: Path | None,
    formats: tuple[str, ...] | None,
    coach_file: Path | None,
    plot: Path | None,
    private: bool,
    search: str,
    overlay: Path | None,
    as_json: bool,
    target: Path | None,
    force: bool,
    **asked: Any,
) -> None:
    """Plan a block of weeks from a BRIEF: a phrase, a TOML file, - for standard input, or @CODE.

    The block of a client is kept in the book; it begins on the coming Monday unless --starts says when.

    \b
    setwright block plan "3 days x 45 min, novice" --weeks 6 --starts 2026-01-05
    setwright block plan @M --travel "2026-01-20..2026-01-29 hotel-gym 2x25" --sheets cards
    """
    catalogue, collector, source = open_catalogue(overlay), FaultCollector(), " ".join(brief)
    ask = dated(ask_of(asked)) if is_code(source) else ask_of(asked)
    collector.add(gathered_faults(ctx))
    for path in (target, plot):
        collector.result_of(partial(check_target, path, force))
    collector.add(list(output_faults(folder, formats, plot)))
    names = formats or ("pdf",)
    coach = collector.result_of(partial(coach_with, coach_file, catalogue, start=ask.starts)) if folder else None
    collector.add(undated_faults(names, coach) if folder else [])
    parsed = collector.result_of(lambda: brief_from(source, catalogue))
    collector.result_of(lambda: _checked(ask, parsed, catalogue, folder, names, force))
    week = collector.result_of(lambda: (_week_of(week_file, parsed, catalogue),))
    collector.raise_all()
    assert parsed is not None and week is not None
    say_cautions(parsed, catalogue, wants_json(as_json, target))
    with Stopping() as stopping:
        options = SolveOptions(SEARCHES[search], stopped=stopping, pairs_note=False)
        block = _planned(parsed, catalogue, ask, options, week[0])
    files = sheets_of(block, names, coach) if folder else {}
    as_document = wants_json(as_json, target)
    result, drawn = result_of(block, as_document, private), _drawn(block) if plot else ""
    if folder:
        deliver_all(files, folder, force)
    if plot:
        deliver(drawn, plot, force)
    if is_code(source):
        keep(source, block)
    deliver(result, target, force)
    if private and as_document:
        say("note: the json carries health notes (--private); it is not for the client's folder")
    ctx.exit(ExitCode.STOPPED if stopping.asked else ExitCode.DONE)


def dated(ask: BlockAsk) -> BlockAsk:
    """The ask with a first day: the coming Monday, which is said, where it names none."""
    if ask.starts is not None:
        return ask
    monday = coming_monday(date.today())
    say(f"the block starts on {monday.isoformat()}, the coming Monday; --starts names another")
    return replace(ask, starts=monday)


def keep(code: str, block: Block) -> None:
    """Keep a client's block in the book, without health notes; raises SetwrightError."""
    from setwright.solver.book.clients import client_of
    from setwright.solver.book.planned import keep_block
    from setwright.solver.sheets.document.blocks.block_document import block_document

    starts, ends = block.weeks[0].starts, block.weeks[-1].place.ends
    assert starts is not None and ends is not None
    with the_book() as book:
        client = client_of(book, code)
        keep_block(book, client, starts, ends, block_document(block))
    say(f"written down for @{client.code}: the block of {starts.isoformat()} to {ends.isoformat()}")


def ask_of(asked: Mapping[str, Any]) -> BlockAsk:
    """The ask that the options stand for; a part that could not be read is left out."""

    def spans(kind: str) -> tuple[Any, ...]:
        return tuple(span for span in asked[kind] if span is not None)

    return BlockAsk(
        weeks=asked["weeks"],
        starts=asked["starts"],
        lighter_every=asked["lighter_every"],
        off=spans("off"),
        travel=spans("travel"),
        short=spans("short"),
        minimum=spans("minimum"),
        break_weeks_before=asked["break_weeks"],
        now=asked["now"],
        shifted=asked["shift"],
    )


def _checked(
    ask: BlockAsk,
    parsed: ParsedBrief | None,
    catalogue: Catalogue,
    folder: Path | None,
    formats: tuple[str, ...],
    force: bool,
) -> None:
    """Raise UsageFault for what is wrong with the ask, or with the files its sheets would be."""
    from setwright.solver.sheets.blocks.files import sheet_name
    from setwright.solver.uses.blocks.ask_faults import checked
    from setwright.solver.uses.blocks.calendar import calendar_of

    asked = checked(ask, catalogue)
    if folder is None or parsed is None:
        return
    weeks = [week.number for week in calendar_of(asked, parsed.brief, catalogue.defaults.block) if week.kind != "off"]
    files = tuple(sheet_name(number, name) for number in weeks for name in formats)
    faults = folder_faults(folder, files, force)
    if faults:
        raise UsageFault(faults)


def _week_of(week_file: Path | None, parsed: ParsedBrief | None, catalogue: Catalogue) -> Week | None:
    """The week of a file held against the brief, or None where one is to be planned."""
    if week_file is None or parsed is None:
        return None
    from setwright.solver.cli.console.input import bytes_of, place_of
    from setwright.solver.foreign.foreign_week import read_any
    from setwright.solver.sheets.common.json_values import MOST_BYTES

    data = bytes_of(week_file, MOST_BYTES, "name a week's file")
    return read_any(data, place_of(week_file), catalogue, parsed, False).week


def _planned(
    parsed: ParsedBrief, catalogue: Catalogue, ask: BlockAsk, options: SolveOptions, week: Week | None
) -> Block:
    """The block, with a line of progress on a terminal; raises NoWeekError where a week of it has none."""
    from setwright.solver.uses.blocks.block import NoBlock
    from setwright.solver.uses.blocks.planning import plan_block

    line = ProgressLine()
    try:
        with silent_engines():
            found = plan_block(parsed, catalogue, ask, replace(options, watch=line), week)
    finally:
        line.clear()
    if isinstance(found, NoBlock):
        raise _no_week(found)
    return found


def _no_week(found: NoBlock) -> NoWeekError:
    from setwright.solver.planning import Clash
    from setwright.solver.sheets.blocks.no_block import no_block_fault

    code = ExitCode.CLASH if isinstance(found.end, Clash) else ExitCode.OUT_OF_TIME
    return NoWeekError(no_block_fault(found), code)


def _drawn(block: Block) -> str:
    from setwright.solver.sheets.screen.over_time.block_plot import drawn_block

    return drawn_block(block)
