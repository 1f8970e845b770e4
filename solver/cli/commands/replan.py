"""`setwright replan`: the smallest change of a week when life happens."""

from __future__ import annotations

from datetime import date
from pathlib import Path
from typing import TYPE_CHECKING, Any, assert_never

import click

from setwright.catalogue.fault_collector import FaultCollector
from setwright.catalogue.faults import Fault
from setwright.solver.brief.defaults import LIMITS
from setwright.solver.cli.books import MARK, book_option, is_code, the_book
from setwright.solver.cli.console.messages import columns, say
from setwright.solver.cli.console.output import check_target, deliver
from setwright.solver.cli.console.silence import silent_engines
from setwright.solver.cli.console.stopping import Stopping
from setwright.solver.cli.exit_codes import ExitCode, NoWeekError
from setwright.solver.cli.lazy_group import PrintingCommand
from setwright.solver.cli.opened_week import OpenedWeek, open_or_plan
from setwright.solver.cli.option_types import DayMinutesType, DayType, GatheredType, gathered_faults
from setwright.solver.cli.options import brief_option, catalogue_option, open_catalogue, output_options, wants_json

if TYPE_CHECKING:
    from setwright.solver.planning import Clash, OutOfTime
    from setwright.solver.uses.replan.happened import Happened
    from setwright.solver.uses.replan.replanned import Replanned

LEAST, MOST = map(int, LIMITS["minutes"])


@click.command("replan", cls=PrintingCommand)
@click.argument("source")
@click.option(
    "--done", multiple=True, metavar="DAY,...", help="Sessions that are done, or none; they stay as they are."
)
@click.option("--missed", multiple=True, metavar="DAY,...", help="Sessions that are missed; may be given again.")
@click.option(
    "--today",
    multiple=True,
    type=GatheredType(DayMinutesType(LEAST, MOST)),
    metavar="[DAY=]MINUTES",
    help="The minutes that a day has now; without DAY the next session.",
)
@click.option("--taken", multiple=True, metavar="NAME", help="Equipment that is taken, or the station of an exercise.")
@click.option("--kit", metavar="KIT", help="The place where the sessions that are left are held.")
@click.option("--sore", multiple=True, metavar="MUSCLE", help="A muscle that rests in the next session.")
@click.option("--avoid", multiple=True, metavar="EXERCISE", help="An exercise that is not to be used.")
@click.option("--on", metavar="DAY", help="The one day that --taken, --kit, --sore and --avoid speak of.")
@click.option("--from", "first", type=GatheredType(DayType()), metavar="DATE", help="As --on, from this date.")
@click.option("--to", "last", type=GatheredType(DayType()), metavar="DATE", help="As --on, to this date.")
@click.option("--pin", "pins", multiple=True, metavar="EXERCISE[@DAY]", help="An exercise that must be in the week.")
@click.option("--week-of", type=GatheredType(DayType()), metavar="DATE", help="Which week of @CODE; today's.")
@brief_option
@book_option
@catalogue_option
@output_options
@click.pass_context
def command(
    ctx: click.Context,
    source: str,
    done: tuple[str, ...],
    missed: tuple[str, ...],
    today: tuple[tuple[str | None, int] | None, ...],
    taken: tuple[str, ...],
    kit: str | None,
    sore: tuple[str, ...],
    avoid: tuple[str, ...],
    on: str | None,
    first: date | None,
    last: date | None,
    pins: tuple[str, ...],
    week_of: date | None,
    brief: str | None,
    overlay: Path | None,
    as_json: bool,
    target: Path | None,
    force: bool,
) -> None:
    """Change as few lines as can be of a week after what happened; what is done stays as it is.

    SOURCE is a file of `week --json`, @CODE for the week of a client, or a brief, which is planned first. The new week
    of a client is kept in the book. A DAY is mon, or 1 for sessions without
    weekdays. Sessions before a missed day, or before the day of --today, are taken as done unless --done says which.

    \b
    setwright replan week.json --missed thu
    setwright replan week.json --today thu=25 -o new.json
    setwright replan week.json --done mon --kit "hotel gym"
    """
    from setwright.solver.records.happened_words import SaidHappened, happened_of, why_words

    check_target(target, force)
    faults = FaultCollector()
    faults.add(gathered_faults(ctx))
    minutes = tuple(row for row in today if row is not None)
    ends = [day for day in (first, last) if day is not None]
    dates = (ends[0], ends[-1]) if ends else None
    week_of = week_of or next(iter(ends), None)
    said = SaidHappened(
        done=done or None,
        missed=missed,
        today=minutes,
        taken=taken,
        on=on,
        dates=dates,
        kit=kit,
        sore=sore,
        pins=pins,
        avoid=avoid,
    )
    catalogue = faults.result_of(lambda: open_catalogue(overlay))
    found = catalogue and faults.result_of(lambda: open_or_plan(source, brief, None, catalogue, week_of))
    happened = found and happened_of(said, found.audit.evaluated.resolved, faults, "--{}".format)
    faults.raise_all()
    assert found and happened
    if kit is not None:
        _say_owned(found)
    with Stopping() as stopping:
        end = _replanned(found, happened, stopping)
    as_document, kept = wants_json(as_json, target), is_code(source) and brief is None
    week = _document(found, end) if as_document or kept else None
    result, code = _result_of(end, week if as_document else None, as_document)
    if kept and week is not None:
        _keep(source, week_of or date.today(), week, why_words(said))
    deliver(result, target, force)
    ctx.exit(ExitCode.STOPPED if stopping.asked else code)


