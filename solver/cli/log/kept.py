"""What is said of sessions that were written down."""

from __future__ import annotations

from typing import TYPE_CHECKING

from setwright.solver.cli.console.messages import say

if TYPE_CHECKING:
    from setwright.solver.book.clients import Client
    from setwright.solver.book.sessions import Kept


def say_kept(client: Client, kept: Kept) -> None:
    """Say how many sessions were written down, were there already, and took the place of others."""
    more = [f"{kept.there_already} there already"] if kept.there_already else []
    more += [f"{kept.replaced} in the place of what stood there, which is kept"] if kept.replaced else []
    count = f"{kept.written} session{'' if kept.written == 1 else 's'}"
    say(f"written down for @{client.code}: {', '.join((count, *more))}")
