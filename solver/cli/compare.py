"""`setwright compare`: weeks side by side."""

from __future__ import annotations

from pathlib import Path
from typing import TYPE_CHECKING

import click

from setwright.catalogue.faults import Fault, SetwrightError, UsageFault
from setwright.catalogue.near import nearest
from setwright.solver.cli.options import catalogue_option, open_catalogue, output_options, wants_json
from setwright.solver.cli.output import check_target, columns, deliver, engines_silent, say
from setwright.solver.cli.progress import ProgressLine
from setwright.solver.cli.stopping import Stopping
from setwright.solver.cli.week import CLASH, OUT_OF_TIME, STOPPED, understood_of
from setwright.solver.search.limits import DEFAULT, SEARCHES

if TYPE_CHECKING:
    from setwright.catalogue.entries import Catalogue
    from setwright.solver.brief.parsed_brief import ParsedBrief
    from setwright.solver.brief.schema import Goal
    from setwright.solver.uses.compare.comparison import Comparison

GOALS: tuple[Goal, ...] = ("growth", "efficiency", "balanced")
MOST = 12
"""Weeks in one comparison: each is a search."""


@click.command("compare")
@click.argument("briefs", metavar="BRIEF [BRIEF...]", nargs=-1, required=True)
@click.option(
    "--goals",
    metavar="GOAL,GOAL",
    help="Plan each brief under these goals; one brief alone is planned under all three, several under their own.",
)
@click.option(
    "--search", type=click.Choice(tuple(SEARCHES)), default=DEFAULT, show_default=True, help="How hard to search."
)
@catalogue_option
@output_options
@click.pass_context
def command(
    ctx: click.Context,
    briefs: tuple[str, ...],
    goals: str | None,
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
    from setwright.solver.sheets.document.json_values import dumped
    from setwright.solver.sheets.screen.trade_offs.comparison import comparison_document, comparison_text

    check_target(target, force)
    wanted = goals_of(goals, len(briefs))
    catalogue = open_catalogue(overlay)
    parsed = all_understood(briefs, catalogue)
    with Stopping() as stopping:
        compared = done(parsed, wanted, search, catalogue, stopping)
    document = wants_json(as_json, target)
    deliver(dumped(comparison_document(compared)) if document else comparison_text(compared, columns()), target, force)
    ctx.exit(STOPPED if stopping.asked else exit_code(compared))


def goals_of(text: str | None, briefs: int) -> tuple[Goal, ...]:
    """The goals named, each once; all three for one brief alone, none (each its own) for several."""
    if text is None:
        return GOALS if briefs == 1 else ()
    found: list[Goal] = []
    faults = []
    for word in (part.strip().lower() for part in text.split(",")):
        known = next((goal for goal in GOALS if goal == word), None)
        if known is None:
            near = nearest(word, GOALS)
            remedy = f"did you mean {near!r}?" if near else f"the goals are {', '.join(GOALS)}"
            faults.append(Fault("--goals", f"{word!r} is not a goal", remedy))
        elif known not in found:
            found.append(known)
    if faults:
        raise UsageFault(faults)
    return tuple(found)


def all_understood(briefs: tuple[str, ...], catalogue: Catalogue) -> list[ParsedBrief]:
    """Every brief understood, or the faults of all of them."""
    found, faults = [], []
    for place, brief in enumerate(briefs):
        try:
            found.append(understood_of(brief, catalogue))
        except SetwrightError as error:
            faults += [Fault(f"brief {place + 1}: {f.where}", f.said, f.remedy) for f in error.faults]
    if faults:
        raise UsageFault(faults if len(briefs) > 1 else [feasibility_only(fault) for fault in faults])
    return found


def feasibility_only(fault: Fault) -> Fault:
    """A fault without the number of its brief, where there is only one."""
    return Fault(fault.where.removeprefix("brief 1: "), fault.said, fault.remedy)


def done(
    parsed: list[ParsedBrief], goals: tuple[Goal, ...], search: str, catalogue: Catalogue, stopping: Stopping
) -> Comparison:
    """The comparison, with a line of progress on a terminal."""
    from setwright.solver.uses.compare.compared_brief import compared_briefs
    from setwright.solver.uses.compare.comparison import compare

    cases = compared_briefs(parsed, goals)
    if not 2 <= len(cases) <= MOST:
        said = f"{len(cases)} week{'s' if len(cases) != 1 else ''} would be compared, expected 2 to {MOST}"
        raise UsageFault(Fault("compare", said, "name more briefs or goals, each brief in quotes"))
    line = ProgressLine()
    try:
        with engines_silent():
            return compare(cases, catalogue, SEARCHES[search], line, stopping)
    finally:
        line.clear()


def exit_code(compared: Comparison) -> int:
    """0 when every case has a week; a clash comes before no week in time."""
    from setwright.solver.planning import Clash
    from setwright.solver.uses.compare.comparison import worst

    kind = worst(compared.ends)
    if kind is None:
        return 0
    say("not every week could be planned: see the top of the result")
    return CLASH if kind is Clash else OUT_OF_TIME
