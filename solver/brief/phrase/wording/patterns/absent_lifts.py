"""Movements that no week has, because the catalogue does not: who wants none of them has it already."""

from __future__ import annotations

import re
from typing import Final

_NAMES: Final = (
    r"(?:behind[- ]the[- ]neck press(?:es)?|kipping(?: pull-?ups)?|handstands?|handstand push-?ups|mountain climbers|muscle-?ups|cardio|"
    r"running|treadmill|neck(?: work| training)?|rope climbs|cartwheels)"
)
_KIT: Final = r"dumbbells?|bands?|barbells?|kettlebells?|machines?|cables?|body ?weight|bench|rack|gym|kit|equipment"
"""After `no running and ...` these may be there or not: a list with one of them is asked about."""
_LEAD: Final = r"(?:no|avoid|avoids|without|skip|leave out|hates?|dislikes?|(?:does not|doesn't|don't|do not) (?:like|want|do)|not a fan of)"
_ALONE: Final = re.compile(
    rf"(?:^|(?<=[,.;] ))(?:i |he |she |please )?{_LEAD} ({_NAMES}(?: (?:and|or) {_NAMES})*)(?=[,.;]|$)"
)
_LAST: Final = re.compile(rf"\b({_LEAD} (?!{_NAMES})[a-z' -]+?) (?:and|or) ({_NAMES})(?=[,.;]|$)")
_FIRST: Final = re.compile(rf"\b({_LEAD}) ({_NAMES}) (?:and|or) (?![^,.;]*\b(?:only|just|{_KIT})\b)(?=[a-z])")


def without_unknown_lifts(text: str) -> tuple[str, list[str]]:
    """The text without the movements that it does not want and the catalogue does not have, and these."""
    found: list[str] = []

    def drop(match: re.Match[str]) -> str:
        found.append(match[1])
        return ","

    def keep_first(match: re.Match[str]) -> str:
        found.append(match[2])
        return match[1]

    def keep_last(match: re.Match[str]) -> str:
        found.append(match[2])
        return f"{match[1]} "

    return _ALONE.sub(drop, _FIRST.sub(keep_last, _LAST.sub(keep_first, text))), found
