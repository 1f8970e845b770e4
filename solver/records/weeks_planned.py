"""Every week that the book has for a client: kept by itself, or of a block that holds."""

from __future__ import annotations

from dataclasses import dataclass
from datetime import date
from typing import Any

from setwright.solver.book.clients import Client
from setwright.solver.book.opened import Book
from setwright.solver.book.planned import blocks, kept_weeks

SCHEMA = "setwright.weeks/1"


@dataclass(frozen=True)
class PlannedWeek:
    """A week of a Monday: where it comes from, what it is worth, and how often it was kept anew."""

    starts: date
    said: str
    """The reason why it was kept, or its place in the block."""
    index: float
    """The week index; 0 in a week off."""
    kept: int
    """How many versions of it are kept; 0 where it stands in a block alone."""


def weeks_planned(book: Book, client: Client) -> tuple[PlannedWeek, ...]:
    """One week for each Monday, the newest first; what was kept by itself takes the place of the block's."""
    found: dict[date, PlannedWeek] = {}
    for block in blocks(book, client):
        for week in block.document["weeks"]:
            if week["starts"] is not None:
                starts = date.fromisoformat(week["starts"])
                said = f"week {week['number']} of the block, {week['kind']}"
                found[starts] = PlannedWeek(starts, said, week["stimulus"], 0)
    for kept in kept_weeks(book, client):
        before = found.get(kept.starts)
        times = before.kept + 1 if before else 1
        found[kept.starts] = PlannedWeek(kept.starts, kept.why, kept.document["stimulus"], times)
    return tuple(sorted(found.values(), key=lambda week: week.starts, reverse=True))


def mondays_planned(book: Book, client: Client) -> set[date]:
    """The Mondays of all these weeks."""
    held = {date.fromisoformat(w["starts"]) for b in blocks(book, client) for w in b.document["weeks"] if w["starts"]}
    return held | {kept.starts for kept in kept_weeks(book, client)}


def weeks_document(client: Client, found: tuple[PlannedWeek, ...]) -> dict[str, Any]:
    """The same as JSON."""
    weeks = [
        {"starts": w.starts.isoformat(), "said": w.said, "stimulus": round(w.index, 1), "kept": w.kept} for w in found
    ]
    return {"schema": SCHEMA, "client": client.code, "weeks": weeks}
