"""Things that somebody has and no lift of the catalogue needs: they change nothing of the week, which is told."""

from __future__ import annotations

import re
from typing import Final

_THINGS: Final = (
    r"chairs?|stairs|staircase|(?:gymnastic )?rings|sled|foam roller|(?:yoga |exercise )?mat|medicine ball|sandbag|skipping rope|"
    r"jump rope|exercise bike|spin bike|rowing machine|rower|park bench|gym ball|swiss ball|battle ropes?"
)
_SOME: Final = r"(?:(?:a|an|some|the|my|our|1|2|one|two|few|couple|pair|pairs|set|of|old)\s+)*"
_AMONG: Final = re.compile(
    rf"(?P<before>[a-z0-9) ]+?)(?P<mark>,? and|,| with| plus) {_SOME}(?P<thing>{_THINGS})(?=[,.;]|$| and\b| at home)"
)
_TURNED: Final = re.compile(r"\b(?:no|not|without|but|except|or|only|lacks?|need|want|buy|like|hate|avoid)\b")
"""Words before a thing that say something else of it than that it is there."""


def without_unknown_things(text: str) -> tuple[str, list[str]]:
    """The text without the things that stand among others and that no lift needs, and these."""
    found: list[str] = []

    def drop(match: re.Match[str]) -> str:
        if _TURNED.search(re.sub(r"^ ?only ", "", match["before"])) or re.search(r"\d$", match["before"]):
            return match[0]
        found.append(match["thing"])
        return match["before"]

    return _AMONG.sub(drop, text), found
