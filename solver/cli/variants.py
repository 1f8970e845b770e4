"""`setwright variants`: every sensible variant of a template, planned, run, looked at and printed."""

from __future__ import annotations

from importlib import import_module

import click

from setwright.catalogue.near import nearest

PARTS = {
    "plan": "Show what a template makes: the variants, their number and the time they take.",
    "run": "Solve what a folder does not hold yet, on this machine's cores or a cluster.",
    "status": "Show how a folder stands.",
    "sheets": "Print every week of a folder.",
}


class Parts(click.Group):
    """The group's commands, each loaded when it is called."""

    def list_commands(self, ctx: click.Context) -> list[str]:
        return list(PARTS)

    def get_command(self, ctx: click.Context, cmd_name: str) -> click.Command | None:
        if cmd_name not in PARTS:
            return None
        found: click.Command = import_module(f"setwright.solver.cli.variants_{cmd_name}").command
        return found

    def resolve_command(
        self, ctx: click.Context, args: list[str]
    ) -> tuple[str | None, click.Command | None, list[str]]:
        name = args[0]
        if name not in PARTS and not name.startswith("-"):
            near = nearest(name, PARTS)
            remedy = f"did you mean {near!r}?" if near else f"the commands are {', '.join(PARTS)}"
            ctx.fail(f"no command {name!r}; {remedy}")
        return super().resolve_command(ctx, args)

    def format_commands(self, ctx: click.Context, formatter: click.HelpFormatter) -> None:
        with formatter.section("Commands"):
            formatter.write_dl(list(PARTS.items()))


@click.group("variants", cls=Parts)
def command() -> None:
    """Every sensible variant of a template: days x minutes x kit x emphasis x goal x experience.

    \b
    setwright variants plan template.toml
    setwright variants run template.toml -o folder
    """
