"""`setwright book`: where it is, a backup, a check, an act taken back, a client's data handed out or erased."""

from __future__ import annotations

from types import MappingProxyType

import click

from setwright.solver.cli.lazy_group import LazyCommand, LazyGroup


def _where() -> click.Command:
    from setwright.solver.cli.book.care import where_command

    return where_command


def _backup() -> click.Command:
    from setwright.solver.cli.book.care import backup_command

    return backup_command


def _check() -> click.Command:
    from setwright.solver.cli.book.care import check_command

    return check_command


def _export() -> click.Command:
    from setwright.solver.cli.book.client_data import export_command

    return export_command


def _erase() -> click.Command:
    from setwright.solver.cli.book.client_data import erase_command

    return erase_command


def _undo() -> click.Command:
    from setwright.solver.cli.book.undo import undo_command

    return undo_command


class BookGroup(LazyGroup):
    """The group's commands, each imported when it is called."""

    lazy_commands = MappingProxyType(
        {
            "where": LazyCommand("Print the book's path.", _where),
            "backup": LazyCommand("Copy the whole book to a new file.", _backup),
            "check": LazyCommand("Check the whole file.", _check),
            "export": LazyCommand("Write all that is known of a client: JSON and CSV.", _export),
            "undo": LazyCommand("Take back the last act on a client, or do it again.", _undo),
            "erase": LazyCommand("Erase a client from the book.", _erase),
        }
    )


@click.group("book", cls=BookGroup)
def command() -> None:
    """The one file that holds clients, briefs, blocks and logs.

    It is the file named with --book, else by the variable SETWRIGHT_BOOK, else setwright-book.db in the working folder
    where there is one, else your own in your data folder. Only you may read it.
    """
