"""Numbers as people type them turned into plain ones: ranges, RPE, as many as possible, units."""

from __future__ import annotations

import math
import re
from datetime import time
from typing import Any, Final

from setwright.solver.brief.fault_words import shown
from setwright.solver.foreign.rows.cells import rest_seconds

_SIGNS: Final = str.maketrans(
    {
        "\N{LEFT SINGLE QUOTATION MARK}": "'",
        "\N{RIGHT SINGLE QUOTATION MARK}": "'",
        "\N{PRIME}": "'",
        "\N{LEFT DOUBLE QUOTATION MARK}": '"',
        "\N{RIGHT DOUBLE QUOTATION MARK}": '"',
        "\N{DOUBLE PRIME}": '"',
        "\N{EN DASH}": "-",
        "\N{EM DASH}": "-",
        "\N{MINUS SIGN}": "-",
        "\N{MULTIPLICATION SIGN}": "x",
        "\N{NO-BREAK SPACE}": " ",
        "\N{NARROW NO-BREAK SPACE}": " ",
    }
)
_RANGE: Final = re.compile(r"(\d+(?:\.\d+)?)\s*(?:-|to)\s*(\d+(?:\.\d+)?)")
_NUMBER: Final = re.compile(r"\d+(?:\.\d+)?")
_RESERVE: Final = re.compile(
    r"(?:rpe|rir|@)?\s*(\d+(?:\.\d+)?)(?:\s*(?:-|to)\s*(\d+(?:\.\d+)?))?\s*(?:rpe|rir|(?:reps? )?in reserve|left)?"
)
_SETS: Final = re.compile(r"\s*(?:sets?|work(?:ing)? sets?)")
_SETS_BY_REPS: Final = re.compile(r"(\d+(?:\s*(?:-|to)\s*\d+)?)\s*(?:sets?)?\s*(?:x|of)\s*(.+)")
_TURNED_INTO_DATE: Final = re.compile(r"\d{1,2}-[a-z]{3}|[a-z]{3}-\d{1,2}|\d{4}-\d{2}-\d{2}.*")
_TO_THE_LAST: Final = frozenset(
    ("amrap", "max", "max reps", "failure", "to failure", "till failure", "as many as possible", "mr", "f", "fail")
)
_REST_RANGE: Final = re.compile(r"(\d+(?:\.\d+)?|\d+:\d\d)\s*(?:-|to)\s*(\d+(?:\.\d+)?|\d+:\d\d)\s*([a-z]+|'|\")?")
MOST_BARE_MINUTES: Final = 6
"""A rest up to this number without a unit is in minutes: nobody rests six seconds (convention)."""


def plain(value: Any) -> Any:
    """A text with typewriter signs for its dashes, quotes and crosses, without blanks around it.

    A time of day is the 1:30 or 0:01:30 that a spreadsheet took for one, as minutes and seconds.
    """
    if isinstance(value, time):
        return (
            f"{value.minute}:{value.second:02d}"
            if value.second or not value.hour
            else f"{value.hour}:{value.minute:02d}"
        )
    return value.translate(_SIGNS).strip() if isinstance(value, str) else value


def turned_into_date(value: Any) -> bool:
    """Whether a spreadsheet has taken a range such as 3-4 for a day of the year."""
    text = str(value).strip().lower()
    return hasattr(value, "isoformat") or bool(_TURNED_INTO_DATE.fullmatch(text))


def one_of_range(value: Any, upper: bool) -> tuple[Any, bool]:
    """A range's lower or upper end as a whole number, and whether it was one; anything else as it is."""
    found = _RANGE.fullmatch(value.strip()) if isinstance(value, str) else None
    if found is None:
        return value, False
    end = float(found[2] if upper else found[1])
    return (math.ceil(end) if upper else math.floor(end)), True


