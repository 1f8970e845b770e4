"""The parts of a sentence, and the pieces of patterns, that say something of weekdays."""

from __future__ import annotations

import re
from typing import Final

from setwright.solver.brief.defaults import WEEKDAYS
from setwright.solver.brief.phrase.lexicon import Lexicon
from setwright.solver.brief.phrase.wording.patterns.names import names_of

DAY: Final = rf"(?:{'|'.join(WEEKDAYS)})"
SOME_DAYS: Final = rf"{DAY}(?:(?:,? and| &|,| /)? (?:on )?{DAY})*"
"""One weekday or several."""
LEAD: Final = (
    r"(?:(?:and|also|plus|with|do|put|have|please|i|he|she|we|want|wants|would|like|'d|likes|to|on|every|a|some|the|heavy|"
    r"train|trains|hit|hits|work|my|his|her) )*?"
)
"""What may stand before a lift or a muscle that is said of a weekday."""
_CLAUSES: Final = re.compile(r"\s*[,;.]\s+|,? (?:because|since) (?=(?:i|we|he|she) )")
_JOINED: Final = re.compile(rf"\s+and\s+(?=[a-z' -]+ (?:on |every |each )*{DAY}\b)")


def clauses_of(text: str) -> list[str]:
    """The clauses of a sentence between its commas, semicolons and full stops."""
    return _CLAUSES.split(text)


def joined_parts(clause: str, lexicon: Lexicon) -> list[str]:
    """A clause parted where `and` begins something of another weekday; in one piece where only names stand before it,
    which may be said of that weekday too."""
    parts = _JOINED.split(clause)
    only_names = any(names_of(letter, parts[0], lexicon) for letter in "ml")
    return [clause] if only_names else parts


def weekdays_in(text: str) -> list[str]:
    """The weekdays of a text in their order."""
    return re.findall(rf"\b{DAY}\b", text)
