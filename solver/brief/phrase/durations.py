"""Minutes as people write them: `40 min`, `1 hour`, `1 h 15`, `half an hour`."""

from __future__ import annotations

from setwright.solver.brief.defaults import LIMITS
from setwright.solver.brief.phrase.lexicon import ALL_KINDS
from setwright.solver.brief.phrase.reader import Reader

MINUTES = ("min", "mins", "minute", "minutes", "m")
DAY_NOUNS = ("day", "days", "session", "sessions", "time", "times", "workout", "workouts", "visit", "visits")
HOURS = ("h", "hr", "hrs", "hour", "hours")


def at_duration(r: Reader, ahead: int = 0) -> bool:
    """Whether a length of time with its unit stands there."""
    if r.sees("half", "an", "hour", ahead=ahead) or r.sees("an", "hour", ahead=ahead):
        return True
    return r.number(ahead) is not None and r.peek(ahead + 1).text in (*MINUTES, *HOURS)


def take_minutes(r: Reader, feasibility_only: bool) -> int | None:
    """The minutes of a day that stand here, checked; a number without a unit counts if `bare`."""
    start = r.at
    minutes = take_duration(r, feasibility_only)
    if minutes is None:
        return None
    low, high = LIMITS["minutes"]
    if minutes != int(minutes) or not low <= minutes <= high:
        r.fault(f"'{r.written(start)}' is {minutes:g} minutes, expected whole minutes from {low:g} to {high:g}")
        return int(low)
    return int(minutes)


def take_duration(r: Reader, feasibility_only: bool = False) -> float | None:
    """Any length of time in minutes."""
    if r.take("half", "an", "hour"):
        return 30
    if r.take("an", "hour"):
        return 60 + (30 if r.take("and", "a", "half") else 0)
    number = r.number()
    if number is None:
        return None
    if r.peek(1).text in MINUTES:
        r.at += 2
        return number
    if r.peek(1).text in HOURS:
        r.at += 2
        return 60 * number + _odd_minutes(r)
    if feasibility_only and r.peek(1).text not in DAY_NOUNS:
        r.at += 1
        _mistyped_unit(r)
        return number
    return None


def _mistyped_unit(r: Reader) -> None:
    """Keep the fault of a word after bare minutes that is nearly a unit: `40 mn`."""
    word = r.peek()
    if word.sort != "word" or word.text in r.stops or r.separator() or r.met(ALL_KINDS):
        return
    near = r.lexicon.near(word.text, (), (*MINUTES[:4], *HOURS[1:]))
    if near:
        r.fault(f"'{word.text}' is not understood", f"did you mean {near!r}?")
        r.at += 1


def _odd_minutes(r: Reader) -> float:
    """The minutes after the hours: `15`, `15 min`, `and 15 min`, `and a half`."""
    if r.take("and", "a", "half"):
        return 30
    ahead = 1 if r.sees("and") else 0
    number = r.number(ahead)
    with_unit = number is not None and r.peek(ahead + 1).text in MINUTES
    alone = number is not None and ahead == 0 and r.peek(1).sort != "word" and r.peek(1).sort != "range"
    if number is None or not (with_unit or alone):
        return 0
    r.at += ahead + (2 if with_unit else 1)
    return number
