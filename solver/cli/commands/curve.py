"""`setwright curve`: what time buys."""

from __future__ import annotations

from pathlib import Path
from typing import TYPE_CHECKING, Final

import click

from setwright.catalogue.faults import Fault, UsageFault
from setwright.solver.cli.books import book_option
from setwright.solver.cli.briefs import brief_from
from setwright.solver.cli.console.messages import columns, say
from setwright.solver.cli.console.output import check_target, deliver
from setwright.solver.cli.console.progress import ProgressLine
from setwright.solver.cli.console.silence import silent_engines
from setwright.solver.cli.console.stopping import Stopping
from setwright.solver.cli.exit_codes import ExitCode
from setwright.solver.cli.lazy_group import PrintingCommand
from setwright.solver.cli.option_types import AmountsType
from setwright.solver.cli.options import catalogue_option, open_catalogue, output_options, search_option, wants_json
from setwright.solver.search.limits import SEARCHES
from setwright.solver.uses.time_budget.ranges import RANGES

if TYPE_CHECKING:
    from collections.abc import Callable

    from setwright.solver.uses.time_budget.time_curve import Kind

USUAL_MINUTES: Final = tuple(range(20, 121, 10))
"""Minutes a session that are tried where no option says what varies."""


@click.command("curve", cls=PrintingCommand)
@click.argument("brief", nargs=-1, required=True)
@click.option(
    "--minutes",
    type=AmountsType(*RANGES["minutes"]),
    metavar="FROM:TO:STEP",
    help="Minutes a session, such as 20:120:10; what is asked if unsaid.",
)
@click.option(
    "--weekly",
    type=AmountsType(*RANGES["weekly"]),
    metavar="FROM:TO:STEP",
    help="Minutes a week over the brief's days, such as 60:240:30.",
)
@click.option(
    "--days",
    type=AmountsType(*RANGES["days"]),
    metavar="FROM:TO",
    help="Days a week of the brief's minutes, such as 2:6.",
)
@search_option("quick")
@book_option
@catalogue_option
@output_options
@click.pass_context
def command(
    ctx: click.Context,
    brief: tuple[str, ...],
    minutes: tuple[int, ...] | None,
    weekly: tuple[int, ...] | None,
    days: tuple[int, ...] | None,
    search: str,
    overlay: Path | None,
    as_json: bool,
    target: Path | None,
    force: bool,
) -> None:
    """Show what time buys a BRIEF: the best week for each amount of it, its gain and where the curve bends.

    \b
    setwright curve "3 days x 40 min" --minutes 20:120:10
    setwright curve "3 days x 40 min" --days 2:6 -o curve.svg
    """
    from setwright.solver.sheets.screen.trade_offs.curve import curve_document, curve_text, drawn_curve

    check_target(target, force)
    kind, amounts = what_varies(minutes, weekly, days)
    catalogue = open_catalogue(overlay)
    parsed = brief_from(" ".join(brief), catalogue)
    with Stopping() as stopping, silent_engines():
        from setwright.solver.uses.time_budget.curve_search import curve_of

        line = ProgressLine()
        try:
            curve = curve_of(parsed, kind, amounts, catalogue, SEARCHES[search], _on_progress_line(line), stopping)
        finally:
            line.clear()
    if wants_json(as_json, target):
        deliver(curve_document(curve), target, force)
    elif target is not None and target.suffix.lower() == ".svg":
        deliver(drawn_curve(curve), target, force)
        deliver(curve_text(curve, columns()), None, force)
    else:
        deliver(curve_text(curve, columns()), target, force)
    if all(point.solved is None for point in curve.points):
        say("no row has a week; `setwright week` on the brief says why")
        ctx.exit(ExitCode.STOPPED if stopping.asked else ExitCode.OUT_OF_TIME)
    ctx.exit(ExitCode.STOPPED if stopping.asked else ExitCode.DONE)


def what_varies(
    minutes: tuple[int, ...] | None, weekly: tuple[int, ...] | None, days: tuple[int, ...] | None
) -> tuple[Kind, tuple[int, ...]]:
    """What is varied and over which amounts, minutes a session where nothing is said; raises UsageFault."""
    options: tuple[tuple[Kind, tuple[int, ...] | None], ...] = (
        ("minutes", minutes),
        ("weekly", weekly),
        ("days", days),
    )
    given = [(kind, amounts) for kind, amounts in options if amounts]
    if len(given) > 1:
        names = " and ".join(f"--{kind}" for kind, _ in given)
        raise UsageFault(Fault("curve", f"{names} were given together", "vary one of them"))
    return given[0] if given else ("minutes", USUAL_MINUTES)


def _on_progress_line(line: ProgressLine) -> Callable[[int, int], None]:
    """A function that shows, before each search, its amount and how many are left."""

    def tell(amount: int, left: int) -> None:
        if line.on:
            line.write(f"searching at {amount}, {left} left (Ctrl-C keeps what is there)")

    return tell
