"""The clauses of every set: rests, repetitions in reserve, seconds a repetition; and of exercises a day."""

from __future__ import annotations

from typing import Final

from setwright.solver.brief.phrase.draft import BriefDraft
from setwright.solver.brief.phrase.token_reader import TokenReader

_SECONDS: Final = ("s", "sec", "secs", "second", "seconds")
_MINUTES: Final = ("min", "mins", "minute", "minutes")
_REST: Final = ("rest", "rests")
_REP: Final = ("rep", "repetition")
FEW_EXERCISES: Final = 6
"""A day never has more of them for a novice, so that a higher number would ask for nothing (see exercise-count)."""


def effort_clause(reader: TokenReader, draft: BriefDraft) -> bool:
    """Read a clause of every set or of a day's exercises; whether one stood here."""
    start = reader.position
    if (
        _length_of_rests(reader, draft)
        or _rest(reader, draft)
        or _reserve(reader, draft)
        or _tempo(reader, draft)
        or _exercises(reader, draft)
    ):
        return True
    reader.position = start
    return False


def _length_of_rests(reader: TokenReader, draft: BriefDraft) -> bool:
    """`short rests` and `long rests`."""
    if reader.take("short", "rests"):
        draft.set("rest_at_most", draft.rests[0])
        return True
    if reader.take("long", "rests"):
        draft.set("rest_at_least", draft.rests[1])
        return True
    return False


def _rest(reader: TokenReader, draft: BriefDraft) -> bool:
    """`rest at most 90 s`, `rest at least 2 min`, `rest 60-90 s`, `rest 90 s`."""
    start = reader.position
    if not reader.take_any(_REST):
        return False
    end = "rest_at_most" if reader.take("at", "most") else "rest_at_least" if reader.take("at", "least") else ""
    low = reader.number()
    high = reader.number(2) if reader.peek(1).sort == "range" else None
    after = 3 if high is not None else 1
    unit = reader.peek(after).text
    if low is None or unit not in (*_SECONDS, *_MINUTES) or (end and high is not None):
        reader.position = start
        return False
    reader.position += after + 1
    each = 60 if unit in _MINUTES else 1
    if end:
        draft.set(end, _whole(each * low))
    else:
        draft.set("rest_at_least", _whole(each * low))
        draft.set("rest_at_most", _whole(each * (low if high is None else high)))
    return True


def _reserve(reader: TokenReader, draft: BriefDraft) -> bool:
    """`at least 2 RIR`, `2 RIR`, `RIR 2`."""
    reader.take("at", "least")
    ahead = 1 if reader.sees("rir") else 0
    number = reader.number(ahead)
    if number is None or not (ahead or reader.peek(1).text == "rir") or reader.peek(2).sort == "range":
        return False
    start = reader.position
    reader.position += 2
    if number == 0:
        said = "is not planned: sets end with 1 or 2 repetitions in reserve"
        reader.fault(f"'{reader.text_from(start)}' {said}", "write at least 1 RIR")
    draft.set("rir_at_least", _whole(number))
    return True


def _tempo(reader: TokenReader, draft: BriefDraft) -> bool:
    """`4 seconds a rep`."""
    number = reader.number()
    if number is None or reader.peek(1).text not in _SECONDS or reader.peek(2).text not in ("a", "per", "each"):
        return False
    if reader.peek(3).text not in _REP:
        return False
    reader.position += 4
    draft.set("clock.seconds_per_rep", number)
    return True


def _exercises(reader: TokenReader, draft: BriefDraft) -> bool:
    """`at most 5 exercises a day`."""
    if not reader.take("at", "most"):
        return False
    number = reader.number()
    if number is None or reader.peek(1).text not in ("exercise", "exercises"):
        return False
    start = reader.position
    reader.position += 2
    if not any(reader.take(each, day) for each in ("a", "per", "each") for day in ("day", "session", "workout")):
        return False
    if number > FEW_EXERCISES or number < 1:
        said = reader.text_from(start)
        reader.fault(f"'{said}' is not held", f"a day has up to 8 exercises; write at most 1 to {FEW_EXERCISES}")
    draft.set("rules.exercise-count", number)
    return True


def _whole(number: float) -> float | int:
    """A whole number as one, so that a part of one is faulted as it was written."""
    return int(number) if number == int(number) else number