def sets_and_reps(value: Any) -> tuple[str, str] | None:
    """3 x 8-12 or 3 sets of 8 as sets and repetitions; None where it is not both."""
    found = _SETS_BY_REPS.fullmatch(value.lower()) if isinstance(value, str) else None
    return (found[1], found[2]) if found else None


def counted_sets(value: Any) -> tuple[Any, str]:
    """The number of sets, and a note where the cell says a range, of which the smaller number is taken."""
    text = _SETS.sub("", value.lower()) if isinstance(value, str) else value
    number, ranged = one_of_range(text, upper=False)
    return number, f"{shown(value)} sets were counted as {number}" if ranged else ""


def reserve(value: Any, exertion: bool, smaller: bool = False) -> tuple[Any, str]:
    """Repetitions in reserve, and a note on how they were read; `exertion` where the column is one of RPE.

    RIR = 10 - RPE (Zourdos et al. 2016, J Strength Cond Res 30:267, the scale's own definition). Of a range the
    greater number in reserve is taken, or the `smaller`.
    """
    if not isinstance(value, str | int | float) or isinstance(value, bool):
        return value, ""
    text = str(value).lower().replace(",", ".")
    if text.strip() in _TO_THE_LAST:
        return 0, f"{shown(value)} was read as 0 RIR"
    found = _RESERVE.fullmatch(text.strip())
    if found is None:
        return value, ""
    by_rpe = "rpe" in text or "@" in text or (exertion and "rir" not in text)
    numbers = [float(n) for n in found.groups() if n]
    if by_rpe and max(numbers) > 10:
        return value, ""
    left = [10 - n for n in numbers] if by_rpe else numbers
    taken = math.floor(min(left)) if smaller else math.ceil(max(left))
    if by_rpe:
        return taken, f"RPE {text.replace('rpe', '').replace('@', '').strip()} was read as {taken} RIR"
    return taken, f"{shown(value)} was read as {taken} RIR" if len(numbers) == 2 or taken != max(left) else ""


def repetitions(value: Any) -> tuple[Any, bool]:
    """Repetitions as a range or a number, and whether the last set goes as far as it can: AMRAP, 8+."""
    if not isinstance(value, str):
        return value, False
    text = re.sub(r"\s*(?:reps?|repetitions)\b", "", value.lower().replace(",", "/")).strip()
    text = re.sub(r"\s*(?:e/s|p/s|per side|per leg|per arm|ea\.?|e\.s\.|each leg|each arm)$", "/side", text)
    if text in _TO_THE_LAST:
        return None, True
    if text.endswith("+") and text[:-1].strip().isdecimal():
        return text[:-1].strip(), True
    each = [n.strip() for n in text.split("/")]
    if len(each) > 1 and all(n.isdecimal() for n in each):
        return f"{min(map(int, each))}-{max(map(int, each))}", False
    return text, False


def rest(value: Any) -> tuple[Any, str]:
    """A rest as a text that says its unit, and a note: of a range the middle, and a bare number up to 6 in minutes."""
    text = str(value).lower().replace(",", ".") if isinstance(value, str | int | float) else ""
    text = re.sub(r"\s*(?:rest|between sets|after each round)$", "", text)
    if _NUMBER.fullmatch(text) and 0 < float(text) <= MOST_BARE_MINUTES:
        return f"{text} min", f"a rest of {text} without a unit was read as minutes"
    ends = _REST_RANGE.fullmatch(text)
    if ends is None:
        return (text if isinstance(value, str | float) else value), ""
    bare = [end for end in (ends[1], ends[2]) if ":" not in end]
    unit = ends[3] or ("min" if bare and float(bare[-1]) <= MOST_BARE_MINUTES else "s")
    low, high = (rest_seconds(end if ":" in end else f"{end} {unit}") for end in (ends[1], ends[2]))
    if low is None or high is None:
        return value, ""
    middle = round((low + high) / 2)
    return middle, f"rests of {shown(value)} were counted as {middle} s"
