"""The journal of the book: which rows each act wrote, so that an act can be taken back."""

from __future__ import annotations

from typing import Final, Literal

from setwright.solver.book.opened import Book

Kind = Literal["brief", "week", "block", "session"]
TAKEN_BACK: Final = """
    SELECT turns FROM (SELECT turns, back, max(id) FROM act WHERE turns IS NOT NULL GROUP BY turns) WHERE back = 1
"""
"""The acts that were taken back last and not done again."""
_OUT: Final = f"SELECT row FROM act_row WHERE kind = '{{kind}}' AND act IN ({TAKEN_BACK})"


def left_out(kind: Kind) -> str:
    """The query for the rows of a kind that readers leave out, because what wrote them was taken back."""
    return _OUT.format(kind=kind)


def that_hold(kind: Literal["block", "session"]) -> str:
    """The condition for the rows of a kind that were neither replaced nor taken back."""
    out = left_out(kind)
    replaced = f"SELECT replaces FROM {kind} WHERE replaces IS NOT NULL AND id NOT IN ({out})"
    return f"id NOT IN ({out}) AND id NOT IN ({replaced})"


def note_row(book: Book, client: int, kind: Kind, row: int, said: str = "") -> None:
    """Write down that a row of a client (by row) was written; all rows of one transaction are one act.

    Inside `writing` alone; `said` is a word on the act and holds no health note.
    """
    if client not in book.acts:
        values = (client, book.now, book.through, said)
        written = book.connection.execute("INSERT INTO act (client, made, through, said) VALUES (?, ?, ?, ?)", values)
        book.acts[client] = int(written.lastrowid or 0)
    book.connection.execute("INSERT INTO act_row (act, kind, row) VALUES (?, ?, ?)", (book.acts[client], kind, row))


def note_turn(book: Book, client: int, act: int, back: bool) -> None:
    """Write down that an act was taken back, or done again; inside `writing` alone."""
    values = (client, book.now, book.through, act, int(back))
    book.connection.execute("INSERT INTO act (client, made, through, turns, back) VALUES (?, ?, ?, ?, ?)", values)
