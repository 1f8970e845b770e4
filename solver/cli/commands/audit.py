"""`setwright audit`: any week checked and scored, also one made elsewhere."""

from __future__ import annotations

from pathlib import Path
from typing import TYPE_CHECKING, Any

import click

from setwright.solver.cli.books import book_option
from setwright.solver.cli.console.messages import columns, say
from setwright.solver.cli.console.output import check_target, deliver
from setwright.solver.cli.console.silence import silent_engines
from setwright.solver.cli.console.stopping import Stopping
from setwright.solver.cli.exit_codes import ExitCode
from setwright.solver.cli.lazy_group import PrintingCommand
from setwright.solver.cli.opened_week import OpenedWeek, open_week
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
    from setwright.solver.search.limits import Limits


@click.command("audit", cls=PrintingCommand)
@click.argument("week")
@brief_option
@click.option(
    "--accept-near", is_flag=True, help="Take the nearest name for an exercise that is not known, and say so."
)
@click.option("--mend", type=WholeNumberType(1, 20), metavar="N", help="The N single changes that win back most.")
@click.option("--best", is_flag=True, help="How far the best week in the same minutes and kit is: solves.")
@search_option(None, "How hard to solve for --best.")
@click.option("--strict", is_flag=True, help="Exit with 1 when something is broken.")
@book_option
@catalogue_option
@output_options
@click.pass_context
def command(
    ctx: click.Context,
    week: str,
    brief: str | None,
    accept_near: bool,
    mend: int | None,
    best: bool,
    search: str | None,
    strict: bool,
    overlay: Path | None,
    as_json: bool,
    target: Path | None,
    force: bool,
) -> None:
    """Check a WEEK (- for standard input): its minutes, sets per muscle, what is broken, and what it gives up.

    Broken is what is wrong in any week: unsafe for this client, without the kit, too long, or against the brief.
    Where a week made elsewhere only differs from how setwright plans, the rule is named once and breaks nothing.

    WEEK is a file of `week --json`, or one made elsewhere: CSV with the columns day, exercise, sets and, if you have
    them, reps, RIR, rest, technique and pair, or the same as JSON.

    \b
    setwright audit client.csv --brief "2 days x 40 min" --mend 3 --best
    """
    from setwright.solver.sheets.screen.audit import audit_document, audit_text

    check_target(target, force)
    found = open_week(week, brief, open_catalogue(overlay), accept_near)
    with Stopping() as stopping, silent_engines():
        more, lead, paragraphs = _further_answers(found, mend, best, limits_of(search, found.document), stopping)
    if brief is None and found.document.get("private_left_out"):
        say(
            "the week was written without its client's cautions and age: what they ask for may show as broken rules, "
            "and --best does not know of it; name the --brief"
        )
    as_document = wants_json(as_json, target)
    if as_document:
        deliver({**audit_document(found.audit), **more}, target, force)
    else:
        deliver(audit_text(found.audit, columns(), lead, paragraphs), target, force)
    broken = strict and found.audit.violations
    ctx.exit(ExitCode.STOPPED if stopping.asked else ExitCode.ERROR if broken else ExitCode.DONE)


def _further_answers(
    found: OpenedWeek, mend: int | None, best: bool, limits: Limits, stopping: Stopping
) -> tuple[dict[str, Any], str, list[str]]:
    """What was asked beyond the audit: parts of its document, the sentence its text leads with, and paragraphs."""
    more: dict[str, Any] = {}
    lead = ""
    paragraphs: list[str] = []
    if mend:
        from setwright.solver.sheets.screen.edits.single_changes import changes_document, changes_text
        from setwright.solver.uses.edits.single_changes import best_changes

        changes = best_changes(found.audit, mend)
        more["changes"] = changes_document(changes)
        paragraphs.append(changes_text(found.audit, changes, columns()))
    if best:
        from setwright.solver.sheets.screen.explain.optimality_gap import (
            optimality_gap_document,
            optimality_gap_text,
            share_words,
        )
        from setwright.solver.uses.time_budget.optimality_gap import optimality_gap_of

        end = optimality_gap_of(found.audit, limits, stopping)
        more["best"] = optimality_gap_document(found.audit, end)
        lead = share_words(found.audit, end)
        paragraphs.append(optimality_gap_text(found.audit, end, columns()))
    return more, lead, paragraphs
