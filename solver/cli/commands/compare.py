"""`setwright compare`: weeks side by side."""

from __future__ import annotations

from pathlib import Path
from typing import TYPE_CHECKING, Final

import click

from setwright.catalogue.faults import SetwrightError, UsageFault
from setwright.solver.cli.books import book_option
from setwright.solver.cli.briefs import brief_from
from setwright.solver.cli.console.messages import columns, say
from setwright.solver.cli.console.output import check_target, deliver
from setwright.solver.cli.console.progress import ProgressLine
from setwright.solver.cli.console.silence import silent_engines
from setwright.solver.cli.console.stopping import Stopping
from setwright.solver.cli.exit_codes import ExitCode
from setwright.solver.cli.lazy_group import PrintingCommand
from setwright.solver.cli.option_types import WordsType
from setwright.solver.cli.options import catalogue_option, open_catalogue, output_options, search_option, wants_json
from setwright.solver.search.limits import DEFAULT, SEARCHES

if TYPE_CHECKING:
    from setwright.catalogue.entries import Catalogue
    from setwright.solver.brief.parsed_brief import ParsedBrief
    from setwright.solver.brief.schema import Goal
    from setwright.solver.uses.compare.comparison import Comparison

GOALS: Final[tuple[Goal, ...]] = ("growth", "efficiency", "balanced")


@click.command("compare", cls=PrintingCommand)
@click.argument("briefs", metavar="BRIEF [BRIEF...]", nargs=-1, required=True)
@click.option(
    "--goals",
    type=WordsType(GOALS, "goal"),
    metavar="GOAL,GOAL",
    help="Plan each brief under these goals; one brief alone is planned under all three, several under their own.",
)
@search_option(DEFAULT)
@book_option
@catalogue_option
@output_options
@click.pass_context
def command(
    ctx: click.Context,
    briefs: tuple[str, ...],
    goals: tuple[Goal, ...] | None,
    search: str,
    overlay: Path | None,
    as_json: bool,
    target: Path | None,
    force: bool,
) -> None:
    """Set weeks side by side: one BRIEF under several goals, or several briefs.

    Each argument is one brief: put a phrase in quotes.

    \b
    setwright compare "3 days x 40 min" --goals growth,efficiency
    setwright compare "2 days x 60 min" "4 days x 30 min"
    """
    from setwright.solver.sheets.screen.trade_offs.comparison import comparison_document, comparison_text

    check_target(target, force)
    catalogue = open_catalogue(overlay)
    parsed = _all_briefs(briefs, catalogue)
    with Stopping() as stopping:
        compared = _compared_weeks(parsed, goals or usual_goals(briefs), search, catalogue, stopping)
    document = wants_json(as_json, target)
    deliver(comparison_document(compared) if document else comparison_text(compared, columns()), target, force)
    ctx.exit(ExitCode.STOPPED if stopping.asked else _exit_code_of_weeks(compared))


def usual_goals(briefs: tuple[str, ...]) -> tuple[Goal, ...]:
    """The goals where none is named: all three for one brief alone, none (each its own) for several."""
    return GOALS if len(briefs) == 1 else ()


def _all_briefs(briefs: tuple[str, ...], catalogue: Catalogue) -> list[ParsedBrief]:
    """Every brief; raises UsageFault with the faults of all of them, each led by its number where there are several."""
    found, faults = [], []
    for place, brief in enumerate(briefs):
        try:
            found.append(brief_from(brief, catalogue))
        except SetwrightError as error:
            number = f"brief {place + 1}: " if len(briefs) > 1 else ""
            faults += [fault.at(f"{number}{fault.where}") for fault in error.faults]
    if faults:
        raise UsageFault(faults)
    return found


def _compared_weeks(
    parsed: list[ParsedBrief], goals: tuple[Goal, ...], search: str, catalogue: Catalogue, stopping: Stopping
) -> Comparison:
    """The comparison, with a line of progress on a terminal; raises UsageFault for too many or too few weeks."""
    from setwright.solver.uses.compare.compared_brief import checked_cases
    from setwright.solver.uses.compare.comparison import compare

    cases = checked_cases(parsed, goals)
    line = ProgressLine()
    try:
        with silent_engines():
            return compare(cases, catalogue, SEARCHES[search], line, stopping)
    finally:
        line.clear()


def _exit_code_of_weeks(compared: Comparison) -> ExitCode:
    """DONE when every case has a week; a clash outweighs a week that was not found in time."""
    from setwright.solver.planning import Clash
    from setwright.solver.uses.compare.comparison import worst

    kind = worst(compared.ends)
    if kind is None:
        return ExitCode.DONE
    say("not every week could be planned: see the top of the result")
    return ExitCode.CLASH if kind is Clash else ExitCode.OUT_OF_TIME
