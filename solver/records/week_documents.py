"""The document of a client's week as it stands: as it was kept last, else as the block has it."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from datetime import date
from typing import Any

from setwright.solver.book.planned import KeptBlock, KeptWeek


def week_document(weeks: Sequence[KeptWeek], held: Sequence[KeptBlock], monday: date) -> Mapping[str, Any] | None:
    """The document of the week of a Monday; None where none is planned."""
    kept = [week.document for week in weeks if week.starts == monday]
    return kept[-1] if kept else block_week(held, monday)


def block_week(held: Sequence[KeptBlock], monday: date) -> Mapping[str, Any] | None:
    """The week of a Monday in the newest block that has it; None where none does."""
    found = [
        week
        for block in sorted(held, key=lambda block: block.id)
        for week in block.document.get("weeks", ())
        if week.get("starts") == monday.isoformat()
    ]
    return found[-1] if found else None


def kinds_of(held: Sequence[KeptBlock]) -> dict[str, str]:
    """Monday -> the kind of its week, in the newest block that has it."""
    blocks = sorted(held, key=lambda block: block.id)
    weeks = [week for block in blocks for week in block.document.get("weeks", ()) if week.get("starts")]
    return {week["starts"]: week.get("kind", "") for week in weeks}
