"""A block as JSON: one document, the same bytes for the same block."""

from __future__ import annotations

from typing import Any

from setwright.catalogue.version import own_version
from setwright.solver.brief.schema import PRIVATE
from setwright.solver.evaluation.evaluated_week import WHOLE, EvaluatedWeek, Line
from setwright.solver.evaluation.resolving import WIDE_OPEN
from setwright.solver.sheets.blocks.notes import week_note
from setwright.solver.sheets.blocks.words import convention_words, progression_words, target_words
from setwright.solver.sheets.common.caution import clearance_needed
from setwright.solver.sheets.common.json_values import rounded
from setwright.solver.sheets.document.blocks.block_model import SCHEMA
from setwright.solver.sheets.document.day_parts import entry_part
from setwright.solver.sheets.document.provenance import evidence_digest
from setwright.solver.sheets.document.solved_week import assumed_of, brief_part
from setwright.solver.uses.blocks.ask import BlockAsk, Short, Travel
from setwright.solver.uses.blocks.block import Block, BlockWeek
from setwright.solver.uses.blocks.targets import Target


def block_document(block: Block, private: bool = False) -> dict[str, Any]:
    """The block as programs read it; ages, cautions and clearance only when `private`."""
    catalogue, brief = block.base.evaluated.resolved.catalogue, block.parsed.brief
    made_by = {"version": own_version(), "catalogue": catalogue.digest, "evidence": evidence_digest(catalogue)}
    return {
        "schema": SCHEMA,
        "made_by": made_by,
        "ask": ask_part(block.ask, catalogue.defaults.block.lighter_every),
        "brief": brief_part(brief, private),
        "assumed": assumed_of(block.parsed, private),
        "unit": brief.client.unit,
        "below_solved": block.below_base,
        "base": [_base_day(block.base.evaluated, day) for day in range(len(block.base_week.days))],
        "weeks": [_week_part(block, week, private) for week in block.weeks],
        "progression": progression_words(catalogue),
        "conventions": convention_words(block),
        "clearance_needed": clearance_needed(brief, catalogue),
        "private_left_out": not private and any(bool(getattr(brief.client, field)) for field in PRIVATE),
    }


def ask_part(ask: BlockAsk, usual: int) -> dict[str, Any]:
    """What was asked as JSON; a lighter week comes every `usual` weeks where nothing is said."""
    return {
        "weeks": ask.weeks,
        "starts": None if ask.starts is None else ask.starts.isoformat(),
        "lighter_every": usual if ask.lighter_every is None else ask.lighter_every,
        "spans": [_span_part(kind, span) for kind, span in ask.spans()],
        "break_weeks_before": ask.break_weeks_before,
        "now": dict(ask.now),
        "shifted": ask.shifted,
    }


def _span_part(kind: str, span: Any) -> dict[str, Any]:
    found = {"kind": kind, "first": span.first.isoformat(), "last": span.last.isoformat()}
    sessions = span.sessions if isinstance(span, Travel | Short) else None
    return {
        **found,
        "kit": list(span.kit) if isinstance(span, Travel) else [],
        "sessions": sessions.count if sessions else None,
        "minutes": sessions.minutes if sessions else None,
    }


def _week_part(block: Block, week: BlockWeek, private: bool) -> dict[str, Any]:
    place, evaluated = week.place, week.evaluated
    return {
        "number": week.number,
        "starts": None if place.starts is None else place.starts.isoformat(),
        "ends": None if place.ends is None else place.ends.isoformat(),
        "kind": week.kind,
        "note": week_note(block, week),
        "sets": week.sets,
        "rir": list(week.rirs),
        "stimulus": rounded(week.audit.stimulus) if week.audit else 0.0,
        "brief": brief_part(week.parsed.brief, private) if week.parsed else None,
        "days": [_day_part(evaluated, day, targets) for day, targets in enumerate(week.targets)] if evaluated else [],
        "muscles": _muscles(evaluated) if evaluated else [],
    }


def _day_part(evaluated: EvaluatedWeek, day: int, targets: tuple[Target, ...]) -> dict[str, Any]:
    lines = zip(evaluated.on[day], targets, strict=True)
    return {
        **_session(evaluated, day),
        "entries": [{**_line_part(line), "target": _target_part(evaluated, line, target)} for line, target in lines],
    }


def _base_day(evaluated: EvaluatedWeek, day: int) -> dict[str, Any]:
    return {**_session(evaluated, day), "entries": [_line_part(line) for line in evaluated.on[day]]}


def _session(evaluated: EvaluatedWeek, day: int) -> dict[str, Any]:
    resolved = evaluated.resolved.days[day]
    seconds = evaluated.seconds(day) if evaluated.on[day] else 0
    return {"weekday": resolved.weekday, "minutes": resolved.minutes, "seconds": seconds}


def _line_part(line: Line) -> dict[str, Any]:
    return {**entry_part(line.entry), "name": line.exercise.name}


def _target_part(evaluated: EvaluatedWeek, line: Line, target: Target) -> dict[str, Any]:
    brief = evaluated.resolved.brief
    text = target_words(target, line.exercise, brief.client.unit, brief.lifts is not None)
    return {"reps": target.reps, "load": target.load, "step": target.step, "text": text}


def _muscles(evaluated: EvaluatedWeek) -> list[dict[str, Any]]:
    return [
        {
            "muscle": m.id,
            "sets": rounded(evaluated.weekly_sets(m.id) / WHOLE),
            "band": None if m.high >= WIDE_OPEN and not m.low else [m.low, None if m.high >= WIDE_OPEN else m.high],
        }
        for m in evaluated.resolved.muscles.values()
    ]
