"""Exercises left out of a week and the rest solved anew, in words and as a document."""

from __future__ import annotations

from typing import Any

from setwright.solver.planning import Unsolved
from setwright.solver.sheets.common.words import day_name, page_width, wrapped
from setwright.solver.sheets.screen.addresses import address
from setwright.solver.sheets.screen.edits.differences import difference_lines, effect_document, signed
from setwright.solver.sheets.screen.explain.answers import (
    ROUNDING,
    answer_document,
    proven_words,
    unsolved_document,
    unsolved_words,
)
from setwright.solver.uses.explain.reasons import Reason
from setwright.solver.uses.explain.what_if import Answer

SCHEMA = "setwright.why-without/1"
HOW = (
    "Each exercise is left out of the whole week and the week is solved anew, so that everything else may change. "
    "Beside that stands what happens when the line alone is taken out and the rest stays as it is."
)


def without_text(rows: list[tuple[Reason, Answer | Unsolved]], width: int) -> str:
    """Each line's exercise left out of the week and the rest solved anew, beside the line alone taken out."""
    width = page_width(width)
    parts = [wrapped(HOW, width)]
    parts += [_lines(reason, end, width) for reason, end in rows]
    return "\n\n".join("\n".join(part) for part in parts) + "\n"


def _lines(reason: Reason, end: Answer | Unsolved, width: int) -> list[str]:
    line = reason.line
    lead = f"Without {line.exercise.name}: "
    if isinstance(end, Unsolved):
        return wrapped(f"{lead}{unsolved_words(end)}", width, "  ")
    effect = end.effect
    said = [
        f"{lead}solved anew, the score changes by {signed(effect.score, 2)}; with the line of {day_name(line.day)} "
        f"alone taken out, by {signed(reason.effect.score, 2)}."
    ]
    if end.pin_dropped:
        said.append("Its pin was dropped for this.")
    if effect.score > ROUNDING:
        said.append("The search found a better week without it, so the week at hand is not the best one.")
    lines = wrapped(" ".join([*said, proven_words(end)]), width, "  ")
    return lines + [f"  {text}" for text in difference_lines(effect, width - 2)]


def without_document(rows: list[tuple[Reason, Answer | Unsolved]]) -> dict[str, Any]:
    """The same as JSON; every difference is after less before."""
    found = []
    for reason, end in rows:
        evaluated = reason.effect.before.evaluated
        row: dict[str, Any] = {"entry": address(evaluated, reason.line), "exercise": reason.line.exercise.id}
        row["exactly"] = effect_document(reason.effect)
        if isinstance(end, Unsolved):
            row["solved"] = unsolved_document(SCHEMA, end)
        else:
            row["solved"] = {**answer_document(end), "solved": True, "pin_dropped": end.pin_dropped}
        found.append(row)
    return {"schema": SCHEMA, "without": found}
