"""Messages to whoever watches: always on standard error."""

from __future__ import annotations

import shutil
import sys
from contextlib import suppress

import click


def say(message: str) -> None:
    """Print one message on standard error; one that cannot be written there is lost."""
    with suppress(OSError):
        click.echo(message, err=True)


def watched() -> bool:
    """Whether standard error is a terminal, where someone may be watching."""
    return sys.stderr is not None and sys.stderr.isatty()


def columns() -> int:
    """The width to set text in: COLUMNS, the terminal's, or 100."""
    return shutil.get_terminal_size((100, 40)).columns
