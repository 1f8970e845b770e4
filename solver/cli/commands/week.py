"""`setwright week`: a brief in, a week out."""

from __future__ import annotations

import math
import time
from dataclasses import dataclass, replace
from pathlib import Path
from typing import TYPE_CHECKING, Any, assert_never

import click

from setwright.solver.cli.books import book_option
from setwright.solver.cli.briefs import brief_from, say_cautions
from setwright.solver.cli.console.left_behind import LeftBehind, done_or_left, end_process
from setwright.solver.cli.console.messages import columns, say
from setwright.solver.cli.console.output import check_target, deliver
from setwright.solver.cli.console.progress import ProgressLine
from setwright.solver.cli.console.silence import silent_engines
from setwright.solver.cli.console.stopping import Stopping
from setwright.solver.cli.exit_codes import ExitCode
from setwright.solver.cli.lazy_group import PrintingCommand
from setwright.solver.cli.option_types import WholeNumberType
from setwright.solver.cli.options import catalogue_option, open_catalogue, output_options, search_option, wants_json
from setwright.solver.search.limits import DEFAULT, SEARCHES
from setwright.solver.search.solve_options import SolveOptions

if TYPE_CHECKING:
    from setwright.catalogue.entries import Catalogue
    from setwright.solver.brief.parsed_brief import ParsedBrief
    from setwright.solver.planning import Clash, End, Solved
    from setwright.solver.uses.compare.alternatives import Alternative
    from setwright.solver.uses.relax.relaxations import Relaxations


def _not_nan(ctx: click.Context, parameter: click.Parameter, value: float | None) -> float | None:
    """The value, unless it is nan, which every range lets through."""
    if value is not None and math.isnan(value):
        raise click.BadParameter("nan is not a number.")
    return value


@click.command("week", cls=PrintingCommand)
@click.argument("brief", nargs=-1, required=True)
@search_option(DEFAULT)
@click.option(
    "--time-limit",
    type=click.FloatRange(min=0, min_open=True, max=86_400),
    callback=_not_nan,
    metavar="SECONDS",
    help="Stop the search after so many seconds; without it the same brief always gives the same week.",
)
@click.option(
    "--alternatives",
    "others",
    type=WholeNumberType(0, 9),
    default=0,
    metavar="N",
    help="Show up to N other weeks, clearly different, that are nearly as good.",
)
@click.option(
    "--within",
    type=click.FloatRange(0, 0.5),
    default=0.02,
    show_default=True,
    callback=_not_nan,
    metavar="SHARE",
    help="How far below the first an alternative may score, as a share of the week index.",
)
@click.option("--private", is_flag=True, help="Show the client's cautions and clearance too.")
@book_option
@catalogue_option
@output_options
@click.pass_context
def command(
    ctx: click.Context,
    brief: tuple[str, ...],
    search: str,
    time_limit: float | None,
    others: int,
    within: float,
    private: bool,
    overlay: Path | None,
    as_json: bool,
    target: Path | None,
    force: bool,
) -> None:
    """Plan a week from a BRIEF: a TOML file, - for standard input, or a phrase.

    \b
    setwright week "3 days x 40 min, grow delts"
    setwright week client.toml --json -o week.json
    """
    check_target(target, force)
    catalogue = open_catalogue(overlay)
    parsed = brief_from(" ".join(brief), catalogue)
    as_document = wants_json(as_json, target)
    if as_document or not private:
        say_cautions(parsed, catalogue, as_document)
    begun = time.monotonic()
    with Stopping() as stopping:
        options = SolveOptions(SEARCHES[search], wall_clock_limit=time_limit, begun=begun, stopped=stopping)
        end, found, left = _in_time(parsed, catalogue, options, others, within)
    result, code = _result_of(end, as_document, private, AlternativesAsked(others, within, found))
    if result is not None:
        deliver(result, target, force)
    code = ExitCode.STOPPED if stopping.asked else code
    if left:
        end_process(code)
    ctx.exit(code)


@dataclass(frozen=True)
class AlternativesAsked:
    """How many alternatives were asked for, within which share of the week index, and those found."""

    count: int
    within: float
    found: tuple[Alternative, ...]


def _in_time(
    parsed: ParsedBrief, catalogue: Catalogue, options: SolveOptions, others: int, within: float
) -> tuple[End, tuple[Alternative, ...], bool]:
    """The end of planning, the alternatives asked for, and whether a thread that is still at work was left behind.

    It is left where an engine does not hear soon that the user stopped it or that its time is over; the week is then
    the best that was known.
    """
    from setwright.solver.planning import best_so_far, plan
    from setwright.solver.search.stopping import EndedBy

    line = ProgressLine()
    options = replace(options, watch=line)

    def work() -> tuple[End, tuple[Alternative, ...]]:
        if others:
            from setwright.solver.uses.compare.alternatives import with_alternatives

            return with_alternatives(parsed, catalogue, others, within, options)
        return plan(parsed, catalogue, options), ()

    try:
        with silent_engines():
            return *done_or_left(work, options.is_over), False
    except LeftBehind:
        ended_by = EndedBy.STOPPED if options.stopped() else EndedBy.TIME_LIMIT
        return best_so_far(parsed, catalogue, line.told, ended_by, options.limits), (), True
    finally:
        line.clear()


def relaxed(clash: Clash) -> Relaxations | None:
    """The relaxations that would free a clash; None where the user would not wait for them."""
    from setwright.solver.uses.relax.relaxations import relaxations_of

    try:
        with silent_engines():
            return relaxations_of(clash)
    except KeyboardInterrupt:
        return None


def _result_of(
    end: End, as_document: bool, private: bool, asked: AlternativesAsked
) -> tuple[str | dict[str, Any] | None, ExitCode]:
    """The result as text or document, and the exit code; a search without a week has its message on stderr alone."""
    from setwright.solver.planning import Clash, OutOfTime, Solved

    match end:
        case Solved():
            if as_document or not private:
                _say_position_warnings(end)
            found = _week_document(end, private, asked) if as_document else _week_text(end, private, asked)
            return found, ExitCode.DONE
        case Clash():
            from setwright.solver.sheets.screen.clash import clash_document, clash_text

            given = relaxed(end)
            return (clash_document(end, given) if as_document else clash_text(end, columns(), given)), ExitCode.CLASH
        case OutOfTime():
            from setwright.solver.sheets.common.findings import no_week_words

            as_it_has = "ask for what it has, or " if end.least_shortfall else ""
            more = f"; {as_it_has}try --search thorough, a longer --time-limit or a wider brief"
            say(f"{no_week_words(end)}{'' if end.ended_by == 'stopped' else more}")
            return None, ExitCode.OUT_OF_TIME
        case _:
            assert_never(end)


def _say_position_warnings(solved: Solved) -> None:
    from setwright.solver.sheets.common.caution import position_warnings

    for sentence in position_warnings(solved.audit.evaluated):
        say(sentence)


def _week_document(solved: Solved, private: bool, asked: AlternativesAsked) -> dict[str, Any]:
    from setwright.solver.sheets.document.solved_week import week_document
    from setwright.solver.sheets.screen.alternatives import alternatives_documents

    more = {"alternatives": alternatives_documents(asked.found)} if asked.count else {}
    return {**week_document(solved, private), **more}


def _week_text(solved: Solved, private: bool, asked: AlternativesAsked) -> str:
    from setwright.solver.sheets.screen.alternatives import alternatives_text
    from setwright.solver.sheets.screen.week_table import week_text

    text = week_text(solved, columns(), private)
    if not asked.count:
        return text
    return f"{text}\n{alternatives_text(asked.found, asked.count, asked.within, columns())}"
