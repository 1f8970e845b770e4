"""The small words every sheet shares: clocks, sets, rests and lists as a coach writes them."""

from __future__ import annotations

import math
import textwrap
from collections.abc import Iterable
from typing import TYPE_CHECKING

from setwright.catalogue.check import REP_RANGES
from setwright.catalogue.entries import Catalogue, Exercise
from setwright.solver.brief.defaults import WEEKDAY_NAMES, WEEKDAYS

if TYPE_CHECKING:
    from setwright.solver.evaluation.resolved_day import ResolvedDay
    from setwright.solver.evaluation.week import Entry

WIDEST = 100
NARROWEST = 60
BREATH = 3
"""Seconds of one slow breath, by which holds and carries are counted (convention)."""
TIDY = 5
"""Seconds to which a hold is rounded, so that a clock on the wall will do."""


def clock(seconds: int) -> str:
    """Seconds as minutes and seconds, 90 -> 1:30."""
    return f"{seconds // 60}:{seconds % 60:02d}"


def warm_up_words(seconds: int, shortest: int, ramp_up_follows: bool) -> str:
    """A session's general warm-up; one under `shortest` is left to the first lift: to its ramp-up sets, if it has any.

    Without them the first lift begins with easy repetitions (common practice, no source).
    """
    if seconds >= shortest:
        return f"{clock(seconds)} easy whole-body movement"
    return "the first lift's own lighter sets" if ramp_up_follows else "a few easy repetitions of the first lift"


def whole_minutes(seconds: int) -> int:
    """Minutes as a session is shown: whole, rounded up."""
    return math.ceil(seconds / 60)


def day_name(day: ResolvedDay) -> str:
    """A day's name in full."""
    return session_name(day.weekday, day.index)


def session_name(weekday: str | None, index: int) -> str:
    """Monday, or Session 1 where the days may be in any order."""
    return weekday_name(weekday) if weekday else f"Session {index + 1}"


def weekday_name(weekday: str) -> str:
    """A weekday's name in full, from mon to sun."""
    return WEEKDAY_NAMES[WEEKDAYS.index(weekday)].capitalize()


def span(low: float, high: float, between: str = "-") -> str:
    """A range, or the one number it is."""
    return f"{low:g}" if low == high else f"{low:g}{between}{high:g}"


def dose(sets: int, reps: tuple[int, int], exercise: Exercise) -> str:
    """3 x 8-12, or 3 x 30-45 s of a hold."""
    return f"{sets} x {one_set(reps, exercise)}"


def one_set(reps: tuple[int, int], exercise: Exercise) -> str:
    """8-12, or 30-45 s of a hold; /side where it is counted for each limb."""
    side = "/side" if counted_by_side(exercise) else ""
    return f"{span(*held_seconds(reps))} s{side}" if exercise.timed else f"{span(*reps)}{side}"


def counted_by_side(exercise: Exercise) -> bool:
    """Whether repetitions and holds are counted for each limb."""
    return exercise.limb != "both" or exercise.alternating


def held_seconds(reps: tuple[int, int]) -> tuple[int, int]:
    """How long a hold of so many slow breaths lasts, to the nearest five seconds."""
    return TIDY * round(BREATH * reps[0] / TIDY), TIDY * round(BREATH * reps[1] / TIDY)


def breaths(seconds: tuple[int, int]) -> tuple[int, int]:
    """The slow breaths of a hold of so many seconds: the range that is printed so, else the nearest whole ones."""
    near = (max(1, round(seconds[0] / BREATH)), max(1, round(seconds[1] / BREATH)))
    return next((reps for reps in sorted(REP_RANGES) if held_seconds(reps) == seconds), near)


def note(entry: Entry, exercise: Exercise) -> str:
    """What a line asks for beyond straight sets."""
    technique = technique_words(entry)
    parts = [f"last set: {technique}"] if technique else []
    if exercise.limb == "each, rest after each":
        parts.append("rest after each side")
    return ", ".join(parts)


def technique_words(entry: Entry) -> str:
    """What is done with a line's last set: 2 drops, rest-pause, or nothing."""
    if entry.technique == "drop":
        return counted(entry.drops, "drop")
    return "rest-pause" if entry.technique == "rest-pause" else ""


def counted(number: float, noun: str) -> str:
    """A number with its noun: 1 minute, 2.5 sets."""
    return f"{number:g} {noun}" + ("" if number == 1 else "s")


def some_sets(amount: float) -> str:
    """So many sets: 1 set, 2.5 sets."""
    return counted(amount, "set")


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


def page_width(width: int) -> int:
    """A width in letters as near to the one given as a sheet can be set in, 60 to 100."""
    return min(max(width, NARROWEST), WIDEST)
