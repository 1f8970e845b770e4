"""`setwright variants`: every sensible variant of a template, planned, run, looked at and printed."""

from __future__ import annotations

from types import MappingProxyType

import click

from setwright.solver.cli.lazy_group import LazyCommand, LazyGroup


def _plan() -> click.Command:
    from setwright.solver.cli.variants.plan import command

    return command


def _run() -> click.Command:
    from setwright.solver.cli.variants.run import command

    return command


def _status() -> click.Command:
    from setwright.solver.cli.variants.status import command

    return command


def _sheets() -> click.Command:
    from setwright.solver.cli.variants.sheets import command

    return command


class VariantsGroup(LazyGroup):
    """The group's commands, each imported when it is called."""

    lazy_commands = MappingProxyType(
        {
            "plan": LazyCommand("Show what a template makes: the variants, their number and the expected time.", _plan),
            "run": LazyCommand("Solve what a folder does not hold yet, on this machine's cores or a cluster.", _run),
            "status": LazyCommand("Show how a folder stands.", _status),
            "sheets": LazyCommand("Print every week of a folder.", _sheets),
        }
    )


@click.group("variants", cls=VariantsGroup)
def command() -> None:
    """Every sensible variant of a template: days x minutes x kit x emphasis x goal x experience.

    \b
    setwright variants plan template.toml
    setwright variants run template.toml -o folder
    """
