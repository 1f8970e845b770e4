"""A week that was made elsewhere, read from CSV or JSON by the names a coach writes; every fault at once."""

from __future__ import annotations

import math
from collections.abc import Mapping
from dataclasses import dataclass, field, replace
from types import MappingProxyType
from typing import Any, Final

from setwright.catalogue.entries import Catalogue, Exercise
from setwright.catalogue.faults import Fault, UsageFault
from setwright.solver.brief.defaults import LIMITS, WEEKDAY_NAMES, WEEKDAYS
from setwright.solver.brief.parsed_brief import ParsedBrief, parse_brief
from setwright.solver.evaluation.clock import warm_up_seconds
from setwright.solver.evaluation.evaluated_week import EvaluatedWeek
from setwright.solver.evaluation.prescriptions import pair_rests, reps_of, rests_of, rir_of
from setwright.solver.evaluation.resolved_brief import ResolvedBrief
from setwright.solver.evaluation.week import Entry, Week
from setwright.solver.foreign.cells import hold, seconds, span, whole
from setwright.solver.foreign.near_names import Names
from setwright.solver.foreign.raw_rows import BESIDE, READ, Row, looks_like_json, rows_of_csv, rows_of_json
from setwright.solver.rulebook import RULES, resolve
from setwright.solver.sheets.common.words import breaths, clock, listed
from setwright.solver.sheets.document.week_document import SCHEMA
from setwright.solver.sheets.document.week_reader import Reader, parse_week, read_week

MOST_ROWS: Final = 500
TAKEN: Final[Mapping[str, str]] = MappingProxyType(
    {
        "reps": "the catalogue's range was taken",
        "rir": "the kind of lift decides it, as in a planned week",
        "rest": "the goal's shortest was taken",
    }
)
"""What stands in for a cell that says nothing."""


@dataclass(frozen=True)
class Read:
    """A week as read: its brief, its lines, the document it came from if it was one, and what was taken as said."""

    parsed: ParsedBrief
    week: Week
    document: dict[str, Any]
    notes: tuple[str, ...] = ()


def read_any(
    data: bytes, where: str, catalogue: Catalogue, asked: ParsedBrief | None = None, accept_near: bool = False
) -> Read:
    """The week of a JSON document or a table; `asked` is the brief it is held against, by default the week's own.

    A table without a brief takes days and minutes from the week, all else by default. Raises UsageFault with every
    fault found; a name that is only near a known one is a fault unless `accept_near`, and then a note.
    """
    if looks_like_json(data):
        document = parse_week(data, where)
        if isinstance(document, Mapping) and ("schema" in document or "brief" in document):
            return own(dict(document), where, catalogue, asked)
        rows = rows_of_json(document, where)
    else:
        rows = rows_of_csv(data, where)
    return Table(catalogue, where, accept_near).read(rows, asked)


def own(document: dict[str, Any], where: str, catalogue: Catalogue, asked: ParsedBrief | None) -> Read:
    """A week's own document, held against its own brief or another."""
    if asked is None:
        parsed, week = read_week(document, catalogue, where)
        return Read(parsed, week, document)
    if document.get("schema") != SCHEMA:
        said = f"got {document.get('schema')!r}, expected {SCHEMA!r}"
        raise UsageFault(Fault(f"{where}: schema", said, "name a week written with --json"))
    reader = Reader(catalogue, where)
    week = reader.days(document.get("days"), asked)
    if reader.faults:
        raise UsageFault(reader.faults)
    return Read(asked, week, document)


# ---- a table as a week


