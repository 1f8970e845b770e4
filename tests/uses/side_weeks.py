"""Weeks set side by side in tests: from a raw brief and lines of (exercise, sets, rest), built by hand."""

from __future__ import annotations

from typing import Any

from setwright.catalogue.load import load_catalogue
from setwright.solver.auditing import audit
from setwright.solver.brief.parsed_brief import ParsedBrief, parse_brief
from setwright.solver.evaluation.evaluated_week import EvaluatedWeek
from setwright.solver.evaluation.prescriptions import reps_of, rir_of
from setwright.solver.evaluation.week import Entry, Week
from setwright.solver.rulebook import resolve

CATALOGUE = load_catalogue()
Row = tuple[str, int, int]


def brief_of(**raw: Any) -> ParsedBrief:
    raw.setdefault("days", [{"weekday": "mon", "minutes": 60}, {"weekday": "thu", "minutes": 60}])
    raw.setdefault("pairs", raw.get("goal") == "efficiency")
    return parse_brief(raw, CATALOGUE, "test")


def view_of(rows: tuple[tuple[Row, ...], ...], **raw: Any) -> EvaluatedWeek:
    """The view of a week whose days hold these (exercise, sets, rest) rows."""
    raw.setdefault("days", [{"weekday": day, "minutes": 60} for day in ("mon", "wed", "fri")[: len(rows)]])
    resolved = resolve(brief_of(**raw).brief, CATALOGUE)
    found = []
    for day, lines in zip(resolved.days, rows, strict=True):
        exercises = [(CATALOGUE.exercises[name], sets, rest) for name, sets, rest in lines]
        found.append(
            tuple(Entry(e.id, n, reps_of(resolved, e, day), rir_of(resolved, e), rest) for e, n, rest in exercises)
        )
    return audit(resolved, Week(tuple(found))).evaluated
