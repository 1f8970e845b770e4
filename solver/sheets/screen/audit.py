"""An audit in words and as a document: what any week takes, gives and breaks."""

from __future__ import annotations

from collections.abc import Sequence
from typing import Any

from setwright.solver.auditing import Audit
from setwright.solver.evaluation.finding import Finding
from setwright.solver.evaluation.resolved_brief import ResolvedBrief
from setwright.solver.evaluation.uncertainty import week_interval
from setwright.solver.rulebook import RULES
from setwright.solver.sheets.common.caution import CAUTION
from setwright.solver.sheets.common.findings import finding_words
from setwright.solver.sheets.common.grid import grid
from setwright.solver.sheets.common.words import day_name, page_width, whole_minutes, wrapped
from setwright.solver.sheets.document.figures import evaluated_part
from setwright.solver.sheets.screen.edits.differences import broken_document
from setwright.solver.sheets.screen.muscle_table import muscle_lines
from setwright.solver.sheets.screen.week_table import given_up_lines

SCHEMA = "setwright.audit/1"


def audit_document(audit: Audit) -> dict[str, Any]:
    """The audit as JSON: its figures, with every rule broken and its remedy."""
    broken = [broken_document(f, audit.evaluated.resolved) for f in audit.broken]
    return {
        "schema": SCHEMA,
        "goal": audit.evaluated.resolved.goal,
        "score": audit.score,
        "broken": broken,
        **evaluated_part(audit),
    }


def audit_text(audit: Audit, width: int, more: Sequence[str] = ()) -> str:
    """The audit for a coach: minutes, sets per muscle, rules broken with remedies, what was missed, then `more`."""
    width = page_width(width)
    low, high = week_interval(audit.evaluated)
    parts = [
        _minutes_lines(audit),
        muscle_lines(audit, width),
        [f"Week index {audit.stimulus:.1f} (interval {low} to {high}), score {audit.score:.1f}"],
        _broken_lines(audit, width),
        given_up_lines(audit, width),
        *(part.splitlines() for part in more),
        wrapped(f"Caution: {CAUTION}", width),
    ]
    return "\n\n".join("\n".join(part) for part in parts if part) + "\n"


def _minutes_lines(audit: Audit) -> list[str]:
    """Each day's minutes used and given."""
    evaluated = audit.evaluated
    rows = []
    for day in evaluated.resolved.days:
        lines = evaluated.on[day.index]
        minutes = whole_minutes(evaluated.seconds(day.index)) if lines else 0
        rows.append([day_name(day), str(len(lines)), str(minutes), str(day.minutes)])
    return grid(["Day", "Lines", "Minutes", "Given"], rows, "lrrr")


def _broken_lines(audit: Audit, width: int) -> list[str]:
    """Every hard rule broken with its remedy, then what is only printed otherwise than in a planned week."""
    if not audit.broken:
        return ["No rule is broken."]
    resolved = audit.evaluated.resolved
    data = [f for f in audit.broken if RULES[f.rule].kind == "data"]
    hard = [f for f in audit.broken if RULES[f.rule].kind != "data"]
    lines = [f"Rules broken: {len(hard)}"] if hard else ["No hard rule is broken."]
    lines += _finding_lines(hard, resolved, width)
    if data:
        lines += [f"Printed otherwise than in a planned week: {len(data)}", *_finding_lines(data, resolved, width)]
    return lines


def _finding_lines(findings: Sequence[Finding], resolved: ResolvedBrief, width: int) -> list[str]:
    """Findings with their remedies."""
    found: list[str] = []
    for finding in findings:
        said = finding_words(finding, resolved)
        found += wrapped(f"  {finding.rule}: {said}; {RULES[finding.rule].remedy}", width, "    ")
    return found
