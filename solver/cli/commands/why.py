"""`setwright why`: why a week is as it is, and what it would be otherwise."""

from __future__ import annotations

from pathlib import Path
from typing import TYPE_CHECKING, Any

import click

from setwright.catalogue.faults import Fault, UsageFault
from setwright.solver.brief.lifts.named import exercise_named
from setwright.solver.cli.books import book_option
from setwright.solver.cli.console.messages import columns, say, watched
from setwright.solver.cli.console.output import check_target, deliver
from setwright.solver.cli.console.silence import silent_engines
from setwright.solver.cli.console.stopping import Stopping
from setwright.solver.cli.exit_codes import ExitCode
from setwright.solver.cli.lazy_group import PrintingCommand
from setwright.solver.cli.opened_week import open_or_plan
from setwright.solver.cli.option_types import WholeNumberType
from setwright.solver.cli.options import (
    brief_option,
    catalogue_option,
    open_catalogue,
    output_options,
    search_option,
    wants_json,
)
from setwright.solver.records.efforts import limits_of

if TYPE_CHECKING:
    from setwright.solver.auditing import Audit
    from setwright.solver.evaluation.evaluated_week import Line
    from setwright.solver.evaluation.resolved_day import ResolvedDay
    from setwright.solver.search.limits import Limits

Answer = tuple[dict[str, Any], str]
"""A document, and the same as text."""


@click.command("why", cls=PrintingCommand)
@click.argument("week")
@click.argument("entry", required=False)
@click.option("--solve", is_flag=True, help="Leave the exercise (of ENTRY, or each) out and solve the week anew.")
@click.option("--with", "exercise", metavar="EXERCISE", help="What the best week that holds it would cost.")
@click.option(
    "--add-minutes", type=WholeNumberType(1, 120), metavar="N", help="What N more minutes on a day would buy."
)
@search_option(None, "How hard to solve; by default as the week was.")
@brief_option
@book_option
@catalogue_option
@output_options
@click.pass_context
def command(
    ctx: click.Context,
    week: str,
    entry: str | None,
    solve: bool,
    exercise: str | None,
    add_minutes: int | None,
    search: str | None,
    brief: str | None,
    overlay: Path | None,
    as_json: bool,
    target: Path | None,
    force: bool,
) -> None:
    """Say why each line of a WEEK stands, by exact arithmetic, and what holds the muscles below their bands.

    WEEK is a file of `week --json`, or a brief, which is planned first. ENTRY is one line: mon:A, mon:dumbbell-curl.

    \b
    setwright why week.json
    setwright why week.json mon:A --solve
    setwright why week.json --with "barbell bench press"
    setwright why week.json --add-minutes 5
    """
    check_target(target, force)
    options = {"--solve": solve, "--with": exercise, "--add-minutes": add_minutes}
    asked = [name for name, value in options.items() if value]
    if len(asked) > 1:
        raise UsageFault(Fault("why", f"got {' and '.join(asked)}, expected one question at a time", "drop one"))
    if entry and (exercise or add_minutes):
        raise UsageFault(Fault("why", f"{asked[0]} asks about the whole week", "drop the ENTRY"))
    found = open_or_plan(week, brief, search, open_catalogue(overlay))
    limits = limits_of(search, found.document)
    with Stopping() as stopping, silent_engines():
        if exercise:
            document, text = _with_exercise(found.audit, exercise, limits, stopping)
        elif add_minutes:
            document, text = _with_minutes(found.audit, add_minutes, limits, stopping)
        elif solve:
            document, text = _without(found.audit, _lines_of(found.audit, entry), limits, stopping)
        else:
            document, text = _with_reasons(found.audit, _lines_of(found.audit, entry), entry is None)
    deliver(document if wants_json(as_json, target) else text, target, force)
    ctx.exit(ExitCode.STOPPED if stopping.asked else ExitCode.DONE)


def _lines_of(audited: Audit, entry: str | None) -> tuple[Line, ...]:
    """The line of an address, or every line."""
    from setwright.solver.sheets.screen.addresses import line_at

    return audited.evaluated.lines if entry is None else (line_at(audited.evaluated, entry),)


def _with_reasons(audited: Audit, lines: tuple[Line, ...], muscles: bool) -> Answer:
    """The reasons of lines, and what holds the muscles below their bands."""
    from setwright.solver.sheets.screen.explain.why import why_document, why_text
    from setwright.solver.uses.explain.bottlenecks import bottlenecks_of
    from setwright.solver.uses.explain.reasons import reason_of

    reasons = tuple(reason_of(audited, line) for line in lines)
    bottlenecks = bottlenecks_of(audited) if muscles else None
    return why_document(audited, reasons, bottlenecks), why_text(audited, reasons, bottlenecks, columns())


def _without(audited: Audit, lines: tuple[Line, ...], limits: Limits, stopping: Stopping) -> Answer:
    """Each exercise of some lines left out and the week solved anew."""
    from setwright.solver.sheets.screen.explain.without_line import without_document, without_text
    from setwright.solver.uses.explain.reasons import reason_of
    from setwright.solver.uses.explain.what_if import solved_without

    firsts = {line.exercise.id: line for line in reversed(lines)}
    chosen = [line for line in lines if firsts[line.exercise.id] is line]
    rows = []
    for line in chosen:
        _say_if_watched(f"solving without {line.exercise.name}")
        rows.append((reason_of(audited, line), solved_without(audited, line, limits, stopping)))
    return without_document(rows), without_text(rows, columns())


def _say_if_watched(message: str) -> None:
    """Say what is being solved, where someone is watching."""
    if watched():
        say(message)


def _with_exercise(audited: Audit, name: str, limits: Limits, stopping: Stopping) -> Answer:
    """The best week that holds an exercise."""
    from setwright.solver.sheets.common.words import day_name
    from setwright.solver.sheets.screen.explain.with_exercise import with_document, with_text
    from setwright.solver.uses.explain.what_if import solved_with

    exercise = exercise_named(name, audited.evaluated.resolved.catalogue)
    days = tuple(day_name(line.day) for line in audited.evaluated.lines if line.exercise.id == exercise.id)
    end = solved_with(audited, exercise, limits, stopping)
    return with_document(exercise, end, days), with_text(exercise, end, days, columns())


def _with_minutes(audited: Audit, minutes: int, limits: Limits, stopping: Stopping) -> Answer:
    """More minutes on each day in turn."""
    from setwright.solver.planning import Unsolved
    from setwright.solver.sheets.screen.explain.answers import unsolved_document, unsolved_words
    from setwright.solver.sheets.screen.explain.more_minutes import SCHEMA, minutes_document, minutes_text
    from setwright.solver.uses.explain.what_if import more_minutes

    def tell(day: ResolvedDay | None) -> None:
        where = f"with {minutes} more minutes on {day.name}" if day else "with the minutes given"
        _say_if_watched(f"solving {where}")

    end = more_minutes(audited, minutes, limits, stopping, tell)
    if isinstance(end, Unsolved):
        return unsolved_document(SCHEMA, end), unsolved_words(end) + "\n"
    return minutes_document(end), minutes_text(end, columns())
