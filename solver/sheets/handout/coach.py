"""`coach.toml`: whose letterhead the sheets carry, which words they use, and what they fall back on."""

from __future__ import annotations

import re
import tomllib
from collections.abc import Callable, Mapping
from dataclasses import dataclass, field, replace
from datetime import date, time
from datetime import time as TimeOfDay
from types import MappingProxyType
from typing import Any, Final

from setwright.catalogue.entries import Catalogue
from setwright.catalogue.faults import Fault, UsageFault
from setwright.solver.sheets.common.labels import LABELS
from setwright.solver.sheets.handout.coach_fields import FieldReader, Paper

MOST_BYTES: Final = 200_000


@dataclass(frozen=True)
class Coach:
    """Letterhead, words and defaults; `words` holds every label of `LABELS`, minutes are whole."""

    name: str = ""
    lines: tuple[str, ...] = ()
    language: str = "en"
    caution: str = ""
    """Said after the usual caution, never in its place."""
    paper: Paper = "a4"
    weeks: int = 1
    revision: int = 0
    """How often the calendar was written anew; said by option only."""
    start: date | None = None
    review_weeks: int | None = None
    time: TimeOfDay = time(18, 0)
    times: Mapping[str, TimeOfDay] = field(default_factory=lambda: MappingProxyType({}))
    """Weekday -> when its session starts, where that is not `time`."""
    alarm: int | None = None
    """Minutes before a session at which the calendar reminds; None: never."""
    holidays: tuple[date, ...] = ()
    words: Mapping[str, str] = field(default_factory=lambda: LABELS)
    muscles: Mapping[str, str] = field(default_factory=lambda: MappingProxyType({}))
    exercises: Mapping[str, str] = field(default_factory=lambda: MappingProxyType({}))
    """Ids -> names in the client's language."""


DEFAULT_COACH: Final = Coach()
FIELDS: Final = (
    *("name", "lines", "language", "caution", "paper", "weeks", "start", "review_weeks"),
    *("time", "times", "alarm", "holidays", "words", "muscles", "exercises"),
)


def parse_coach(data: bytes, catalogue: Catalogue, where: str = "coach.toml") -> Coach:
    """The coach of one TOML file; raises UsageFault with every fault found."""
    raw = _tables(data, where)
    reader = FieldReader(where)
    found = {name: READERS[name](reader, name, value) for name, value in raw.items() if reader.known(name, FIELDS)}
    reader.ids("muscles", found.get("muscles", {}), catalogue.muscles)
    reader.ids("exercises", found.get("exercises", {}), catalogue.exercises)
    if reader.faults:
        raise UsageFault(reader.faults)
    words = MappingProxyType({**LABELS, **found.pop("words", {})})
    return Coach(words=words, **found)


def overlaid(coach: Coach, said: Mapping[str, str | None]) -> Coach:
    """The coach with the options start, paper, weeks and revision laid over; raises UsageFault with every fault."""
    reader = FieldReader("")
    acts = {
        "start": FieldReader.day,
        "paper": FieldReader.paper,
        "weeks": FieldReader.weeks,
        "revision": FieldReader.revision,
    }
    changes: dict[str, Any] = {}
    for name, value in said.items():
        if value is not None:
            number = int(value) if re.fullmatch(r"\d{1,9}", value) else value
            changes[name] = acts[name](reader, f"--{name}", number)
    if reader.faults:
        raise UsageFault(reader.faults)
    return replace(coach, **changes)


def _tables(data: bytes, where: str) -> dict[str, Any]:
    if len(data) > MOST_BYTES:
        raise UsageFault(Fault(where, "is larger than 200 kB, expected a page", "name the coach's own file"))
    try:
        return tomllib.loads(data.decode("utf-8-sig"))
    except UnicodeDecodeError:
        raise UsageFault(Fault(where, "is not UTF-8 text", "save it as UTF-8")) from None
    except (tomllib.TOMLDecodeError, RecursionError) as error:
        raise UsageFault(Fault(where, f"is not TOML: {error}", "mend that line")) from None


READERS: Final[Mapping[str, Callable[[FieldReader, str, Any], Any]]] = MappingProxyType(
    {
        "name": FieldReader.text,
        "lines": FieldReader.lines,
        "language": FieldReader.language,
        "caution": FieldReader.text,
        "paper": FieldReader.paper,
        "weeks": FieldReader.weeks,
        "start": FieldReader.day,
        "review_weeks": FieldReader.weeks,
        "time": FieldReader.time,
        "times": FieldReader.times,
        "alarm": FieldReader.alarm,
        "holidays": FieldReader.days,
        "words": FieldReader.words,
        "muscles": FieldReader.names,
        "exercises": FieldReader.names,
    }
)
