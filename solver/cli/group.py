"""The group of commands: names and short helps here, the commands themselves loaded when called."""

from __future__ import annotations

from collections.abc import Mapping
from importlib import import_module
from types import MappingProxyType
from typing import Any

import click

from setwright.catalogue.faults import SetwrightError
from setwright.catalogue.near import nearest
from setwright.solver.cli.output import say

COMMANDS = {
    "week": "Plan a week from a brief.",
    "compare": "Set weeks side by side: goals or briefs.",
    "curve": "Show what time buys, and where the curve bends.",
    "audit": "Reckon a week: minutes, sets, rules broken and missed.",
    "why": "Say why each line stands, and what else would cost.",
    "swap": "List swaps for a line, or write the week with one.",
    "sheet": "Write a week for a client: card, workbook, calendar, page, table.",
    "variants": "Plan every variant of a template: days x minutes x kit and more.",
    "exercises": "List the exercises, or show one.",
    "evidence": "List every number with its interval and source.",
    "schema": "Print the JSON Schema of a brief or a week.",
}
STOPPED = 130


class Named(click.Group):
    """A group whose commands are imported by name, each from a module of `prefix` and its name."""

    helps: Mapping[str, str] = MappingProxyType({})
    prefix = ""

    def list_commands(self, ctx: click.Context) -> list[str]:
        return list(self.helps)

    def get_command(self, ctx: click.Context, cmd_name: str) -> click.Command | None:
        if cmd_name not in self.helps:
            return None
        command: click.Command = import_module(f"setwright.solver.cli.{self.prefix}{cmd_name}").command
        return command

    def resolve_command(
        self, ctx: click.Context, args: list[str]
    ) -> tuple[str | None, click.Command | None, list[str]]:
        name = args[0]
        if name not in self.helps and not name.startswith("-"):
            near = nearest(name, self.helps)
            remedy = f"did you mean {near!r}?" if near else f"the commands are {', '.join(self.helps)}"
            ctx.fail(f"no command {name!r}; {remedy}")
        return super().resolve_command(ctx, args)

    def format_commands(self, ctx: click.Context, formatter: click.HelpFormatter) -> None:
        with formatter.section("Commands"):
            formatter.write_dl(list(self.helps.items()))


class Commands(Named):
    """The commands, with faults turned into lines on stderr."""

    helps = MappingProxyType(COMMANDS)

    def invoke(self, ctx: click.Context) -> Any:
        try:
            return super().invoke(ctx)
        except SetwrightError as error:
            for fault in error.faults:
                say(str(fault))
            ctx.exit(error.exit_code)
        except KeyboardInterrupt:
            say("stopped")
            ctx.exit(STOPPED)


def show_version(ctx: click.Context, parameter: click.Parameter, asked: bool) -> None:
    if not asked or ctx.resilient_parsing:
        return
    from importlib.metadata import PackageNotFoundError, version

    try:
        number = version("setwright")
    except PackageNotFoundError:
        number = "0+source"
    click.echo(f"setwright {number}")
    ctx.exit()


@click.group(
    cls=Commands,
    context_settings={"help_option_names": ["-h", "--help"], "max_content_width": 100},
    epilog=(
        "Exit codes: 0 solved, 1 error, 2 usage, 3 the brief clashes, 4 out of time without a week, "
        "130 stopped by the user."
    ),
)
@click.option(
    "--version", is_flag=True, is_eager=True, expose_value=False, callback=show_version, help="Show the version."
)
def setwright() -> None:
    """Plan lifting weeks for people with limited time.

    A general planning aid, not medical advice.
    """
