"""What a sentence only names: muscles are those to grow, lifts those liked."""

from __future__ import annotations

import re
from typing import Final

from setwright.solver.brief.phrase.lexicon import Kind, Lexicon

_MUSCLES: Final[tuple[Kind, ...]] = ("muscle", "group")
_CLAUSES: Final = re.compile(r"([,;]|\.(?!\d))\s*")
_BEFORE: Final = re.compile(r"^(?:and|my|the|his|her|mainly|mostly|especially|more)\s+")

_SAID_OF: Final = (
    (
        re.compile(
            r"^(?:my |the )?(.+?) (?:is|are) (?:the |my |a )?(?:lagging|weak(?: point| spot)?|behind|(?:main )?focus|priority)$"
        ),
        "grow",
    ),
    (re.compile(r"^(?:my |the )?(.+?) needs? (?:to catch up|to grow|work|more work)$"), "grow"),
    (
        re.compile(
            r"^(?:and )?(?:i |she |he )?(?:really )?(?:wants?|would like|'d like)(?: a| to have| to get)? (?:bigger|visible|stronger|wider|more) (.+)$"
        ),
        "grow",
    ),
    (re.compile(r"^(?:while )?(?:maintaining|keeping|maintain) (?:my |the )?(.+)$"), "hold"),
)
"""What is said of muscles, and what it asks for; only where all that stands there are muscles."""


def wanted(text: str, lexicon: Lexicon) -> str:
    """The text with `grow` or `like` before each clause that holds nothing but names of muscles or of lifts."""
    parts = _CLAUSES.split(text)
    clauses = [_grown(clause.strip(), lexicon) for clause in parts[::2]]
    marks = [*parts[1::2], ""]
    return " ".join(f"{clause}{mark}" for clause, mark in zip(clauses, marks, strict=True)).strip()


def _grown(clause: str, lexicon: Lexicon) -> str:
    bare = _BEFORE.sub("", clause)
    if not bare:
        return clause
    for pattern, asked in _SAID_OF:
        if (found := pattern.match(bare)) and _all_are(_MUSCLES, found[1], lexicon):
            return f"{asked} {found[1]}"
    if bare.endswith(" only") and _all_are(("kit", "item"), bare.removesuffix(" only"), lexicon):
        return bare.removesuffix(" only")
    if _all_are(_MUSCLES, bare, lexicon):
        return f"grow {bare}"
    if _all_are(("exercise",), bare, lexicon) and lexicon.resolve(bare, ("kit", "item")) is None:
        return f"like {bare}"
    return clause


def _all_are(kinds: tuple[Kind, ...], clause: str, lexicon: Lexicon) -> bool:
    """Whether a clause is one name of these kinds, or several with `and` between them."""
    names = re.split(r"\s+(?:and|plus)\s+|\s*/\s*", clause)
    return all(lexicon.resolve(name.strip(), kinds) is not None for name in names)
