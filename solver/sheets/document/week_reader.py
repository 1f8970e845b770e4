"""A week read back from its JSON, every fault at once."""

from __future__ import annotations

import json
from collections.abc import Mapping
from typing import Any

from setwright.catalogue.entries import Catalogue
from setwright.catalogue.faults import Fault, UsageFault
from setwright.solver.brief.parsed_brief import ParsedBrief, parse_brief
from setwright.solver.brief.phrase.lexicon import Lexicon, lexicon_of
from setwright.solver.evaluation.week import Entry, Week
from setwright.solver.rules import RULES
from setwright.solver.sheets.document.week_document import SCHEMA

MOST_BYTES = 4_000_000
TECHNIQUES = ("straight", "drop", "rest-pause")
MOST = {"sets": 20, "rir": 10, "rest_seconds": 3600, "drops": 5, "reps": 100}
"""Above these a number is a slip of the pen (convention)."""


def parse_week(data: bytes, where: str) -> Any:
    """The JSON of a week file; raises UsageFault when it is none."""
    if len(data) > MOST_BYTES:
        raise UsageFault(Fault(where, "is larger than 4 MB, expected one week", "name the file of one week"))
    if not data.strip():
        raise UsageFault(Fault(where, "is empty", "write a week with `setwright week ... --json -o week.json`"))
    try:
        return json.loads(data.decode("utf-8-sig"))
    except UnicodeDecodeError:
        raise UsageFault(Fault(where, "is not UTF-8 text", "name a week written as JSON")) from None
    except (json.JSONDecodeError, RecursionError) as error:
        raise UsageFault(Fault(where, f"is not JSON: {error}", "name a week written with --json")) from None


def read_week(document: Any, catalogue: Catalogue, where: str = "week") -> tuple[ParsedBrief, Week]:
    """The brief and the week of one document; raises UsageFault with every fault found."""
    if not isinstance(document, Mapping):
        said = f"is {kind(document)}, expected one week as an object"
        raise UsageFault(Fault(where, said, "use --json to write one"))
    if document.get("schema") != SCHEMA:
        said = f"got {document.get('schema')!r}, expected {SCHEMA!r}"
        raise UsageFault(Fault(f"{where}: schema", said, "name a week written with --json"))
    reader = Reader(catalogue, where)
    parsed = reader.brief(document.get("brief"))
    week = reader.days(document.get("days"), parsed)
    if reader.faults or parsed is None:
        raise UsageFault(reader.faults)
    return parsed, week


def kind(value: object) -> str:
    """What a JSON value is, in words."""
    names = {dict: "an object", list: "a list", str: "text", bool: "true or false", int: "a number", float: "a number"}
    return "null" if value is None else names.get(type(value), type(value).__name__)


class Reader:
    """Reads the parts of one document and keeps the faults met."""

    def __init__(self, catalogue: Catalogue, where: str) -> None:
        self.catalogue = catalogue
        self.words: Lexicon = lexicon_of(catalogue)
        self.where = where
        self.faults: list[Fault] = []

    def fault(self, path: str, said: str, remedy: str = "") -> None:
        self.faults.append(Fault(f"{self.where}: {path}", said, remedy))

    def brief(self, raw: Any) -> ParsedBrief | None:
        """The brief the week was made for, understood anew."""
        if not isinstance(raw, Mapping):
            self.fault("brief", f"is {kind(raw)}, expected an object", "name a week written with --json")
            return None
        try:
            return parse_brief(raw, self.catalogue, f"{self.where}: brief", tuple(RULES))
        except UsageFault as error:
            self.faults += error.faults
            return None

    def days(self, rows: Any, parsed: ParsedBrief | None) -> Week:
        """The sessions; as many and on the same weekdays as the brief's."""
        if not isinstance(rows, list):
            self.fault("days", f"is {kind(rows)}, expected a list of days")
            return Week(())
        days = tuple(self.day(row, f"days[{place}]") for place, row in enumerate(rows))
        if parsed is not None:
            self.match(rows, parsed)
        return Week(days)

    def match(self, rows: list[Any], parsed: ParsedBrief) -> None:
        asked = parsed.brief.days
        if len(rows) != len(asked):
            self.fault("days", f"has {len(rows)} days, expected the brief's {len(asked)}", "mend the brief or the days")
            return
        for place, (row, day) in enumerate(zip(rows, asked, strict=True)):
            said = row.get("weekday") if isinstance(row, Mapping) else None
            if said is not None and said != day.weekday:
                self.fault(f"days[{place}].weekday", f"got {said!r}, expected {day.weekday!r} as in the brief")

    def day(self, row: Any, path: str) -> tuple[Entry, ...]:
        if not isinstance(row, Mapping):
            self.fault(path, f"is {kind(row)}, expected an object")
            return ()
        entries = row.get("entries")
        if not isinstance(entries, list):
            self.fault(f"{path}.entries", f"is {kind(entries)}, expected a list")
            return ()
        found = (self.entry(entry, f"{path}.entries[{place}]") for place, entry in enumerate(entries))
        return tuple(entry for entry in found if entry is not None)

    def entry(self, row: Any, path: str) -> Entry | None:
        """One line, or None where a fault was kept."""
        if not isinstance(row, Mapping):
            self.fault(path, f"is {kind(row)}, expected an object")
            return None
        before = len(self.faults)
        partner = row.get("paired_with")
        entry = Entry(
            exercise=self.exercise(row.get("exercise"), f"{path}.exercise"),
            sets=self.whole(row.get("sets"), "sets", f"{path}.sets", 1),
            reps=self.reps(row.get("reps"), f"{path}.reps"),
            rir=self.whole(row.get("rir"), "rir", f"{path}.rir", 0),
            rest=self.whole(row.get("rest_seconds"), "rest_seconds", f"{path}.rest_seconds", 0),
            technique=self.technique(row.get("technique", "straight"), f"{path}.technique"),
            drops=self.whole(row.get("drops", 0), "drops", f"{path}.drops", 0),
            partner=None if partner is None else self.exercise(partner, f"{path}.paired_with"),
        )
        return entry if len(self.faults) == before else None

    def exercise(self, value: Any, path: str) -> str:
        """An exercise's id from its id, name or alias."""
        if not isinstance(value, str):
            self.fault(path, f"is {kind(value)}, expected an exercise's id")
            return ""
        found = self.words.resolve(value, ("exercise",))
        if found is None:
            near = self.words.nearest(value, ("exercise",))
            remedy = f"did you mean {near!r}?" if near else "`setwright exercises` lists them all"
            self.fault(path, f"{value!r} is not in the catalogue, expected an exercise", remedy)
            return ""
        return found[1]

    def whole(self, value: Any, name: str, path: str, least: int) -> int:
        if type(value) is not int:
            self.fault(path, f"is {kind(value) if type(value) is not float else value}, expected a whole number")
            return least
        if not least <= value <= MOST[name]:
            self.fault(path, f"got {value}, expected {least} to {MOST[name]}")
        return value

    def reps(self, value: Any, path: str) -> tuple[int, int]:
        if not isinstance(value, list) or len(value) != 2:
            self.fault(path, f"is {kind(value)}, expected two whole numbers as [8, 12]")
            return (1, 1)
        low, high = (self.whole(part, "reps", f"{path}[{place}]", 1) for place, part in enumerate(value))
        if low > high:
            self.fault(path, f"got {value}, expected the lower number first")
        return (low, high)

    def technique(self, value: Any, path: str) -> str:
        if value not in TECHNIQUES:
            self.fault(path, f"got {value!r}, expected one of {', '.join(TECHNIQUES)}")
            return "straight"
        return str(value)
