"""Weekly sets and days of a muscle as whole clauses say them: chest gets 10 to 12 sets, at most 8 for biceps."""

from __future__ import annotations

import re
from typing import Final

from setwright.solver.brief.phrase.lexicon import Kind, Lexicon
from setwright.solver.brief.phrase.wording.patterns.matching import Rows, said
from setwright.solver.brief.phrase.wording.patterns.names import names_of

_SETS: Final = r"(?: (?:weekly |hard |direct |working |total )*sets?)?(?: (?:in )?total)?(?: (?:a|per|each|every|the) week| weekly)?"
_PLAINER: Final = (
    (re.compile(r"\b(?:no|not) more than\b|\bup to\b|\bmax(?:imum)?(?: of)?\b|\bunder\b"), "at most"),
    (re.compile(r"\b(?:no|not) (?:fewer|less) than\b|\bmin(?:imum)?(?: of)?\b(?= \d)"), "at least"),
    (re.compile(r"\b(\d+) ?\+(?= |$)|\b(\d+) or more\b"), r"at least \1\2"),
    (re.compile(r"\b(\d+)((?: \w+)? sets)? (?:at most|at the most|tops|or (?:fewer|less))(?= |$)"), r"at most \1\2"),
    (re.compile(r"\b(\d+)((?: \w+)? sets)? (?:at least|or more|at the least)(?= |$)"), r"at least \1\2"),
    (re.compile(r"\bbetween (\d+) and (\d+)\b"), r"\1 to \2"),
    (re.compile(r"\b(\d+) ?- ?(\d+)\b"), r"\1 to \2"),
)
"""The ends of a range in the words of the clauses."""
_LEAD: Final = r"(?:(?:do|want|wants|would like|give|have|with|<keep>) )?"
_OF: Final = r"(?: (?:gets?|with|at|for|needs?|<be>|on|to|has|have|should get))?"
_LIMITS: Final[Rows] = (
    (rf"{_LEAD}at most <n>{_SETS} (?:for|of|on) <m>(?: (?:a|per|each|every) week| weekly)?", "{m} at most {n} sets"),
    (rf"{_LEAD}at least <n>{_SETS} (?:for|of|on) <m>(?: (?:a|per|each|every) week| weekly)?", "{m} at least {n} sets"),
    (rf"{_LEAD}<n> to <n2>{_SETS} (?:for|of|on) <m>(?: (?:a|per|each|every) week| weekly)?", "{m} {n}-{n2} sets"),
    (
        rf"{_LEAD}<n>(?: weekly)? sets(?: a week| weekly)? (?:for|of|on) <m>(?: (?:a|per|each|every) week| weekly)?",
        "{m} {n} sets",
    ),
    (rf"{_LEAD}<n> (?:of|for|on) <m>(?: (?:a|per|each|every) week| weekly)?", "{m} {n} sets"),
    (rf"{_LEAD}<m>{_OF} at most <n>{_SETS}", "{m} at most {n} sets"),
    (rf"{_LEAD}<m>{_OF} at least <n>{_SETS}", "{m} at least {n} sets"),
    (rf"{_LEAD}<m>{_OF} <n> to <n2>{_SETS}", "{m} {n}-{n2} sets"),
    (
        rf"{_LEAD}<m>{_OF} <n>(?: weekly| total| hard)? sets(?: total| in total)?(?: a week| weekly| per week)?",
        "{m} {n} sets",
    ),
)
_OFTEN: Final[Rows] = (
    (
        r"(?:(?:hit|train|do|work|trains|want to train|want to hit) )?<m>(?: gets)?(?: on)? <n> (?:days|times)"
        r"(?: (?:a|per|each|every) week| weekly)?",
        "{m} {n} times a week",
    ),
    (r"<m> on at least <n> (?:days|times)(?: (?:a|per|each|every) week| weekly)?", "{m} {n} times a week"),
    (r"(?:(?:hit|train|do|work) )?<m> (?:twice|2 x)(?: (?:a|per|each|every) week| weekly)?", "{m} 2 times a week"),
)


