"""`setwright log`: what was done, read from files, written down in the book, looked at."""

from __future__ import annotations

from types import MappingProxyType

import click

from setwright.solver.cli.lazy_group import LazyCommand, LazyGroup


def _read() -> click.Command:
    from setwright.solver.cli.log.read import command

    return command


def _add() -> click.Command:
    from setwright.solver.cli.log.add import command

    return command


def _import() -> click.Command:
    from setwright.solver.cli.log.from_file import command

    return command


def _show() -> click.Command:
    from setwright.solver.cli.log.shown import show_command

    return show_command


def _check() -> click.Command:
    from setwright.solver.cli.log.shown import check_command

    return check_command


def _pace() -> click.Command:
    from setwright.solver.cli.log.pace import command

    return command


class LogGroup(LazyGroup):
    """The group's commands, each imported when it is called."""

    lazy_commands = MappingProxyType(
        {
            "add": LazyCommand("Write down sets of a client's session.", _add),
            "import": LazyCommand("Write down a file's sessions, all of them or none.", _import),
            "show": LazyCommand("Show a client's sessions.", _show),
            "check": LazyCommand("Show what in a client's log looks wrong, or unlike the plan.", _check),
            "pace": LazyCommand("Tell from the log how long a client takes.", _pace),
            "read": LazyCommand("Read a training log, and print it or write it; no book is needed.", _read),
        }
    )


@click.group("log", cls=LogGroup)
def command() -> None:
    """What was done: sessions and sets.

    \b
    setwright log add @M "bench press 60x8,8,7 @ 2 RIR" "lat pulldown 50x10x3"
    setwright log import @M week-1.xlsx
    """
