"""The clauses that say an age: `64 years old`, `age 64`, `a 15-year-old`, `over 60`, `under 18`."""

from __future__ import annotations

from setwright.solver.brief.phrase.draft import BriefDraft
from setwright.solver.brief.phrase.durations import DAY_NOUNS, HOURS, MINUTES
from setwright.solver.brief.phrase.token_reader import TokenReader

_BEFORE = ("a", "an", "the", "for", "is", "client", "aged", "age", "of", "i'm", "i", "am", "he's", "she's")
_NAMING = ("age", "aged", "i'm", "am", "he's", "she's")
_ABOVE = (("over",), ("above",), ("older", "than"))
_BELOW = (("under",), ("below",), ("younger", "than"))
_YEARS = ("years", "year", "yrs", "yr", "yo", "y")
_OLD = ("old", "olds", "of", "age", "client", "man", "woman", "boy", "girl")
_OTHER_UNITS = (*MINUTES, *HOURS, *DAY_NOUNS, "kg", "kilo", "kilos", "lb", "lbs", "pounds", "set", "sets", "reps", "x")
"""Words after a number that make it no age."""
_OF_WHAT = ("training", "trained", "lifting", "experience", "ago", "practice", "break", "off", "without")
"""Words after `5 years` or `5 years of` that make them no age."""


def age_clause(reader: TokenReader, draft: BriefDraft) -> bool:
    """Read an age; whether one stood here. `over 60` is taken as 61 and `under 18` as 17."""
    start = reader.position
    named = _step_before(reader)
    shift = _side(reader)
    age = reader.number()
    if (
        age is None
        or reader.peek(1).sort == "range"
        or reader.peek(1).text in _OTHER_UNITS
        or reader.peek(1).text == "%"
    ):
        if named and start + 1 == reader.position and (reader.done or reader.at_separator()):
            reader.fault(f"'{reader.text_from(start)}' names no age", "write for example age 64")
            return True
        reader.position = start
        return False
    reader.position += 1
    if not (_years(reader) or named or shift or _plus(reader)):
        return _years_of_training(reader, start)
    draft.set("client.age", int(age) + shift if age == int(age) else age)
    return True


def _step_before(reader: TokenReader) -> bool:
    """Step over `a`, `for a`, `age`, `aged` and the like; whether a word among them names an age."""
    named = False
    while word := reader.take_any(_BEFORE):
        named = named or word in _NAMING
    return named


def _side(reader: TokenReader) -> int:
    """Step over `over`, `under` and the like: what they add to the number after them; 0 where none stands here."""
    for words, shift in (*((words, 1) for words in _ABOVE), *((words, -1) for words in _BELOW)):
        if reader.take(*words):
            reader.take("the", "age", "of")
            return shift
    return 0


def _years(reader: TokenReader) -> bool:
    """Step over `years old` and the like; False, unmoved, where years of something else are meant."""
    start = reader.position
    if not reader.take_any(_YEARS):
        return False
    if reader.peek().text in _OF_WHAT or (reader.sees("of") and reader.peek(1).text in _OF_WHAT):
        reader.position = start
        return False
    while reader.take_any(_OLD):
        pass
    return True


def _years_of_training(reader: TokenReader, start: int) -> bool:
    """Keep the fault of `5 years of training`, which is no age; False, moved back to the start, for anything else."""
    if not reader.take_any(_YEARS):
        reader.position = start
        return False
    while reader.peek().text in ("of", *_OF_WHAT):
        reader.position += 1
    said = reader.text_from(start)
    reader.fault(f"'{said}' is no age", "write novice, intermediate or advanced for it, or for example 64 years old")
    return True


def _plus(reader: TokenReader) -> bool:
    """Step over the sign of `60+`, which stands at its number and ends the clause."""
    sign, before = reader.peek(), reader.tokens[reader.position - 1]
    after = reader.peek(1)
    if sign.text != "+" or sign.start != before.end or not (after.text == "" or after.sort == "separator"):
        return False
    reader.position += 1
    return True
