"""A group of commands that are imported only when they are called, so that help stays quick."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from dataclasses import dataclass
from typing import Any

import click

from setwright.catalogue.near import did_you_mean
from setwright.solver.cli.console.standard_output import output_errors


@dataclass(frozen=True)
class LazyCommand:
    """One command: what the group's help says of it, and the function that imports it."""

    summary: str
    load: Callable[[], click.Command]


class PrintingCommand(click.Command):
    """A command whose help, too, ends in no traceback where standard output cannot be written."""

    def make_context(self, *arguments: Any, **more: Any) -> click.Context:
        """As click has it; raises SetwrightError where help cannot be printed."""
        with output_errors():
            return super().make_context(*arguments, **more)


class LazyGroup(PrintingCommand, click.Group):
    """A click group over lazy commands; a mistyped name is refused with the nearest one."""

    lazy_commands: Mapping[str, LazyCommand] = {}

    def list_commands(self, ctx: click.Context) -> list[str]:
        """The names in the order in which they were given."""
        return list(self.lazy_commands)

    def get_command(self, ctx: click.Context, cmd_name: str) -> click.Command | None:
        """The command of a name, imported now; None where there is none."""
        found = self.lazy_commands.get(cmd_name)
        return found.load() if found else None

    def resolve_command(
        self, ctx: click.Context, args: list[str]
    ) -> tuple[str | None, click.Command | None, list[str]]:
        """As click has it; raises click.UsageError with the nearest name for an unknown command."""
        name = args[0]
        if name not in self.lazy_commands and not name.startswith("-"):
            remedy = did_you_mean(name, self.lazy_commands) or f"the commands are {', '.join(self.lazy_commands)}"
            ctx.fail(f"no command {name!r}; {remedy}")
        return super().resolve_command(ctx, args)

    def format_commands(self, ctx: click.Context, formatter: click.HelpFormatter) -> None:
        """The commands with their summaries, none of them imported."""
        with formatter.section("Commands"):
            formatter.write_dl([(name, command.summary) for name, command in self.lazy_commands.items()])