@dataclass
class Table:
    """Reads rows as a week and keeps the faults and notes met."""

    catalogue: Catalogue
    where: str
    accept_near: bool = False
    notes: list[str] = field(default_factory=list)
    untold: dict[str, int] = field(default_factory=dict)

    def __post_init__(self) -> None:
        self.reader = Names(self.catalogue, self.where, self.accept_near, self.notes)

    def read(self, rows: list[Row], asked: ParsedBrief | None) -> Read:
        """The rows as a week of the brief, or of the brief that they imply."""
        if not rows:
            raise UsageFault(Fault(self.where, "has no lines", "write a row for each line of the week"))
        if len(rows) > MOST_ROWS:
            raise UsageFault(Fault(self.where, f"has {len(rows)} lines, at most {MOST_ROWS} are read", "name one week"))
        self.unread(rows)
        days = [self.day(row, at) for at, row in rows]
        exercises = [self.reader.exercise(row.get("exercise"), f"{at}, exercise") for at, row in rows]
        self.stop()
        order = self.order(days, asked)
        parsed = asked or self.implied(order, rows, exercises, [10] * len(order))
        resolved = resolve(parsed.brief, self.catalogue)
        entries = [self.entry(*row, exercises[i], resolved, order.index(days[i])) for i, row in enumerate(rows)]
        self.stop()
        week = Week(tuple(self.paired(entries, days, day, resolved) for day in order))
        self.stop()
        if asked is None:
            parsed = self.implied(order, rows, exercises, self.minutes(resolved, week))
            self.notes.append("brief: days and minutes were taken from the week, all else is by default")
        self.notes += [f"{name} was not said in {n} lines: {TAKEN[name]}" for name, n in self.untold.items()]
        return Read(parsed, week, {}, tuple(self.notes))

    def stop(self) -> None:
        """Raise when faults were met."""
        if self.reader.faults:
            raise UsageFault(self.reader.faults)

    def unread(self, rows: list[Row]) -> None:
        """Say which columns are passed over."""
        names = dict.fromkeys(name for _, row in rows for name in row if name)
        others = [name for name in names if name not in READ and name not in BESIDE and not self.known(name)]
        if others:
            self.notes.append(f"not read: the column{'s' if len(others) > 1 else ''} {listed(others)}")

    def known(self, name: str) -> bool:
        """Whether a week's own document has the field."""
        return name in ("order", "group", "place", "seconds", "ramp_up_sets", "limb", "drops", "weekday")

    # ---- days

    def day(self, row: Mapping[str, Any], at: str) -> str:
        """mon ... sun, or a session's number."""
        said = str(row.get("day", "")).strip().lower()
        if said in WEEKDAYS or said in WEEKDAY_NAMES:
            return said[:3]
        number = said.removeprefix("session").removeprefix("day").strip()
        if number.isdecimal() and 1 <= int(number) <= len(WEEKDAYS):
            return str(int(number))
        self.reader.fault(f"{at}, day", f"got {row.get('day')!r}, expected mon to sun or a session's number, 1 to 7")
        return ""

    def order(self, days: list[str], asked: ParsedBrief | None) -> list[str]:
        """The week's days in order: the brief's, or those that the rows name."""
        used = list(dict.fromkeys(days))
        if asked is not None:
            return self.asked_order(used, asked)
        numbers = [day for day in used if day.isdecimal()]
        if numbers and len(numbers) < len(used):
            said = f"has weekdays and numbers ({', '.join(used)})"
            raise UsageFault(Fault(f"{self.where}: day", said, "use one or the other"))
        return sorted(used, key=int) if numbers else [day for day in WEEKDAYS if day in used]

    def asked_order(self, used: list[str], asked: ParsedBrief) -> list[str]:
        """The brief's days; a row on any other day is a fault."""
        brief = asked.brief
        weekdays = [day.weekday for day in brief.days]
        if brief.any_order or all(day.isdecimal() for day in used):
            there = [str(i + 1) for i in range(len(brief.days))]
        else:
            there = [day or "" for day in weekdays]
        lost = [day for day in used if day not in there]
        if lost:
            said = f"stands on {listed(lost)}, the brief has {listed(there)}"
            raise UsageFault(Fault(f"{self.where}: day", said, "mend the brief's days or the week's"))
        return there

    def implied(self, order: list[str], rows: list[Row], exercises: list[str], minutes: list[int]) -> ParsedBrief:
        """The brief that a week implies: its days with so many minutes, pairs and techniques where it has them."""
        raw: dict[str, Any] = {"days": [{"minutes": m} for m in minutes]}
        if order[0].isdecimal():
            raw["any_order"] = True
        else:
            for day, weekday in zip(raw["days"], order, strict=True):
                day["weekday"] = weekday
        if any(row.get("pair") for _, row in rows):
            raw["pairs"] = True
        if any(str(row.get("technique") or "straight").strip().lower() != "straight" for _, row in rows):
            raw["techniques"] = True
        return parse_brief(raw, self.catalogue, f"{self.where}: brief", tuple(RULES))

    def minutes(self, resolved: ResolvedBrief, week: Week) -> list[int]:
        """The fewest whole minutes that hold each session with its full warm-up."""
        evaluated = EvaluatedWeek(resolved, week)
        found = []
        low, high = (round(end) for end in LIMITS["minutes"])
        for day in resolved.days:
            work, numbers = evaluated.work_seconds(day.index), resolved.curves.numbers
            able = [m for m in range(low, high + 1) if work + warm_up_seconds(m, numbers) <= 60 * m]
            if not able:
                takes = math.ceil(work / 60)
                self.reader.fault(day.name, f"takes {takes} min, at most {high} are read", "is a rest in minutes?")
            found.append(able[0] if able else high)
        self.stop()
        return found

    # ---- lines

    def entry(self, at: str, row: Mapping[str, Any], exercise_id: str, resolved: ResolvedBrief, day: int) -> Entry:
        """One line; what it does not say is as the brief would have it."""
        exercise = self.catalogue.exercises[exercise_id]
        technique, drops = self.technique(row, at)
        partner = row.get("pair") or None
        partner = None if partner is None else self.reader.exercise(partner, f"{at}, pair")
        rests = pair_rests(resolved) if partner else rests_of(resolved, exercise)
        reps = self.reps(row, at, exercise) or reps_of(resolved, exercise, resolved.days[day])
        rir = self.said(row, "rir", whole)
        rest = self.said(row, "rest", seconds)
        return Entry(
            exercise=exercise_id,
            sets=self.reader.whole(whole(row.get("sets")), "sets", f"{at}, sets", 1),
            reps=reps,
            rir=rir_of(resolved, exercise) if rir is None else self.reader.whole(rir, "rir", f"{at}, RIR", 0),
            rest=rests[0] if rest is None else self.reader.whole(rest, "rest_seconds", f"{at}, rest", 0),
            technique=technique,
            drops=drops,
            partner=partner,
        )

    def said(self, row: Mapping[str, Any], name: str, read: Any) -> Any:
        """What a cell says, or None where it says nothing; that is counted."""
        value = row.get(name)
        if value is None or value == "":
            self.untold[name] = self.untold.get(name, 0) + 1
            return None
        return read(value)

    def reps(self, row: Mapping[str, Any], at: str, exercise: Exercise) -> tuple[int, int] | None:
        """A range of repetitions; the seconds of a hold as the slow breaths it is counted in."""

        def counted(value: Any) -> Any:
            held = hold(value) if exercise.timed else None
            return span(value) if held is None else list(breaths(held))

        found = self.said(row, "reps", counted)
        return None if found is None else self.reader.reps(found, f"{at}, reps")

    def technique(self, row: Mapping[str, Any], at: str) -> tuple[str, int]:
        """straight, drop 2 or rest-pause; drop alone is one drop."""
        said = str(row.get("technique") or "straight").strip().lower()
        word, _, number = said.partition(" ")
        name = {"drops": "drop", "rest pause": "rest-pause"}.get(said if said == "rest pause" else word, word)
        technique = self.reader.technique(name, f"{at}, technique")
        if technique != "drop":
            return technique, 0
        drops = whole(number) if number else row.get("drops") or 1
        return technique, self.reader.whole(drops, "drops", f"{at}, technique", 1)

    def paired(self, entries: list[Entry], days: list[str], day: str, resolved: ResolvedBrief) -> tuple[Entry, ...]:
        """A day's lines with each pair said by both and resting alike."""
        here = [entry for entry, on in zip(entries, days, strict=True) if on == day]
        partners = {e.exercise: e.partner for e in here if e.partner}
        for one, other in sorted(partners.items()):
            if other not in {e.exercise for e in here} or partners.get(other or "", one) != one:
                self.reader.fault(f"{day}, pair", f"{one} is paired with {other}, which is not", "name each other")
        both = {**{other: one for one, other in partners.items() if other}, **partners}
        rests = {e.exercise: e.rest for e in here}
        found = []
        for entry in here:
            partner = both.get(entry.exercise)
            rest = max(entry.rest, rests.get(partner or "", 0)) if partner else entry.rest
            if partner and rest != entry.rest:
                self.notes.append(f"{day}: {entry.exercise} rests {clock(rest)}, as its pair does after each round")
            found.append(replace(entry, partner=partner, rest=rest))
        return tuple(found)