def limit_said(clause: str, whole: str, lexicon: Lexicon) -> str | None:
    """The limit of weekly sets, or on how many days a muscle is trained; None where the clause says neither.

    A number without the word sets is one only where the `whole` sentence speaks of sets.
    """
    plainer = clause
    for words, plain in _PLAINER:
        plainer = words.sub(plain, plainer)
    of_a_day = re.search(r"\b(?:per|a|each|every) (?:session|day|workout)\b", plainer)
    limit = said(plainer, _LIMITS, lexicon) if re.search(r"\bsets?\b", whole) and not of_a_day else None
    if limit is not None:
        return limit if _each(limit) else None
    if each := _EACH.fullmatch(plainer):
        return _often_each(each, lexicon)
    often = said(plainer, _OFTEN, lexicon)
    return often if often and _each(often) and not re.search(r" [017-9] times", often) else None


_EACH: Final = re.compile(
    r"(?:(?:our |the |my )?(?:client|i|he|she) )?(?:(?:wants?|hit|train|do)(?: to (?:hit|train|do))? )?(?P<m>[a-z ]+? and [a-z ]+?) "
    r"(?P<n>[2-6]) (?:days|times)(?: a week)? each"
)


def _often_each(each: re.Match[str], lexicon: Lexicon) -> str | None:
    """The days of several muscles, said of each of them; None where one is not known."""
    names = names_of("m", each["m"], lexicon)
    return ", ".join(f"{name} {each['n']} times a week" for name in names) or None


_EVERY: Final = re.compile(
    r"(?:^|(?<=[,.;] ))(?:(?:and|hit|train|do|work) )*(?P<m>[a-z ]+?) (?:(?:every|each) (?:session|workout|day|time)|"
    r"(?:on )?at least (?:on )?(?P<n>[2-6]) (?:days|times)(?: (?:a|per|each|every) week| weekly)?)(?=[,.;]|$)"
)
_COUNT: Final = re.compile(r"\b(\d) ?(?:x\b|days\b|sessions\b|times\b|workouts\b)")


def often_said(text: str, lexicon: Lexicon) -> tuple[str, list[str]]:
    """The text without `abs every session` and `calves on at least 2 days`, and a clause for each of them; the first
    only where the days are counted once."""
    clauses: list[str] = []
    counts = set(_COUNT.findall(_EVERY.sub("", text)))

    def take(found: re.Match[str]) -> str:
        days = found["n"] or (next(iter(counts)) if len(counts) == 1 else None)
        if days is None or not lexicon.resolve(found["m"], ("muscle", "group")):
            return found[0]
        clauses.append(f"{found['m']} {days} times a week")
        return ","

    return _EVERY.sub(take, text), clauses


_AT_MOST: Final = re.compile(
    r"\b(?P<two>(?:[a-z]+ )?(?P<one>[a-z]+)),? (?:only|just|at most|(?:no|not) more than|max(?:imum)?)(?: on)? (?:once|twice|thrice|\d (?:x|times|days?)|every)\b"
    r"|\b(?P<after>[a-z]+(?: [a-z]+)?) (?:once|twice|\d (?:x|times))(?: (?:a|per|each) week)? (?:only|at most|max|tops)\b"
)


def days_at_most(text: str, lexicon: Lexicon) -> bool:
    """Whether a sentence says on how many days a muscle is trained at most, which a brief cannot say."""
    kinds: tuple[Kind, ...] = ("muscle", "group")
    return any(
        lexicon.resolve(name, kinds) is not None
        for found in _AT_MOST.finditer(text)
        for name in (found["one"], found["two"], found["after"], (found["after"] or "").split(" ")[-1])
        if name
    )


def _each(limit: str) -> bool:
    """Whether a limit is said of one muscle or group; of several it may be meant together or for each."""
    return " and " not in limit
