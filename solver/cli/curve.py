"""`setwright curve`: what time buys."""

from __future__ import annotations

from pathlib import Path
from typing import TYPE_CHECKING

import click

from setwright.catalogue.faults import Fault, UsageFault
from setwright.solver.cli.options import catalogue_option, open_catalogue, output_options, wants_json
from setwright.solver.cli.output import check_target, columns, deliver, engines_silent, say
from setwright.solver.cli.progress import ProgressLine
from setwright.solver.cli.ranges import span_of
from setwright.solver.cli.stopping import Stopping
from setwright.solver.cli.week import OUT_OF_TIME, STOPPED, understood_of
from setwright.solver.search.limits import SEARCHES

if TYPE_CHECKING:
    from collections.abc import Callable

    from setwright.solver.uses.time_budget.time_curve import Kind, TimeCurve

MINUTES, WEEKLY, DAYS = "20:120:10", "60:240:30", "2:6"


@click.command("curve")
@click.argument("brief", nargs=-1, required=True)
@click.option(
    "--minutes", metavar="FROM:TO:STEP", help=f"Minutes a session, such as {MINUTES}; what is asked if unsaid."
)
@click.option("--weekly", metavar="FROM:TO:STEP", help=f"Minutes a week over the brief's days, such as {WEEKLY}.")
@click.option("--days", metavar="FROM:TO", help=f"Days a week of the brief's minutes, such as {DAYS}.")
@click.option(
    "--search", type=click.Choice(tuple(SEARCHES)), default="quick", show_default=True, help="How hard to search."
)
@catalogue_option
@output_options
@click.pass_context
def command(
    ctx: click.Context,
    brief: tuple[str, ...],
    minutes: str | None,
    weekly: str | None,
    days: str | None,
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
    from setwright.solver.sheets.document.json_values import dumped
    from setwright.solver.sheets.screen.trade_offs.curve import curve_document, curve_text

    check_target(target, force)
    kind, amounts = asked(minutes, weekly, days)
    catalogue = open_catalogue(overlay)
    parsed = understood_of(" ".join(brief), catalogue)
    with Stopping() as stopping, engines_silent():
        from setwright.solver.uses.time_budget.curve_search import curve_of

        line = ProgressLine()
        try:
            curve = curve_of(parsed, kind, amounts, catalogue, SEARCHES[search], told(line), stopping)
        finally:
            line.clear()
    if wants_json(as_json, target):
        deliver(dumped(curve_document(curve)), target, force)
    elif target is not None and target.suffix.lower() == ".svg":
        click.echo(curve_text(curve, columns()), nl=False)
        deliver(drawn(curve), target, force)
    else:
        deliver(curve_text(curve, columns()), target, force)
    if all(point.solved is None for point in curve.points):
        say("no row has a week; `setwright week` on the brief says why")
        ctx.exit(STOPPED if stopping.asked else OUT_OF_TIME)
    ctx.exit(STOPPED if stopping.asked else 0)


def asked(minutes: str | None, weekly: str | None, days: str | None) -> tuple[Kind, tuple[int, ...]]:
    """What is varied and over which amounts; minutes a session where nothing is said."""
    given = [(kind, text) for kind, text in (("minutes", minutes), ("weekly", weekly), ("days", days)) if text]
    if len(given) > 1:
        names = " and ".join(f"--{kind}" for kind, _ in given)
        raise UsageFault(Fault("curve", f"{names} were given together", "vary one of them"))
    kind, text = given[0] if given else ("minutes", MINUTES)
    if kind == "minutes":
        return "minutes", span_of("--minutes", text, 10, 240, 10)
    if kind == "weekly":
        return "weekly", span_of("--weekly", text, 10, 1680, 30)
    return "days", span_of("--days", text, 1, 7, 1)


def told(line: ProgressLine) -> Callable[[int, int], None]:
    """What the progress line says before each search."""

    def tell(amount: int, left: int) -> None:
        if line.on:
            line.write(f"searching at {amount}, {left} left (Ctrl-C keeps what is there)")

    return tell


def drawn(curve: TimeCurve) -> str:
    """The curve as SVG."""
    from setwright.solver.sheets.charts.charts import curve_chart
    from setwright.solver.sheets.screen.trade_offs.curve import curve_points

    points, bend = curve_points(curve)
    return curve_chart(points, bend, up="score")
