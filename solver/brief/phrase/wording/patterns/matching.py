"""Patterns of whole clauses: a clause says what a row says if it matches in full and all its names are known."""

from __future__ import annotations

import re
from functools import cache
from typing import Final

from setwright.solver.brief.phrase.lexicon import Lexicon
from setwright.solver.brief.phrase.wording.patterns.names import names_of

Rows = tuple[tuple[str, str], ...]
"""(pattern, what it says), the first that fits counts.

<m> stands for muscles, <l> lifts, <i> items, <k> places and items, each one name or several; <n> for a number. <be>,
<want>, <have> and <keep> stand for the forms of those verbs.
"""
_WORDS: Final = {
    "be": r"(?:is|are|was|were|feels?|gets?|looks?|has been|have been|has always been|have always been)",
    "want": (
        r"(?:(?:wants?|would like|would love|wanna|needs?|am looking|is looking|looking|hopes?|hoping|aims?|trying|"
        r"would rather|wish(?:es)?)"
        r"(?: to| for)?(?: (?:have|get|see|build|grow|bring up|develop|focus on|work on|add|put on|include))*)"
    ),
    "have": (
        r"(?:(?:have|has|got|have got|has got|own|owns|use|uses|using|with|there is|there are|train with|trains with|"
        r"have access to|has access to|access to|share|shares|working with)(?: only| just| got)*)"
    ),
    "keep": r"(?:keep|keeps|keeping|hold|holds|holding|maintain|maintains|maintaining|leave|preserve)",
    "my": r"(?:(?:my|the|his|her|their|our|your|a|an|some|any|all)\s+)*",
    "n": r"(?P<n>\d+)",
    "n2": r"(?P<n2>\d+)",
}
_SAYS: Final = (
    r"(?:(?:my |the |his |her |a )?(?:physio|doctor|doc|gp|surgeon|trainer|therapist|coach|midwife)(?: has)? (?:said|says|told (?:me|him|her)|"
    r"wants me|advised|advises|recommends?|recommended)(?: that| to| me| it is)* )?"
)
"""Who says so: what follows is read as if the client had said it."""
_LINKS: Final = r"(?:(?:and|but|so|also|plus|then|while|because|since|as|though|although|that's why)\s+)*"
_WHO: Final = r"(?:(?:i|we|he|she|they|you|it|(?:my |the |our |new |this )*(?:client|athlete|trainee|lady|guy|customer|member))\s+)?"
_HEDGES: Final = re.compile(
    r"\b(?:really|please|also|too|mostly|mainly|especially|definitely|ideally|honestly|actually|always|of course|"
    r"as well|still|if possible|for me|for him|for her|truly|first and foremost|above all|basically|for now|at the moment|"
    r"for the (?:moment|time being|next (?:few )?(?:weeks|months))|right now|these days|this (?:week|month|block)|all month)\b"
)
_LONG: Final = (
    (re.compile(r"\b(can|do|does|is|are|has|have|did|was|would|should|could)n't\b"), r"\1 not"),
    (re.compile(r"\bcannot\b|\bcan't\b"), "can not"),
    (re.compile(r"\bwon't\b"), "will not"),
    (re.compile(r"\bi'm\b"), "i am"),
    (re.compile(r"\b(he|she|it|there|what|that)'s\b"), r"\1 is"),
    (re.compile(r"\b(i|we|they|you)'ve\b"), r"\1 have"),
    (re.compile(r"\b(i|we|he|she|they|you)'d\b"), r"\1 would"),
    (re.compile(r"\b(we|they|you)'re\b"), r"\1 are"),
    (re.compile(r"\b(i|we|he|she|they|you)'ll\b"), r"\1 will"),
)


_EITHER: Final = re.compile(r"\bor\b")
_OF_ALL: Final = ("no ", "avoid ", "without ", "dislike ")
"""No squats or lunges is neither of the two; of things that are wanted, or leaves open which."""


def in_full(clause: str) -> str:
    """The clause with I'm as I am, and without words that only colour it."""
    for short, full in _LONG:
        clause = short.sub(full, clause)
    return " ".join(_HEDGES.sub(" ", clause).split())


def said(clause: str, rows: Rows, lexicon: Lexicon) -> str | None:
    """What the first row that fits says, in the words of the clauses; None where none does."""
    bare = _before().sub("", clause, count=1)
    for pattern, words in rows:
        found = _compiled(pattern).fullmatch(bare) or (_compiled(pattern).fullmatch(clause) if bare != clause else None)
        if not found:
            continue
        if _EITHER.search(clause) and not words.startswith(_OF_ALL):
            continue
        names = {key: _named(key, text, lexicon) for key, text in found.groupdict().items() if text is not None}
        if all(names.values()):
            return words.format(**names)
    return None


def _named(key: str, text: str, lexicon: Lexicon) -> str:
    """The names of one place joined by `and`, a number as it is; empty where they are not known."""
    return text if key[0] == "n" else " and ".join(names_of(key[0], text, lexicon))


@cache
def _before() -> re.Pattern[str]:
    """Joining words, who says it and of whom, at the front of a clause."""
    return re.compile(_LINKS + _SAYS + _WHO)


@cache
def _compiled(pattern: str) -> re.Pattern[str]:
    def stands_for(place: re.Match[str]) -> str:
        return _WORDS.get(place[1]) or rf"(?P<{place[1]}>.+?)"

    return re.compile(re.sub(r"<([a-z]+\d?)>", stands_for, pattern))
