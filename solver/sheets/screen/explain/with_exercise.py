"""The best week that holds an exercise, in words and as a document."""

from __future__ import annotations

from typing import Any, assert_never

from setwright.catalogue.entries import Exercise
from setwright.solver.planning import Unsolved
from setwright.solver.rulebook import RULES, sentence_of
from setwright.solver.sheets.common.words import listed, page_width, wrapped
from setwright.solver.sheets.screen.edits.differences import difference_lines, effect_document
from setwright.solver.sheets.screen.explain.answers import (
    ROUNDING,
    answer_document,
    proven_words,
    unsolved_document,
    unsolved_words,
)
from setwright.solver.uses.explain.what_if import Answer, Excluded

SCHEMA = "setwright.why-with/1"


def with_text(exercise: Exercise, end: Answer | Unsolved | Excluded, days: tuple[str, ...], width: int) -> str:
    """What the best week found with an exercise costs; `days` are those on which it stands already."""
    width = page_width(width)
    lines = wrapped(f"{exercise.name} stands in the week already, on {listed(days)}.", width) if days else []
    match end:
        case Excluded():
            lines += _excluded_lines(exercise, end, width)
        case Unsolved():
            lines += wrapped(f"With {exercise.name}: {unsolved_words(end)}", width, "  ")
        case Answer():
            lines += _answer_lines(exercise, end, width)
        case _:
            assert_never(end)
    return "\n".join(lines) + "\n"


def _excluded_lines(exercise: Exercise, end: Excluded, width: int) -> list[str]:
    lines = wrapped(f"No week can hold {exercise.name}: rules exclude it on every day.", width)
    for rule in end.rules:
        said = f"  {rule}: {sentence_of(rule, end.resolved)} Remedy: {RULES[rule].remedy}."
        lines += wrapped(said, width, "    ")
    return lines


def _answer_lines(exercise: Exercise, end: Answer, width: int) -> list[str]:
    score = end.effect.score
    if abs(score) < ROUNDING:
        verdict = "costs nothing"
    elif score > 0:
        verdict = f"scores {score:.2f} points more than the week at hand, which is not the best one"
    else:
        verdict = f"costs {-score:.2f} points"
    lead = f"The best week found with {exercise.name} {verdict}. {proven_words(end)}"
    lines = [*wrapped(lead, width, "  "), *difference_lines(end.effect, width), ""]
    if end.alone is None:
        return [*lines, *wrapped("No single change makes room for it without breaking a rule.", width)]
    alone = "By a single change, the rest of the week left as it is:"
    return [*lines, *wrapped(alone, width), *difference_lines(end.alone, width)]


def with_document(exercise: Exercise, end: Answer | Unsolved | Excluded, days: tuple[str, ...]) -> dict[str, Any]:
    """The same as JSON; every difference is after less before."""
    match end:
        case Excluded():
            closed = [{"id": r, "sentence": sentence_of(r, end.resolved), "remedy": RULES[r].remedy} for r in end.rules]
            found: dict[str, Any] = {"schema": SCHEMA, "solved": False, "closed_by": closed}
        case Unsolved():
            found = unsolved_document(SCHEMA, end)
        case Answer():
            alone = None if end.alone is None else effect_document(end.alone)
            found = {"schema": SCHEMA, "solved": True, **answer_document(end), "by_one_change": alone}
        case _:
            assert_never(end)
    return {**found, "exercise": exercise.id, "already_on": list(days)}
