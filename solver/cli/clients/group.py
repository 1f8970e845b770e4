"""`setwright client`: add, list, show and change the clients of the book."""

from __future__ import annotations

from types import MappingProxyType

import click

from setwright.solver.cli.lazy_group import LazyCommand, LazyGroup


def _add() -> click.Command:
    from setwright.solver.cli.clients.add import command

    return command


def _list() -> click.Command:
    from setwright.solver.cli.clients.shown import list_command

    return list_command


def _show() -> click.Command:
    from setwright.solver.cli.clients.shown import show_command

    return show_command


def _set() -> click.Command:
    from setwright.solver.cli.clients.changed import set_command

    return set_command


def _rest() -> click.Command:
    from setwright.solver.cli.clients.changed import rest_command

    return rest_command


class ClientGroup(LazyGroup):
    """The group's commands, each imported when it is called."""

    lazy_commands = MappingProxyType(
        {
            "add": LazyCommand("Write down a new client with a brief.", _add),
            "list": LazyCommand("List the clients.", _list),
            "show": LazyCommand("Show a client: brief, blocks, sessions, changes.", _show),
            "set": LazyCommand("Change a client's brief or facts; every version is kept.", _set),
            "rest": LazyCommand("Put a client to rest, or bring one back.", _rest),
        }
    )


@click.group("client", cls=ClientGroup)
def command() -> None:
    """The people of the book, each by a code: @CODE stands wherever a brief or a week may.

    \b
    setwright client add M "3 days x 40 min, grow delts"
    setwright week @M
    """
