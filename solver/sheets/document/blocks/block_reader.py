"""A block read back from its document, every week audited anew, every fault at once."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from datetime import date
from typing import Any

from pydantic import ValidationError

from setwright.catalogue.entries import Catalogue
from setwright.catalogue.faults import Fault, UsageFault
from setwright.solver.auditing import Audit, audit
from setwright.solver.brief.assumed import Assumption
from setwright.solver.brief.fault_words import shown
from setwright.solver.brief.parsed_brief import ParsedBrief, parse_brief
from setwright.solver.brief.validation_faults import model_faults
from setwright.solver.evaluation.week import Week
from setwright.solver.rulebook import RULES, resolve
from setwright.solver.sheets.common.exercise_names import ExerciseNames
from setwright.solver.sheets.common.json_values import refuse_unwritable
from setwright.solver.sheets.document.blocks.block_model import (
    SCHEMA,
    BlockAskPart,
    BlockDay,
    BlockDocument,
    BlockTarget,
    BlockWeekPart,
    SpanPart,
)
from setwright.solver.uses.blocks.ask import BlockAsk, Sessions, Short, Span, Travel
from setwright.solver.uses.blocks.ask_faults import checked
from setwright.solver.uses.blocks.block import Block, BlockWeek
from setwright.solver.uses.blocks.calendar import CalendarWeek, calendar_of
from setwright.solver.uses.blocks.plan_weeks import asks_outright
from setwright.solver.uses.blocks.targets import Target

WRITE_ONE = "name a block that setwright wrote as JSON"


def read_block(document: Any, catalogue: Catalogue, where: str = "block") -> Block:
    """The block of a document; raises UsageFault with every fault found.

    A document written without health notes gives weeks audited without them: keep the private one where they matter.
    """
    if not isinstance(document, Mapping) or document.get("schema") != SCHEMA:
        got = document.get("schema") if isinstance(document, Mapping) else document
        raise UsageFault(Fault(f"{where}: schema", f"got {shown(got)}, expected {SCHEMA!r}", WRITE_ONE))
    refuse_unwritable(document, where)
    try:
        said = BlockDocument.model_validate(document, context=ExerciseNames(catalogue))
    except ValidationError as error:
        raise UsageFault(model_faults(error, BlockDocument, document, where)) from None
    ask = checked(ask_of(said.ask), catalogue)
    parsed = _parsed(said.brief, said.assumed, catalogue, f"{where}: brief")
    calendar = calendar_of(ask, parsed.brief, catalogue.defaults.block)
    if [(w.number, w.kind) for w in calendar] != [(w.number, w.kind) for w in said.weeks]:
        raise UsageFault(Fault(f"{where}: weeks", "are not those that its ask gives", WRITE_ONE))
    weeks = [_week(part, place, parsed, catalogue, where) for part, place in zip(said.weeks, calendar, strict=True)]
    return Block(ask, parsed, _audit(parsed, said.base, catalogue, f"{where}: base"), tuple(weeks))


def ask_of(said: BlockAskPart) -> BlockAsk:
    """What a document says was asked of its block."""

    def of(kind: str) -> list[SpanPart]:
        return [span for span in said.spans if span.kind == kind]

    def ends(span: SpanPart) -> tuple[date, date]:
        return date.fromisoformat(span.first), date.fromisoformat(span.last)

    return BlockAsk(
        weeks=said.weeks,
        starts=None if said.starts is None else date.fromisoformat(said.starts),
        lighter_every=said.lighter_every,
        off=tuple(Span(*ends(span)) for span in of("off")),
        travel=tuple(Travel(*ends(span), span.kit, _sessions(span)) for span in of("travel")),
        short=tuple(Short(*ends(span), _sessions(span) or Sessions(0, 0)) for span in of("short")),
        minimum=tuple(Span(*ends(span)) for span in of("minimum")),
        break_weeks_before=said.break_weeks_before,
        now=tuple(said.now.items()),
        shifted=said.shifted,
    )


def _sessions(span: SpanPart) -> Sessions | None:
    return None if span.sessions is None or span.minutes is None else Sessions(span.sessions, span.minutes)


def _parsed(raw: Mapping[str, Any], assumed: Sequence[str], catalogue: Catalogue, where: str) -> ParsedBrief:
    brief = parse_brief(raw, catalogue, where, tuple(RULES)).brief
    return ParsedBrief(brief, tuple(Assumption("plan", text) for text in assumed))


def _week(part: BlockWeekPart, place: CalendarWeek, base: ParsedBrief, catalogue: Catalogue, where: str) -> BlockWeek:
    if part.brief is None:
        return BlockWeek(place)
    where = f"{where}: weeks[{part.number - 1}]"
    parsed = _parsed(part.brief, [said.text for said in base.assumed], catalogue, f"{where}.brief")
    targets = tuple(tuple(_target(line.target, where) for line in day.entries) for day in part.days)
    found = _audit(parsed, part.days, catalogue, where)
    return BlockWeek(place, parsed, found, targets, place.kind != "build" and asks_outright(base.brief))


def _target(said: BlockTarget | None, where: str) -> Target:
    if said is None:
        raise UsageFault(Fault(where, "has a line without a target", WRITE_ONE))
    return Target(said.reps, said.load, said.step)


def _audit(parsed: ParsedBrief, days: Sequence[BlockDay], catalogue: Catalogue, where: str) -> Audit:
    if len(days) != len(parsed.brief.days):
        said = f"has {len(days)} sessions, its brief {len(parsed.brief.days)}"
        raise UsageFault(Fault(f"{where}: days", said, WRITE_ONE))
    week = Week(tuple(tuple(line.as_entry() for line in day.entries) for day in days))
    return audit(resolve(parsed.brief, catalogue), week)
