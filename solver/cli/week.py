"""`setwright week`: a brief in, a week out."""

from __future__ import annotations

import math
import sys
from dataclasses import dataclass, replace
from pathlib import Path
from typing import TYPE_CHECKING, assert_never

import click

from setwright.solver.cli.options import catalogue_option, open_catalogue, output_options, wants_json
from setwright.solver.cli.output import check_target, columns, deliver, engines_silent, say
from setwright.solver.cli.progress import ProgressLine
from setwright.solver.cli.stopping import Stopping
from setwright.solver.search.limits import DEFAULT, SEARCHES, Limits

if TYPE_CHECKING:
    from setwright.catalogue.entries import Catalogue
    from setwright.solver.brief.parsed_brief import ParsedBrief
    from setwright.solver.planning import Clash, End, Solved
    from setwright.solver.uses.compare.alternatives import Alternative
    from setwright.solver.uses.relax.relaxations import Relaxations

CLASH, OUT_OF_TIME, STOPPED = 3, 4, 130


def a_number(ctx: click.Context, parameter: click.Parameter, value: float | None) -> float | None:
    """The value, unless it is nan, which every range lets through."""
    if value is not None and math.isnan(value):
        raise click.BadParameter("nan is not a number of seconds.")
    return value


@click.command("week")
@click.argument("brief", nargs=-1, required=True)
@click.option(
    "--search", type=click.Choice(tuple(SEARCHES)), default=DEFAULT, show_default=True, help="How hard to search."
)
@click.option(
    "--time-limit",
    type=click.FloatRange(min=0, min_open=True, max=86_400),
    callback=a_number,
    metavar="SECONDS",
    help="Stop the search after so many seconds; without it the same brief always gives the same week.",
)
@click.option(
    "--alternatives",
    "others",
    type=click.IntRange(0, 9),
    default=0,
    metavar="N",
    help="Show up to N other weeks, clearly different, that are nearly as good.",
)
@click.option(
    "--within",
    type=click.FloatRange(0, 0.5),
    default=0.02,
    show_default=True,
    callback=a_number,
    metavar="SHARE",
    help="How far below the first an alternative may score, as a share of the week index.",
)
@click.option("--private", is_flag=True, help="Show the client's cautions and clearance too.")
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
    parsed = understood_of(" ".join(brief), catalogue)
    as_document = wants_json(as_json, target)
    if as_document or not private:
        warn(parsed, catalogue, as_document)
    limits = SEARCHES[search] if time_limit is None else replace(SEARCHES[search], seconds=time_limit)
    with Stopping() as stopping:
        if others:
            end, found = with_others(parsed, catalogue, limits, stopping, others, within)
        else:
            end, found = planned(parsed, catalogue, limits, stopping), ()
    text, code = shown(end, as_document, private, Asked(others, within, found))
    if text:
        deliver(text, target, force)
    ctx.exit(STOPPED if stopping.asked else code)


def understood_of(source: str, catalogue: Catalogue) -> ParsedBrief:
    """The brief a source names, its rules checked against those there are."""
    from setwright.solver.brief.file import read_brief
    from setwright.solver.rulebook import RULES

    return read_brief(source, catalogue, sys.stdin, tuple(RULES))


def warn(parsed: ParsedBrief, catalogue: Catalogue, as_document: bool) -> None:
    """Say on stderr what the brief's cautions ask for; the week itself carries none of it unless asked."""
    from setwright.solver.sheets.common.caution import CLEARANCE, caution_sentences, clearance_needed

    for sentence in caution_sentences(parsed.brief, catalogue):
        say(sentence)
    if as_document and clearance_needed(parsed.brief, catalogue):
        say(CLEARANCE)


@dataclass(frozen=True)
class Asked:
    """The alternatives asked for, within which share, and those found."""

    count: int
    within: float
    found: tuple[Alternative, ...]


def planned(parsed: ParsedBrief, catalogue: Catalogue, limits: Limits, stopping: Stopping) -> End:
    """The end of planning, with a line of progress on a terminal."""
    from setwright.solver.planning import plan

    line = ProgressLine()
    try:
        with engines_silent():
            return plan(parsed, catalogue, limits, line, stopping)
    finally:
        line.clear()


def with_others(
    parsed: ParsedBrief, catalogue: Catalogue, limits: Limits, stopping: Stopping, count: int, within: float
) -> tuple[End, tuple[Alternative, ...]]:
    """The same with the alternatives asked for."""
    from setwright.solver.uses.compare.alternatives import with_alternatives

    line = ProgressLine()
    try:
        with engines_silent():
            return with_alternatives(parsed, catalogue, count, within, limits, line, stopping)
    finally:
        line.clear()


def relaxed(clash: Clash) -> Relaxations | None:
    """The relaxations that would free a clash; None where the user would not wait for them."""
    from setwright.solver.uses.relax.relaxations import relaxations_of

    try:
        with engines_silent():
            return relaxations_of(clash)
    except KeyboardInterrupt:
        return None


def solved_shown(solved: Solved, as_json: bool, private: bool, asked: Asked) -> str:
    """The week, and its alternatives where they were asked for."""
    from setwright.solver.sheets.document.json_values import dumped
    from setwright.solver.sheets.document.solved_week import week_document
    from setwright.solver.sheets.screen.alternatives import alternatives_documents, alternatives_text
    from setwright.solver.sheets.screen.week_table import week_text

    if as_json:
        more = {"alternatives": alternatives_documents(asked.found)} if asked.count else {}
        return dumped({**week_document(solved, private), **more})
    text = week_text(solved, columns(), private)
    if not asked.count:
        return text
    return f"{text}\n{alternatives_text(asked.found, asked.count, asked.within, columns())}"


def shown(end: End, as_json: bool, private: bool, asked: Asked) -> tuple[str, int]:
    """The result as text and the exit code; a search without a week has its message on stderr."""
    from setwright.solver.planning import Clash, OutOfTime, Solved

    match end:
        case Solved():
            return solved_shown(end, as_json, private, asked), 0
        case Clash():
            from setwright.solver.sheets.document.json_values import dumped
            from setwright.solver.sheets.screen.clash import clash_document, clash_text

            given = relaxed(end)
            return (dumped(clash_document(end, given)) if as_json else clash_text(end, columns(), given)), CLASH
        case OutOfTime():
            more = "; try --search thorough, a longer --time-limit or a wider brief"
            say(f"no week was found ({end.ended_by}){'' if end.ended_by == 'stopped' else more}")
            return "", OUT_OF_TIME
        case _:
            assert_never(end)
