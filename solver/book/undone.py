"""Acts on a client taken back and done again: on the brief, the weeks, the blocks and the log; nothing is ever lost."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from datetime import date
from typing import Any, Final

from setwright.catalogue.faults import Fault, UsageFault
from setwright.solver.book.clients import Client, note_change
from setwright.solver.book.journal import Kind, note_turn
from setwright.solver.book.opened import Book

_ROWS: Final = """
    SELECT r.act, r.kind, r.row, coalesce(w.starts, b.starts, s.held_on) AS first, b.ends AS last, w.why AS why
    FROM act_row r JOIN act ON act.id = r.act
    LEFT JOIN week w ON r.kind = 'week' AND w.id = r.row
    LEFT JOIN block b ON r.kind = 'block' AND b.id = r.row
    LEFT JOIN session s ON r.kind = 'session' AND s.id = r.row
    WHERE act.client = ? ORDER BY r.act, r.kind, first, r.row
"""


@dataclass(frozen=True)
class Act:
    """One act on a client, or one taking back or doing again of an act."""

    id: int
    moment: str
    said: str
    """What it wrote, in plain words without a health note: week of 30 Nov 2026, found on the desk."""
    through: str
    """By which way it came: the desk, a command; empty where it was written before this was kept."""
    noted: str
    """The same as the notes of changes have it; empty where they have no note of it."""
    rows: tuple[tuple[Kind, int], ...]
    """(kind, row) of what it wrote; none for a taking back or a doing again."""
    turns: int | None = None
    """The act that this one takes back or does again."""
    back: bool = False
    """Whether it takes back."""


@dataclass(frozen=True)
class Journal:
    """All acts on a client in the order in which they were done, and what can be turned."""

    all: tuple[Act, ...]
    holding: tuple[Act, ...]
    """The acts that hold; the last is taken back next."""
    waiting: tuple[Act, ...]
    """The acts that were taken back since the newest act; the last is done again next."""


def journal_of(book: Book, client: Client) -> Journal:
    """The journal of a client."""
    rows: dict[int, list[Any]] = {}
    for row in book.rows(_ROWS, client.id):
        rows.setdefault(row["act"], []).append(row)
    acts: dict[int, Act] = {}
    holding: list[Act] = []
    waiting: list[Act] = []
    for row in book.rows("SELECT * FROM act WHERE client = ? ORDER BY id", client.id):
        act = _act(row, rows.get(row["id"], ()), acts)
        acts[act.id] = act
        if act.turns is None:
            holding.append(act)
            waiting.clear()
        else:
            came, went = (holding, waiting) if act.back else (waiting, holding)
            went.append(came.pop())
    return Journal(tuple(acts.values()), tuple(holding), tuple(waiting))


def acts(book: Book, client: Client) -> tuple[Act, ...]:
    """The acts on a client that hold, the newest first: in this order they are taken back."""
    return journal_of(book, client).holding[::-1]


def take_back(book: Book, client: Client) -> Act:
    """The newest act, taken back: what it wrote holds no longer, and what stood before does again.

    Raises UsageFault where there is none.
    """
    with book.writing():
        holding = journal_of(book, client).holding
        if not holding:
            raise UsageFault(Fault(f"@{client.code}", "nothing was done that can be taken back"))
        return _turned(book, client, holding[-1], True)


def do_again(book: Book, client: Client) -> Act:
    """The act taken back last, done again; raises UsageFault where there is none, or another act came since."""
    with book.writing():
        waiting = journal_of(book, client).waiting
        if not waiting:
            said = "nothing was taken back that can be done again"
            raise UsageFault(Fault(f"@{client.code}", said, "a taking back holds once something new is done"))
        return _turned(book, client, waiting[-1], False)


def _turned(book: Book, client: Client, act: Act, back: bool) -> Act:
    """The act, after a row that takes it back or does it again, and a note of that."""
    note_turn(book, client.id, act.id, back)
    note_change(book, client, f"{'taken back' if back else 'done again'}: {act.said}")
    return act


def _act(row: Any, wrote: Sequence[Any], before: dict[int, Act]) -> Act:
    """A row with what it wrote as an act."""
    if row["turns"] is not None:
        said = f"{'taken back' if row['back'] else 'done again'}: {before[row['turns']].said}"
        return Act(row["id"], row["made"], said, row["through"], said, (), row["turns"], bool(row["back"]))
    pairs = tuple((r["kind"], r["row"]) for r in wrote)
    return Act(row["id"], row["made"], _said(wrote, row["said"]), row["through"], row["said"], pairs)


def _said(wrote: Sequence[Any], said: str) -> str:
    """What an act wrote, in plain words."""
    words = []
    for kind in dict.fromkeys(row["kind"] for row in wrote):
        rows = [row for row in wrote if row["kind"] == kind]
        if kind == "brief":
            words.append(f"brief: {said}" if said else "a change of the brief")
        elif kind == "session":
            days = list(dict.fromkeys(_day(row["first"]) for row in rows))
            many = f"{len(rows)} sessions" if len(rows) > 1 else "session"
            words.append(f"{many} of {days[0]}" + (f" to {days[-1]}" if len(days) > 1 else ""))
        else:
            words += [_planned(row) for row in rows]
    return "; ".join(words)


def _planned(row: Any) -> str:
    """A week or a block in plain words."""
    if row["kind"] == "block":
        return f"block of {_day(row['first'])} to {_day(row['last'])}"
    return f"week of {_day(row['first'])}" + (f", {row['why']}" if row["why"] else "")


def _day(text: str) -> str:
    """A date in words: 30 Nov 2026."""
    day = date.fromisoformat(text)
    return f"{day.day} {day:%b %Y}"
