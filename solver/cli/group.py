"""The command line's group: names and summaries here, each command imported when it is called."""

from __future__ import annotations

from collections.abc import Mapping
from types import MappingProxyType
from typing import Any, Final

import click

from setwright.solver.cli.console.errors import told_errors
from setwright.solver.cli.exit_codes import MEANINGS
from setwright.solver.cli.lazy_group import LazyCommand, LazyGroup


def _week() -> click.Command:
    from setwright.solver.cli.commands.week import command

    return command


def _desk() -> click.Command:
    from setwright.solver.cli.commands.desk import command

    return command


def _block() -> click.Command:
    from setwright.solver.cli.blocks.group import command

    return command


def _compare() -> click.Command:
    from setwright.solver.cli.commands.compare import command

    return command


def _curve() -> click.Command:
    from setwright.solver.cli.commands.curve import command

    return command


def _season() -> click.Command:
    from setwright.solver.cli.commands.season import command

    return command


def _audit() -> click.Command:
    from setwright.solver.cli.commands.audit import command

    return command


def _why() -> click.Command:
    from setwright.solver.cli.commands.why import command

    return command


def _swap() -> click.Command:
    from setwright.solver.cli.commands.swap import command

    return command


def _replan() -> click.Command:
    from setwright.solver.cli.commands.replan import command

    return command


def _sheet() -> click.Command:
    from setwright.solver.cli.commands.sheet import command

    return command


def _variants() -> click.Command:
    from setwright.solver.cli.variants.group import command

    return command


def _client() -> click.Command:
    from setwright.solver.cli.clients.group import command

    return command


def _book() -> click.Command:
    from setwright.solver.cli.book.group import command

    return command


def _load() -> click.Command:
    from setwright.solver.cli.commands.load import command

    return command


def _log() -> click.Command:
    from setwright.solver.cli.log.group import command

    return command


def _exercises() -> click.Command:
    from setwright.solver.cli.commands.exercises import command

    return command


def _evidence() -> click.Command:
    from setwright.solver.cli.commands.evidence import command

    return command


def _schema() -> click.Command:
    from setwright.solver.cli.commands.schema import command

    return command


COMMANDS: Final[Mapping[str, LazyCommand]] = MappingProxyType(
    {
        "desk": LazyCommand("Open the desk: the whole job on a page in the browser.", _desk),
        "week": LazyCommand("Plan a week from a brief.", _week),
        "block": LazyCommand("Weeks over time: plan a block, show it, go on from the log.", _block),
        "compare": LazyCommand("Set weeks side by side: goals or briefs.", _compare),
        "curve": LazyCommand("Show what time buys, and where the curve bends.", _curve),
        "season": LazyCommand("Lay out a season: blocks, and what each specialises and holds.", _season),
        "audit": LazyCommand("Check a week: minutes, sets, rules broken and missed.", _audit),
        "why": LazyCommand("Say why each line stands, and what else would cost.", _why),
        "swap": LazyCommand("List swaps for a line, or write the week with one.", _swap),
        "replan": LazyCommand("Change as few lines as can be after a missed or changed session.", _replan),
        "sheet": LazyCommand("Write a week for a client: card, workbook, calendar, page, table.", _sheet),
        "variants": LazyCommand("Plan every variant of a template: days x minutes x kit and more.", _variants),
        "client": LazyCommand("The people of the book: add, list, show, change.", _client),
        "book": LazyCommand("The book itself: where, backup, check, export, erase.", _book),
        "load": LazyCommand("Say what to load a lift with, from a recent set.", _load),
        "log": LazyCommand("What was done: add, import, show, check; the pace.", _log),
        "exercises": LazyCommand("List the exercises, or show one.", _exercises),
        "evidence": LazyCommand("List every number with its interval and source.", _evidence),
        "schema": LazyCommand("Print the JSON Schema of a document.", _schema),
    }
)


class Commands(LazyGroup):
    """The commands, with errors turned into lines on standard error and an exit code."""

    lazy_commands = COMMANDS

    def make_context(self, *arguments: Any, **more: Any) -> click.Context:
        """As click has it; errors of printing the group's own help are told."""
        with told_errors():
            return super().make_context(*arguments, **more)

    def invoke(self, ctx: click.Context) -> Any:
        """As click has it; the command runs in here."""
        with told_errors():
            return super().invoke(ctx)


def _print_version(ctx: click.Context, parameter: click.Parameter, asked: bool) -> None:
    if not asked or ctx.resilient_parsing:
        return
    from setwright.catalogue.version import own_version

    click.echo(f"setwright {own_version()}")
    ctx.exit()


@click.group(
    cls=Commands,
    context_settings={"help_option_names": ["-h", "--help"], "max_content_width": 100},
    epilog=f"Exit codes: {', '.join(f'{code} {meaning}' for code, meaning in MEANINGS.items())}.",
)
@click.option(
    "--version", is_flag=True, is_eager=True, expose_value=False, callback=_print_version, help="Show the version."
)
def setwright() -> None:
    """Plan lifting weeks for people with limited time.

    A general planning aid, not medical advice.
    """
