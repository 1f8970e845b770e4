"""`setwright log`: what was done, read from files."""

from __future__ import annotations

from types import MappingProxyType

import click

from setwright.solver.cli.lazy_group import LazyCommand, LazyGroup


def _read() -> click.Command:
    from setwright.solver.cli.log.read import command

    return command


class LogGroup(LazyGroup):
    """The group's commands, each imported when it is called."""

    lazy_commands = MappingProxyType({"read": LazyCommand("Read a training log, and print it or write it.", _read)})


@click.group("log", cls=LogGroup)
def command() -> None:
    """What was done: sessions and sets.

    \b
    setwright log read log.csv --columns date=Datum,load=Weight
    """
