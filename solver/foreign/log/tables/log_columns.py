"""Which column of a table of sets is which: by headings in general use, or as the caller says."""

from __future__ import annotations

import re
from collections.abc import Mapping, Sequence
from dataclasses import dataclass, field
from types import MappingProxyType
from typing import Final

from setwright.solver.brief.schema import Unit
from setwright.solver.foreign.log.cells.numbers import unit_of
from setwright.solver.sheets.common.sanitise import one_line
from setwright.solver.sheets.document.progress.log_model import MOST_SETS
from setwright.solver.sheets.plain.csv_file import COLUMNS
from setwright.solver.sheets.xlsx import log_keys

OF_A_SET: Final = ("load", "reps", "rir", "rpe", "side", "done", "set ended")
"""Fields of one set, which may be numbered: load-1, reps 2, Set 3."""
OF_A_SESSION: Final = ("week", "started", "ended", "minutes", "how hard", "note")
FIELDS: Final = ("date", "session", "exercise", "set", "sets", "sets x reps", *OF_A_SET, "unit", "type", *OF_A_SESSION)
_WRITTEN: Final[Mapping[str, str]] = MappingProxyType(
    {
        "date": "date dates training_date session_date",
        "session": "session day training",
        "exercise": f"exercise exercises lift lifts movement movements {log_keys.ID}",
        "set": "set set_no set_nr set_number",
        "sets": "sets no_of_sets number_of_sets",
        "load": "load loads weight weights",
        "reps": "reps rep repetitions",
        "rir": "rir reps_in_reserve repetitions_in_reserve",
        "rpe": "rpe",
        "side": "side limb",
        "done": "done result results performed",
        "sets x reps": "sets_x_reps sets_and_reps",
        "set ended": "set_ended set_end set_finished",
        "unit": "unit units",
        "type": "type set_type",
        "week": "week week_no week_number",
        "started": "started start start_time",
        "ended": "ended end end_time finished",
        "minutes": "minutes min mins duration",
        "how hard": "how_hard session_effort",
        "note": "note notes remark remarks comment comments",
    }
)
WORDS: Final = {word.replace("_", " ").replace("-", " "): f for f, words in _WRITTEN.items() for word in words.split()}
_UNIT: Final = re.compile(r"(.*?)\s*[(\[]?\b(kgs?|lbs?)\b[)\]]?")
_NUMBERED: Final = re.compile(r"set (\d{1,2}) (.+)|(.+?) (\d{1,2})|set (\d{1,2})")
PLANNED: Final = frozenset(name.lower() for name in COLUMNS) - {"exercise", "day"}
"""What a card's own table says of the plan."""
LONGEST: Final = 60
"""Letters of a heading that are repeated in a fault."""
MARKS: Final = frozenset(("ramp-up", "swaps"))
"""Headings by which a card's own table is known."""


@dataclass(frozen=True)
class LogColumns:
    """Where each field stands in a line, counted from 0; `numbered` holds set number -> field -> place."""

    heads: tuple[str, ...]
    at: Mapping[str, int]
    numbered: Mapping[int, Mapping[str, int]] = field(default_factory=dict)
    unread: tuple[int, ...] = ()
    unit: Unit | None = None
    """The unit that the heading of the loads says."""
    own: bool = False
    """Whether the table is a card's own, whose other columns are the plan."""

    def name(self, place: int | None) -> str:
        """A column as its heading is written."""
        return "" if place is None or place >= len(self.heads) else self.heads[place]


def plain_heading(text: str) -> str:
    """A heading in small letters, its words one blank apart."""
    return " ".join(re.split(r"[\s_\-/.:]+", text.strip().lower())).strip()


def columns_of(head: Sequence[str], said: Mapping[str, str]) -> LogColumns:
    """The columns of a heading; `said` is field -> heading, which goes before what a heading means by itself."""
    asked = {plain_heading(heading): name for name, heading in said.items()}
    own = {text.strip().lower() for text in head} >= MARKS
    at: dict[str, int] = {}
    numbered: dict[int, dict[str, int]] = {}
    unread: list[int] = []
    unit: Unit | None = None
    for place, text in enumerate(head):
        plain = plain_heading(text)
        number, name, own_unit = asked_field(asked[plain]) if plain in asked else meant(plain)
        if own and number is None and text.strip().lower() in PLANNED and plain not in asked:
            continue
        held = at if number is None else numbered.setdefault(number, {})
        if name is None or (name in said and plain not in asked) or name in held:
            unread += [place] if plain else []
        else:
            held[name] = place
            unit = own_unit or unit
    if numbered and "reps" in at:
        unread.append(at.pop("reps"))
    return LogColumns(tuple(one_line(text)[:LONGEST] for text in head), at, numbered, tuple(unread), unit, own)


def asked_field(name: str) -> tuple[int | None, str | None, Unit | None]:
    """A field as the caller names it: load, load-1."""
    number, found, _ = meant(plain_heading(name))
    return (number, found, None) if found else (None, plain_heading(name), None)


def meant(plain: str) -> tuple[int | None, str | None, Unit | None]:
    """The set's number, the field and the unit that a heading means by itself."""
    unit: Unit | None = None
    if (said := _UNIT.fullmatch(plain)) is not None:
        unit, plain = unit_of(said[2]), said[1].strip() or "load"
    if plain in WORDS:
        return None, WORDS[plain], unit
    found = _NUMBERED.fullmatch(plain)
    if found is None:
        return None, None, unit
    number = int(found[1] or found[4] or found[5])
    name = "done" if found[5] or found[3] == "set" else WORDS.get(found[2] or found[3])
    return (number, name, unit) if name in OF_A_SET and 1 <= number <= MOST_SETS else (None, None, unit)
