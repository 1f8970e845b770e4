"""The week on screen: plain text that a coach reads from the top, at most 100 columns wide."""

from __future__ import annotations

from typing import TYPE_CHECKING

from setwright.solver.auditing import Audit
from setwright.solver.evaluation.evaluated_week import EvaluatedWeek
from setwright.solver.evaluation.resolved_brief import ResolvedBrief
from setwright.solver.sheets.common.caution import (
    CAUTION,
    CLEARANCE,
    caution_sentences,
    clearance_needed,
    position_warnings,
)
from setwright.solver.sheets.common.costs import points, shown
from setwright.solver.sheets.common.loads.load_words import known_words, line_load_words, notes_on_loads
from setwright.solver.sheets.common.words import page_width, wrapped
from setwright.solver.sheets.document.solved_week import assumed_of, overridden
from setwright.solver.sheets.screen.day_table import day_lines
from setwright.solver.sheets.screen.headline import headline
from setwright.solver.sheets.screen.muscle_table import muscle_lines
from setwright.solver.sheets.screen.score_words import score_lines
from setwright.solver.uses.edits.card_swaps import swaps_on_cards

if TYPE_CHECKING:
    from setwright.solver.planning import Solved


def week_text(solved: Solved, width: int = 100, private: bool = False) -> str:
    """The week for a coach: days, muscles, what it is worth, what was given up; health notes if private."""
    width = page_width(width)
    audit, evaluated = solved.audit, solved.audit.evaluated
    swaps = swaps_on_cards(audit)
    parts = [
        _before(solved, width, private),
        wrapped(headline(solved.resolved), width),
        *(day_lines(evaluated, day.index, swaps, width) for day in evaluated.resolved.days),
        load_lines(evaluated, width),
        muscle_lines(audit, width),
        score_lines(solved, width),
        given_up_lines(audit, width),
        _bulleted("Assumed", assumed_of(solved.parsed, private), width),
        _bulleted("Overridden", _overridden_words(solved.resolved), width),
        wrapped(f"Caution: {CAUTION}", width),
    ]
    return "\n\n".join("\n".join(part) for part in parts if part) + "\n"


def load_lines(evaluated: EvaluatedWeek, width: int) -> list[str]:
    """What the loads are from, how to take them, and how to find those that are not known; nothing without lifts."""
    brief, exercises = evaluated.resolved.brief, evaluated.resolved.catalogue.exercises
    sets = [(exercises[name].name, ask) for name, ask in (brief.lifts or {}).items()]
    known = "; ".join(f"{name} {known_words(ask, brief.client.unit)}" for name, ask in sets)
    lines = wrapped(f"Loads from: {known}", width, "  ") if known else []
    for said in notes_on_loads(line_load_words(evaluated).values()):
        lines += wrapped(said, width, "  ")
    return lines


def given_up_lines(audit: Audit, width: int) -> list[str]:
    """Every cost in the score, dearest first, in index points; what was earned is below zero."""
    costs = shown(audit)
    if not costs:
        return []
    lines = [f"Given up, in index points ({points(audit.cost_units):.1f} in all):"]
    for cost in costs:
        times = f" ({cost.times} times)" if cost.times > 1 else ""
        lines += wrapped(f"{cost.points:6.1f}  {cost.rule}{times}: {cost.text}", width, " " * 10)
    return lines


def _before(solved: Solved, width: int, private: bool) -> list[str]:
    """What is said before the week: clearance that is missing, and the brief's own cautions when private."""
    brief, catalogue = solved.parsed.brief, solved.resolved.catalogue
    lines = wrapped(CLEARANCE, width) if clearance_needed(brief, catalogue) else []
    notes = (*caution_sentences(brief, catalogue), *position_warnings(solved.audit.evaluated)) if private else ()
    for sentence in notes:
        lines += wrapped(sentence, width, "  ")
    return lines


def _bulleted(title: str, sentences: list[str], width: int) -> list[str]:
    """A titled list, or nothing."""
    lines = [line for said in sentences for line in wrapped(f"  - {said}", width, "    ")]
    return [f"{title}:", *lines] if lines else []


def _overridden_words(resolved: ResolvedBrief) -> list[str]:
    """The rules that the brief turned off, made hard or priced itself."""
    words = {"off": "turned off", "hard": "made hard"}
    return [
        f"{row['id']} {words.get(str(row['said']), 'set to ' + str(row['said']))}: {row['sentence']}"
        for row in overridden(resolved)
    ]
