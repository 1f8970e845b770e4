"""Weekdays as people write them, each as mon to sun: M/W/F, tu/th, weekdays apart from Wednesday, Mon to Sat."""

from __future__ import annotations

import re
from typing import Final

from setwright.solver.brief.defaults import WEEKDAYS
from setwright.solver.brief.phrase.wording.numbers import Rewrites

_SPELT: Final = {
    "mon": "m(?:on|ondays?|o)",
    "tue": "t(?:ue|ues|uesdays?|u)",
    "wed": "w(?:ed|eds|ednesdays?|e|ensdays?|ednsdays?|edensdays?)",
    "thu": "t(?:hu|hur|hurs|hursdays?|h|hrusdays?|hursdys?)",
    "fri": "f(?:ri|ridays?|r|ridys?)",
    "sat": "s(?:at|aturdays?|a|aterdays?|aturdy)",
    "sun": "s(?:un|undays?|u|undys?)",
}
_SHORT: Final = {"m": "mon", "t": "tue", "w": "wed", "f": "fri"}
_ANY: Final = "|".join(_SPELT.values())
_LETTERS: Final = re.compile(rf"\b(?:(?:{_ANY}|m|t|w|f)(?:\s*/\s*|\s+|\s*,\s*)){{1,6}}(?:{_ANY}|m|t|w|f)\b(?!-)")
_RUN: Final = re.compile(r"\b(mwf|mwfs|tts|mtwtf|mtthf|tth|tthsa)\b")
_RUNS: Final = {
    "mwf": "mon wed fri",
    "tth": "tue thu",
    "tthsa": "tue thu sat",
    "mtwtf": "mon tue wed thu fri",
    "mtthf": "mon tue thu fri",
}
_DAY: Final = "|".join(WEEKDAYS)
_PART: Final = r"(?:early |late )?(?:mornings?|evenings?|nights?|afternoons?|lunch(?:times?| breaks?)?|at noon|am|pm)"
NAMES: Final[Rewrites] = (
    *((rf"(?!we\b)\b{spelt}\b(?!\.?-)", day) for day, spelt in _SPELT.items()),
    (rf"\b({_DAY})\.(?=\s*(?:{_DAY}|\d|,|and)\b)", r"\1 "),
    (rf"\b({_DAY}) {_PART}\b", r"\1"),
    (rf"\b(?:from )?({_DAY})(?: ?- ?| to | through | thru | till | until )({_DAY})\b", r"\1-\2"),
    (rf"\b({_DAY})\s*(?:/|,|and|,\s*and|\+)\s*(?=(?:{_DAY})\b)", r"\1 "),
    (rf"\b({_DAY})\s*(?:/|,|and|,\s*and|\+)\s*(?=(?:{_DAY})\b)", r"\1 "),
    (r"\b(?:during |on |every |at )*(?:the )?weekends?(?: only)?\b(?! warrior)", "sat sun"),
    (r"\bweekend warrior,?", ","),
    (r"\b(?:during |on |every )*(?:the )?week-?days?\b|\bduring the week\b", "mon-fri"),
)
_EXCEPT: Final = re.compile(
    rf"\b(mon-fri|7 days|every day|daily|all days|any day)\s*,?\s*(?:except|apart from|but not|but|not|without|excluding|save)(?: for)?(?: on)?\s+({_DAY})\b"
)


_OFF: Final = re.compile(rf",? ?\b(?:and |but )?({_DAY}) (?:is |are |stays )?(?:off|a rest day|my rest day|rest)\b")


def with_weekdays(text: str) -> str:
    """The text with runs of letters and short names of days as mon to sun."""
    text = _RUN.sub(lambda run: _RUNS.get(run[1], run[1]), text)
    return _LETTERS.sub(lambda found: " ".join(map(_day_of, re.findall(r"[a-z]+", found[0]))), text)


def without_exceptions(text: str) -> str:
    """mon-fri except wed as mon tue thu fri."""

    def left(found: re.Match[str]) -> str:
        whole = WEEKDAYS[:5] if found[1] == "mon-fri" else WEEKDAYS
        return " ".join(day for day in whole if day != found[2])

    return _EXCEPT.sub(left, text)


def without_days_off(text: str) -> str:
    """The text without `sun is off` where other days are named; of counted days it would leave open which they are."""
    off = list(_OFF.finditer(text))
    rest = _OFF.sub(",", text)
    if len(off) != 1 or not re.search(rf"\b(?:{_DAY})\b", rest) or re.search(rf"\b{off[0][1]}\b|-", rest):
        return text
    return rest


def _day_of(word: str) -> str:
    """The weekday of a short name in a run of them; and stays as it is."""
    if word in _SHORT:
        return _SHORT[word]
    return next((day for day, spelt in _SPELT.items() if re.fullmatch(spelt, word)), word)
