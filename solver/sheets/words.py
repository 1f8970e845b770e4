"""The small words every sheet shares: clocks, sets, rests and lists as a coach writes them."""

from __future__ import annotations

import math
import textwrap
from collections.abc import Iterable

from setwright.catalogue.entries import Catalogue, Exercise
from setwright.solver.brief.defaults import WEEKDAY_NAMES, WEEKDAYS
from setwright.solver.reckoning.terms import DayTerms
from setwright.solver.reckoning.week import Entry

WIDEST = 100
NARROWEST = 60


def clock(seconds: int) -> str:
    """Seconds as minutes and seconds, 90 -> 1:30."""
    return f"{seconds // 60}:{seconds % 60:02d}"


def whole_minutes(seconds: int) -> int:
    """Minutes as a session is shown: whole, rounded up."""
    return math.ceil(seconds / 60)


def day_name(day: DayTerms) -> str:
    """A day's name in full."""
    return WEEKDAY_NAMES[WEEKDAYS.index(day.weekday)].capitalize() if day.weekday else f"Session {day.index + 1}"


def span(low: float, high: float, between: str = "-") -> str:
    """A range, or the one number it is."""
    return f"{low:g}" if low == high else f"{low:g}{between}{high:g}"


def sets_by_reps(entry: Entry, exercise: Exercise) -> str:
    """3 x 8-12, with /side where the repetitions are counted for each limb."""
    side = "/side" if exercise.limb != "both" or exercise.alternating else ""
    return f"{entry.sets} x {span(*entry.reps)}{side}"


def note(entry: Entry, exercise: Exercise) -> str:
    """What a line asks for beyond straight sets."""
    parts = []
    if entry.technique == "drop":
        drops = f"{entry.drops} drop" + ("s" if entry.drops != 1 else "")
        parts.append(f"last set: {drops}")
    elif entry.technique == "rest-pause":
        parts.append("last set: rest-pause")
    if exercise.limb == "each, rest after each":
        parts.append("rest after each side")
    return ", ".join(parts)


def muscle_name(catalogue: Catalogue, muscle: str) -> str:
    """A muscle's name inside a sentence."""
    return catalogue.muscles[muscle].name.lower()


def listed(words: Iterable[str], last: str = "and") -> str:
    """Words as a list in a sentence: a, b and c."""
    found = list(words)
    return found[0] if len(found) == 1 else f"{', '.join(found[:-1])} {last} {found[-1]}" if found else ""


def wrapped(text: str, width: int, indent: str = "") -> list[str]:
    """The lines of a paragraph; lines after the first are indented."""
    return textwrap.wrap(text, width, subsequent_indent=indent, break_on_hyphens=False) or [""]


def held(width: int) -> int:
    """A width that a sheet can be set in."""
    return min(max(width, NARROWEST), WIDEST)