def _say_owned(found: OpenedWeek) -> None:
    """Say what the brief owns that is taken to be in the other place too."""
    owned = found.parsed.brief.owned
    said = [*(["safeties"] if owned.safeties else []), *(["the heaviest dumbbell"] if owned.dumbbell_max else [])]
    if said:
        what = " and ".join(said)
        say(f"--kit: {what} of the brief's `owned` are taken to be there too; if not, name a --brief without them")


def _replanned(found: OpenedWeek, happened: Happened, stopping: Stopping) -> Replanned | Clash | OutOfTime:
    from setwright.solver.search.solve_options import SolveOptions
    from setwright.solver.uses.replan.replanned import replanned

    with silent_engines():
        return replanned(found.parsed, found.audit, happened, SolveOptions(stopped=stopping))


def _result_of(
    end: Replanned | Clash | OutOfTime, week: dict[str, Any] | None, as_document: bool
) -> tuple[str | dict[str, Any], ExitCode]:
    """The result and the exit code; raises NoWeekError where no week was found in time.

    The result is `week`, the new week's document, or text where that is None; a clash is a document if `as_document`.
    """
    from setwright.solver.planning import Clash, OutOfTime
    from setwright.solver.uses.replan.replanned import Replanned

    match end:
        case Replanned():
            return (_text(end) if week is None else week), ExitCode.DONE
        case Clash():
            from setwright.solver.sheets.screen.clash import clash_document, clash_text

            return (clash_document(end) if as_document else clash_text(end, columns())), ExitCode.CLASH
        case OutOfTime():
            from setwright.solver.sheets.common.findings import no_week_words

            fault = Fault("replan", no_week_words(end), "take back some of what is asked")
            raise NoWeekError(fault, ExitCode.OUT_OF_TIME)
        case _:
            assert_never(end)


def _keep(code: str, day: date, document: dict[str, Any], why: str) -> None:
    """Keep a week in the place of the one at hand, with the reason; what stood there stays in the book."""
    from setwright.solver.book.clients import client_of
    from setwright.solver.book.planned import keep_week
    from setwright.solver.log.mondays import monday_of

    with the_book() as book:
        client = client_of(book, code)
        keep_week(book, client, monday_of(day), document, why)
    say(f"written down for {MARK}{client.code}: the week of {monday_of(day)}, {why}")


def _document(found: OpenedWeek, end: Replanned | Clash | OutOfTime) -> dict[str, Any] | None:
    """The new week's document; None where there is none."""
    from setwright.solver.sheets.screen.edits.replanned_document import replanned_document
    from setwright.solver.uses.replan.replanned import Replanned

    return replanned_document(found.document, end) if isinstance(end, Replanned) else None


def _text(end: Replanned) -> str:
    from setwright.solver.sheets.screen.edits.replanned import replanned_text

    return replanned_text(end, columns())
