"""`setwright block next`: what to load next, from the log, with one reason each."""

from __future__ import annotations

from collections.abc import Sequence
from datetime import date
from pathlib import Path
from typing import TYPE_CHECKING, Any

import click

from setwright.catalogue.faults import Fault, UsageFault
from setwright.solver.cli.blocks.output import output_faults, sheet_stem
from setwright.solver.cli.books import MARK, book_option, the_book
from setwright.solver.cli.console.folder_output import deliver_all
from setwright.solver.cli.console.messages import columns
from setwright.solver.cli.console.output import check_target, deliver
from setwright.solver.cli.fault_collector import FaultCollector
from setwright.solver.cli.lazy_group import PrintingCommand
from setwright.solver.cli.option_types import DayType, gathered_faults
from setwright.solver.cli.options import FILE, catalogue_option, open_catalogue, output_options, wants_json
from setwright.solver.cli.sheet_options import coach_with, sheets_options, undated_faults
from setwright.solver.records.kept_blocks import blocks_of, kept_at, week_on
from setwright.solver.records.week_at_hand import as_it_stands, monday_of

if TYPE_CHECKING:
    from setwright.solver.evaluation.evaluated_week import EvaluatedWeek
    from setwright.solver.log.values import LoggedSession
    from setwright.solver.sheets.handout.coach import Coach
    from setwright.solver.uses.blocks.block import Block, BlockWeek
    from setwright.solver.uses.progress.next_targets import NextTarget


LAST = 6
"""So many of the last sessions are set against the plan."""


@click.command("next", cls=PrintingCommand)
@click.argument("code")
@click.option("--on", type=DayType(), metavar="DATE", help="The week that this day stands in; today.")
@sheets_options
@click.option("--plots", type=FILE, metavar="FOLDER", help="Draw each lift's estimated maximum into FOLDER.")
@book_option
@catalogue_option
@output_options
@click.pass_context
def command(
    ctx: click.Context,
    code: str,
    on: date | None,
    folder: Path | None,
    formats: tuple[str, ...] | None,
    plots: Path | None,
    coach_file: Path | None,
    overlay: Path | None,
    as_json: bool,
    target: Path | None,
    force: bool,
) -> None:
    """Say what CODE loads next in the week of the block, why, what was done of the plan, and what stands still.

    \b
    setwright block next @M --on 2026-01-12 --sheets cards
    """
    from setwright.solver.book.clients import client_of
    from setwright.solver.book.sessions import sessions_of
    from setwright.solver.uses.progress.in_block import block_targets

    catalogue, collector, day = open_catalogue(overlay), FaultCollector(), on or date.today()
    collector.result_of(lambda: check_target(target, force))
    collector.add(gathered_faults(ctx))
    collector.add(list(output_faults(folder, formats, None)))
    collector.raise_all()
    with the_book() as book:
        client = client_of(book, code)
        found, sessions = blocks_of(book, client, catalogue), sessions_of(book, client)
        block, blocks = found[kept_at(book, client, day).id], tuple(found.values())
        week = as_it_stands(book, client, _week_of(block, day, client.code), catalogue)
    targets = block_targets(week, sessions, day, blocks)
    if folder:
        names = formats or ("pdf",)
        coach = coach_with(coach_file, catalogue, start=week.starts)
        collector.add(undated_faults(names, coach))
        collector.raise_all()
        deliver_all(_sheets(block, week, targets, names, coach), folder, force)
    if plots:
        deliver_all(_plots(week, sessions), plots, force)
    deliver(_result_of(blocks, week, targets, sessions, day, wants_json(as_json, target)), target, force)


def _week_of(block: Block, day: date, code: str) -> BlockWeek:
    """The week that a day stands in; raises UsageFault outside the block and in a week off."""
    week = week_on(block, day)
    if week is None:
        said = f"{day.isoformat()} lies outside the block, {block.weeks[0].starts} to {block.weeks[-1].place.ends}"
        raise UsageFault(Fault(f"{MARK}{code}", said, "name a day of it with --on, or plan the next block"))
    if week.evaluated is None:
        raise UsageFault(Fault(f"{MARK}{code}", f"week {week.number} is off", "name a day of another week with --on"))
    return week


