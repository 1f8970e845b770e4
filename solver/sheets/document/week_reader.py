"""A week read back from its document, every fault at once."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from typing import Any

from pydantic import ValidationError

from setwright.catalogue.entries import Catalogue
from setwright.catalogue.faults import Fault, UsageFault
from setwright.solver.brief.defaults import WEEKDAYS
from setwright.solver.brief.fault_words import shown
from setwright.solver.brief.parsed_brief import ParsedBrief, parse_brief
from setwright.solver.brief.validation_faults import model_faults
from setwright.solver.evaluation.week import Week
from setwright.solver.rulebook import RULES
from setwright.solver.sheets.common.exercise_names import ExerciseNames
from setwright.solver.sheets.common.json_values import refuse_unwritable
from setwright.solver.sheets.document.week_model import SCHEMA, WeekDocument

WRITE_ONE = "name a week that setwright wrote as JSON"


@dataclass(frozen=True)
class ReadWeek:
    """What a document holds: its fields, and its brief and week as values."""

    document: WeekDocument
    parsed: ParsedBrief
    week: Week


def read_week(document: Any, catalogue: Catalogue, where: str = "week") -> tuple[ParsedBrief, Week]:
    """The brief and the week of one document; raises UsageFault with every fault found."""
    found = read_document(document, catalogue, where)
    return found.parsed, found.week


def read_document(
    document: Any, catalogue: Catalogue, where: str = "week", asked: ParsedBrief | None = None
) -> ReadWeek:
    """A week's document with its brief, or held against `asked`; raises UsageFault with every fault found."""
    if not isinstance(document, Mapping):
        said = f"is {shown(document)}, expected one week as an object"
        raise UsageFault(Fault(where, said, WRITE_ONE))
    if document.get("schema") != SCHEMA:
        said = f"got {shown(document.get('schema'))}, expected {SCHEMA!r}"
        raise UsageFault(Fault(f"{where}: schema", said, WRITE_ONE))
    refuse_unwritable(document, where)
    faults: list[Fault] = []
    parsed = asked or _brief(document, catalogue, where, faults)
    whole = document if asked is None else {"brief": {}, **document}
    try:
        found = WeekDocument.model_validate(whole, context=ExerciseNames(catalogue))
    except ValidationError as error:
        found = None
        faults += model_faults(error, WeekDocument, document, where)
    faults += _days_apart(document, parsed, where)
    if faults or found is None or parsed is None:
        raise UsageFault(faults)
    return ReadWeek(found, parsed, Week(tuple(tuple(line.as_entry() for line in day.entries) for day in found.days)))


def _brief(document: Mapping[str, Any], catalogue: Catalogue, where: str, faults: list[Fault]) -> ParsedBrief | None:
    """The brief the week was made for, or None where it has faults, which are kept."""
    raw = document.get("brief")
    if not isinstance(raw, Mapping):
        return None
    try:
        return parse_brief(raw, catalogue, f"{where}: brief", tuple(RULES))
    except UsageFault as error:
        faults += error.faults
        return None


def _days_apart(document: Mapping[str, Any], parsed: ParsedBrief | None, where: str) -> list[Fault]:
    """Where the days are not the brief's: as many, and on the same weekdays."""
    rows = document.get("days")
    if parsed is None or not isinstance(rows, list):
        return []
    asked = parsed.brief.days
    if len(rows) != len(asked):
        said = f"has {len(rows)} days, expected the brief's {len(asked)}"
        return [Fault(f"{where}: days", said, "mend the brief or the days")]
    weekdays = [row.get("weekday") if isinstance(row, Mapping) else None for row in rows]
    return [
        Fault(f"{where}: days[{place}].weekday", f"got {said!r}, expected {shown(day.weekday)} as in the brief")
        for place, (said, day) in enumerate(zip(weekdays, asked, strict=True))
        if said in WEEKDAYS and said != day.weekday
    ]
