"""What more minutes buy on each day, in words and as a document."""

from __future__ import annotations

from typing import Any

from setwright.solver.sheets.common.grid import grid
from setwright.solver.sheets.common.words import counted, day_name, page_width, wrapped
from setwright.solver.sheets.screen.edits.differences import difference_lines, effect_document, signed, signed_clock
from setwright.solver.sheets.screen.explain.answers import ROUNDING, answer_document, proven_words
from setwright.solver.uses.explain.what_if import MoreMinutes

SCHEMA = "setwright.why-minutes/1"


def minutes_text(found: MoreMinutes, width: int) -> str:
    """What more minutes buy on each day, the best day first."""
    width = page_width(width)
    more = counted(found.minutes, "more minute")
    lead = f"{more} on one day at a time, the week solved anew each time; the day that gains most first:"
    lines = wrapped(lead, width)
    table = []
    for row in found.days:
        e = row.answer.effect
        table.append([day_name(row.day), signed(e.score, 2), signed(e.stimulus, 2), signed_clock(e.seconds)])
    lines += grid(["Day", "Score", "Index", "Time"], table, "lrrr")
    if found.already.score > ROUNDING:
        said = (
            f"The same search without more minutes already gains {found.already.score:.2f} points on the week at "
            "hand; the table counts from there."
        )
        lines += wrapped(said, width)
    parts = ["\n".join(lines)]
    for row in found.days:
        if row.answer.effect.score > ROUNDING:
            proof = wrapped(f"{day_name(row.day)}: {proven_words(row.answer)}", width, "  ")
            parts.append("\n".join([*proof, *difference_lines(row.answer.effect, width)]))
    if len(parts) == 1:
        parts.append("No day's extra minutes raise the score.")
    return "\n\n".join(parts) + "\n"


def minutes_document(found: MoreMinutes) -> dict[str, Any]:
    """The same as JSON; every difference is after less before."""
    return {
        "schema": SCHEMA,
        "minutes": found.minutes,
        "already": effect_document(found.already),
        "days": [{"day": row.day.name, **answer_document(row.answer)} for row in found.days],
    }