def _planned_for(blocks: Sequence[Block], session: LoggedSession, otherwise: BlockWeek) -> EvaluatedWeek:
    """The week that was planned for a session's day, else another."""
    planned = [week for block in blocks if (week := week_on(block, session.on)) is not None]
    found = (planned or [otherwise])[-1].evaluated or otherwise.evaluated
    assert found is not None
    return found


def _result_of(
    blocks: Sequence[Block],
    week: BlockWeek,
    targets: tuple[NextTarget, ...],
    sessions: tuple[LoggedSession, ...],
    day: date,
    document: bool,
) -> str | dict[str, Any]:
    """The targets as a document, or as text with what was done before and what stands still."""
    evaluated, audit = week.evaluated, week.audit
    assert evaluated is not None and audit is not None
    unit = evaluated.resolved.brief.client.unit
    if document:
        from setwright.solver.sheets.document.progress.next_document import next_document

        return next_document(targets, evaluated, unit, day)
    from setwright.solver.sheets.screen.progress.done_table import muscles_text, sessions_text
    from setwright.solver.sheets.screen.progress.next_table import next_text
    from setwright.solver.sheets.screen.progress.stall_words import stalls_text
    from setwright.solver.uses.progress.done_against_planned import muscles_done, sessions_done
    from setwright.solver.uses.progress.in_block import LIGHTER, kits_of, outside
    from setwright.solver.uses.progress.stalls import stalls

    width = columns()
    parts = [f"Week {week.number}, {week.kind}, from {week.starts}\n", next_text(targets, evaluated, width)]
    past = [session for session in sessions if session.on <= day]
    done = [one for session in past[-LAST:] for one in sessions_done(_planned_for(blocks, session, week), [session])]
    if done:
        last = [session for session in past if monday_of(session.on) == monday_of(past[-1].on)]
        planned = _planned_for(blocks, past[-1], week)
        parts += [
            sessions_text(done, evaluated, unit, width),
            muscles_text(muscles_done(planned, last), planned, width),
        ]
    if found := stalls(audit, outside(LIGHTER, blocks, past), kits_of(evaluated), unit):
        parts.append(stalls_text(found, evaluated.resolved.catalogue, unit, width))
    return "\n".join(parts)


def _sheets(
    block: Block, week: BlockWeek, targets: tuple[NextTarget, ...], formats: tuple[str, ...], coach: Coach | None
) -> dict[str, bytes]:
    """File name -> bytes of the week's sheets, its cards with the loads from the log."""
    from setwright.solver.sheets.blocks.handouts import week_handout
    from setwright.solver.sheets.formats import FORMATS, written
    from setwright.solver.sheets.handout.coach import DEFAULT_COACH
    from setwright.solver.sheets.screen.progress.next_table import card_loads

    assert week.evaluated is not None
    handout = week_handout(block, week, coach or DEFAULT_COACH, card_loads(week.evaluated, targets))
    return {f"{sheet_stem(week.number)}.{FORMATS[name].ending}": written(name, handout) for name in formats}


def _plots(week: BlockWeek, sessions: tuple[LoggedSession, ...]) -> dict[str, bytes]:
    """File name -> SVG of each lift's estimated maximum, for lifts that were done twice or more."""
    from setwright.solver.sheets.screen.progress.stall_words import drawn_maximum
    from setwright.solver.uses.progress.maximum_course import has_maximum, maximum_course

    evaluated = week.evaluated
    assert evaluated is not None
    files: dict[str, bytes] = {}
    for line in evaluated.lines:
        if has_maximum(line.exercise):
            course = maximum_course(sessions, line.entry, evaluated.resolved.catalogue)
            if len(course) > 1:
                drawn = drawn_maximum(course, line.exercise.name, evaluated.resolved.brief.client.unit)
                files[f"{line.exercise.id}.svg"] = drawn.encode()
    if not files:
        raise UsageFault(Fault("--plots", "no lift of the week was logged twice with its load", "log more sessions"))
    return files
