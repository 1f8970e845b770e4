"""Minutes as people write them: `40 min`, `1 hour`, `1 h 15`, `half an hour`."""

from __future__ import annotations

from setwright.catalogue.near import suggestion
from setwright.solver.brief.defaults import LIMITS
from setwright.solver.brief.phrase.lexicon import ALL_KINDS
from setwright.solver.brief.phrase.token_reader import TokenReader

MINUTES = ("min", "mins", "minute", "minutes", "m", "'")
DAY_NOUNS = ("day", "days", "session", "sessions", "time", "times", "workout", "workouts", "visit", "visits")
_ABOUT = (("about",), ("around",), ("roughly",), ("max",), ("maximum",), ("up", "to"), ("at", "most"))
TIMES = {"once": 1, "twice": 2, "thrice": 3}
HOURS = ("h", "hr", "hrs", "hour", "hours")


def at_duration(reader: TokenReader, ahead: int = 0) -> bool:
    """Whether a length of time with its unit stands so many tokens ahead."""
    if reader.sees("half", "an", "hour", ahead=ahead) or reader.sees("an", "hour", ahead=ahead):
        return True
    return reader.number(ahead) is not None and reader.peek(ahead + 1).text in (*MINUTES, *HOURS)


def take_minutes(reader: TokenReader, unit_optional: bool) -> int | None:
    """Step over the minutes of a day, a whole number within the limits; None where none stand here.

    A number without a unit counts if `unit_optional`. Minutes out of range are faulted and the least is given.
    """
    start = reader.position
    minutes = take_duration(reader, unit_optional)
    if minutes is None:
        return None
    low, high = LIMITS["minutes"]
    if minutes != int(minutes) or not low <= minutes <= high:
        reader.fault(
            f"'{reader.text_from(start)}' is {minutes:g} minutes, expected whole minutes from {low:g} to {high:g}"
        )
        return int(low)
    return int(minutes)


def take_duration(reader: TokenReader, unit_optional: bool = False) -> float | None:
    """Step over a length of time; its minutes, or None where none stands here."""
    start = reader.position
    _step_over_about(reader)
    minutes = _length(reader, unit_optional)
    if minutes is None:
        reader.position = start
    return minutes


def _step_over_about(reader: TokenReader) -> None:
    """Step over `about`, `max`, `up to` and the like before a length of time."""
    while any(reader.take(*words) for words in _ABOUT):
        pass


def _length(reader: TokenReader, unit_optional: bool) -> float | None:
    """Step over a length of time without words before it; of a range the longer, with a fault."""
    if reader.take("half", "an", "hour"):
        return 30
    if reader.take("an", "hour"):
        return 60 + (30 if reader.take("and", "a", "half") else 0)
    number = reader.number()
    if number is None:
        return None
    if reader.peek(1).sort == "range" and at_duration(reader, 2):
        said = reader.text_from(reader.position, reader.position + 4)
        reader.position += 2
        most = _length(reader, unit_optional)
        reader.fault(f"'{said}' is a range, and a day has one length", f"write the most there is: {most:g} min")
        return most
    if reader.peek(1).text in MINUTES:
        reader.position += 2
        return number
    if reader.peek(1).text in HOURS:
        reader.position += 2
        return 60 * number + _odd_minutes(reader)
    if unit_optional and reader.peek(1).text not in DAY_NOUNS:
        reader.position += 1
        _mistyped_unit(reader)
        return number
    return None


def _mistyped_unit(reader: TokenReader) -> None:
    """Keep the fault of a word after bare minutes that is nearly a unit: `40 mn`."""
    word = reader.peek()
    if word.sort != "word" or word.text in reader.stop_words or reader.at_separator() or reader.match(ALL_KINDS):
        return
    near = reader.lexicon.nearest(word.text, (), (*MINUTES[:4], *HOURS[1:]))
    if near:
        reader.fault(f"'{word.text}' is not understood", suggestion(near))
        reader.position += 1


def _odd_minutes(reader: TokenReader) -> float:
    """The minutes after the hours: `15`, `15 min`, `and 15 min`, `and a half`."""
    if reader.take("and", "a", "half"):
        return 30
    ahead = 1 if reader.sees("and") else 0
    number = reader.number(ahead)
    with_unit = number is not None and reader.peek(ahead + 1).text in MINUTES
    after = reader.peek(1)
    ends = after.sort not in ("word", "range") or after.text in ("each", "a", "per", "every")
    alone = number is not None and ahead == 0 and ends
    if number is None or not (with_unit or alone):
        return 0
    reader.position += ahead + (2 if with_unit else 1)
    return number
