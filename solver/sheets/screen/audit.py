"""An audit in words and as a document: what any week takes, gives and breaks."""

from __future__ import annotations

from collections import Counter
from collections.abc import Sequence
from typing import Any

from setwright.solver.auditing import Audit
from setwright.solver.evaluation.uncertainty import week_interval
from setwright.solver.rulebook import RULES, sentence_of
from setwright.solver.sheets.common.caution import CAUTION
from setwright.solver.sheets.common.findings import finding_words
from setwright.solver.sheets.common.time_breakdown import session_minutes
from setwright.solver.sheets.common.words import counted, page_width, wrapped
from setwright.solver.sheets.document.figures import evaluated_part
from setwright.solver.sheets.screen.day_table import day_lines
from setwright.solver.sheets.screen.edits.differences import broken_document
from setwright.solver.sheets.screen.headline import headline
from setwright.solver.sheets.screen.muscle_table import muscle_lines
from setwright.solver.sheets.screen.week_table import given_up_lines, load_lines

FEWEST_REPS = 5
"""Repetitions of a set below which the index is no measure of it (convention; see README's Limits)."""
SCHEMA = "setwright.audit/1"


def audit_document(audit: Audit) -> dict[str, Any]:
    """The audit as JSON: its figures, every rule broken, and where the week differs from how setwright plans."""
    resolved = audit.evaluated.resolved
    return {
        "schema": SCHEMA,
        "goal": resolved.goal,
        "score": audit.score,
        "broken": [broken_document(f, resolved) for f in audit.violations],
        "differs": [broken_document(f, resolved) for f in audit.differences],
        **evaluated_part(audit),
    }


def audit_text(audit: Audit, width: int, lead: str = "", more: Sequence[str] = ()) -> str:
    """The audit for a coach: the week and its minutes, sets per muscle, what is broken and what differs, costs.

    `lead` stands after the headline, `more` before the caution.
    """
    width = page_width(width)
    evaluated = audit.evaluated
    parts = [
        [*wrapped(headline(evaluated.resolved), width), *(wrapped(lead, width) if lead else [])],
        *(day_lines(evaluated, day.index, None, width) for day in evaluated.resolved.days),
        load_lines(evaluated, width),
        muscle_lines(audit, width),
        _worth_lines(audit, width),
        _outside_lines(audit, width),
        _broken_lines(audit, width),
        _difference_lines(audit, width),
        given_up_lines(audit, width),
        *(part.splitlines() for part in more),
        wrapped(f"Caution: {CAUTION}", width),
    ]
    return "\n\n".join("\n".join(part) for part in parts if part) + "\n"


def _worth_lines(audit: Audit, width: int) -> list[str]:
    """The week index with its interval, and what the costs leave of it."""
    low, high = week_interval(audit.evaluated)
    minutes = sum(session_minutes(audit.evaluated))
    index = f"Week index {audit.stimulus:.1f} (interval {low} to {high}), in {minutes} minutes a week."
    if audit.score > 0:
        left = f"What is given up, listed below, takes it to a score of {audit.score:.1f}."
    else:
        left = (
            "What is given up, listed below, weighs more than that, so there is no score; --best says what a week of "
            "the same minutes can reach."
        )
    return [*wrapped(index, width), *wrapped(f"  {left}", width, "  ")]


def _outside_lines(audit: Audit, width: int) -> list[str]:
    """How many lines lie outside what the index was measured on; nothing where none does."""
    few = sum(line.entry.reps[1] < FEWEST_REPS and not line.exercise.timed for line in audit.evaluated.lines)
    if not few:
        return []
    said = (
        f"{counted(few, 'line')} of fewer than {FEWEST_REPS} repetitions: counted like sets of more, though the trials "
        "behind the index did not measure them; they train strength first."
    )
    return wrapped(said, width)


def _broken_lines(audit: Audit, width: int) -> list[str]:
    """Everything that is wrong in any week, with its remedy."""
    if not audit.violations:
        return wrapped("Nothing is broken: kit, minutes, cautions and what the brief asks for are kept.", width)
    resolved = audit.evaluated.resolved
    lines = [f"Broken: {len(audit.violations)}"]
    for finding in audit.violations:
        said = finding_words(finding, resolved)
        lines += wrapped(f"  {finding.rule}: {said}; {RULES[finding.rule].remedy}", width, "    ")
    return lines


def _difference_lines(audit: Audit, width: int) -> list[str]:
    """Where the week differs from how setwright plans: one sentence a rule, with how often."""
    times = Counter(finding.rule for finding in audit.differences)
    if not times:
        return []
    resolved = audit.evaluated.resolved
    lines = ["Differs from how setwright plans, which is no fault:"]
    for rule, count in times.items():
        often = f" ({count} times)" if count > 1 else ""
        lines += wrapped(f"  {rule}{often}: {sentence_of(rule, resolved)}", width, "    ")
    return lines
