"""`setwright swap`: what may stand in a line's place, and a week with one line swapped."""

from __future__ import annotations

from dataclasses import replace
from pathlib import Path
from typing import TYPE_CHECKING, Any

import click

from setwright.catalogue.faults import Fault, SetwrightError, UsageFault
from setwright.solver.brief.phrase.named import exercise_named
from setwright.solver.cli.books import book_option
from setwright.solver.cli.console.messages import columns, say
from setwright.solver.cli.console.output import check_target, deliver
from setwright.solver.cli.console.silence import silent_engines
from setwright.solver.cli.lazy_group import PrintingCommand
from setwright.solver.cli.opened_week import OpenedWeek, open_or_plan
from setwright.solver.cli.options import brief_option, catalogue_option, open_catalogue, output_options, wants_json

if TYPE_CHECKING:
    from setwright.solver.auditing import Audit
    from setwright.solver.evaluation.evaluated_week import Line
    from setwright.solver.uses.edits.swaps import Swap


@click.command("swap", cls=PrintingCommand)
@click.argument("week")
@click.argument("entry", required=False)
@click.argument("exercise", nargs=-1)
@click.option("--settle", is_flag=True, help="Solve sets, rests and techniques around the swap anew.")
@brief_option
@book_option
@catalogue_option
@output_options
def command(
    week: str,
    entry: str | None,
    exercise: tuple[str, ...],
    settle: bool,
    brief: str | None,
    overlay: Path | None,
    as_json: bool,
    target: Path | None,
    force: bool,
) -> None:
    """List ranked swaps for a WEEK or one ENTRY of it, or write the week with EXERCISE in the ENTRY's place.

    ENTRY is a day and a line: mon:A, mon:B1, mon:dumbbell-curl, or 1:A for sessions without weekdays.

    \b
    setwright swap week.json mon:B
    setwright swap week.json mon:B "cable curl" -o new.json
    """
    from setwright.solver.sheets.screen.addresses import line_at
    from setwright.solver.sheets.screen.edits.swaps import swaps_document, swaps_text
    from setwright.solver.uses.edits.ranked_swaps import ranked_swaps_of

    check_target(target, force)
    if settle and not exercise:
        raise UsageFault(Fault("--settle", "there is no swap to settle", "name the ENTRY and the EXERCISE"))
    found = open_or_plan(week, brief, None, open_catalogue(overlay))
    audited = found.audit
    document = wants_json(as_json, target)
    lines = audited.evaluated.lines if entry is None else (line_at(audited.evaluated, entry),)
    if exercise:
        deliver(_with_swap(found, lines[0], " ".join(exercise), settle, document), target, force)
        return
    ranked = ranked_swaps_of(audited, lines)
    deliver(swaps_document(audited, ranked) if document else swaps_text(audited, ranked, columns()), target, force)


def _with_swap(found: OpenedWeek, line: Line, name: str, settle: bool, document: bool) -> str | dict[str, Any]:
    """The week with the swap made, as a document or as text that tells what it changes; raises UsageFault."""
    from setwright.solver.sheets.document.changed_week import changed_week_document
    from setwright.solver.sheets.screen.edits.asked_swap import swap_asked, swapped_text

    exercise = exercise_named(name, found.audit.evaluated.resolved.catalogue)
    swap = swap_asked(found.audit, line, exercise, settle)
    after = _settled_around(swap, line) if settle else swap.effect.after
    if swap.named:
        say(f"the new week's brief pins {exercise.name}")
    parsed = replace(found.parsed, brief=after.evaluated.resolved.brief)
    if document:
        return changed_week_document(found.document, parsed, after)
    return swapped_text(found.audit, after, line.day.index, columns())


def _settled_around(swap: Swap, line: Line) -> Audit:
    """The week with sets, rests and techniques solved anew, the new line among them; raises SetwrightError."""
    from setwright.solver.uses.edits.fixed_lines import reoptimised_lines

    evaluated = swap.effect.after.evaluated
    with silent_engines():
        after = reoptimised_lines(evaluated.resolved, evaluated.week, ((line.day.index, swap.exercise.id),))
    if after is None:
        said = f"no sets of the week's lines keep every rule with {swap.exercise.name} among them"
        raise SetwrightError(Fault("--settle", said, "name another exercise, or plan anew with it pinned"))
    return after
