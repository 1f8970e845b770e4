"""`setwright block`: plan several weeks, show what is kept, and go on from the log."""

from __future__ import annotations

from types import MappingProxyType

import click

from setwright.solver.cli.lazy_group import LazyCommand, LazyGroup


def _plan() -> click.Command:
    from setwright.solver.cli.blocks.plan import command

    return command


def _show() -> click.Command:
    from setwright.solver.cli.blocks.shown import command

    return command


def _next() -> click.Command:
    from setwright.solver.cli.blocks.next_week import command

    return command


class BlockGroup(LazyGroup):
    """The group's commands, each imported when it is called."""

    lazy_commands = MappingProxyType(
        {
            "plan": LazyCommand("Plan a block of weeks; a client's is kept in the book.", _plan),
            "show": LazyCommand("Show a client's block, or write its sheets.", _show),
            "next": LazyCommand("Say from the log what to load next, and why.", _next),
        }
    )


@click.group("block", cls=BlockGroup)
def command() -> None:
    """Weeks over time: a block planned from a brief, and gone on with from what was done.

    \b
    setwright block plan @M --weeks 6 --starts 2026-01-05
    setwright block next @M
    """
