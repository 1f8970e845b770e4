"""Counted days that differ in place or theme: 2 days at home with dumbbells, 1 at the gym, 45 min each."""

from __future__ import annotations

import re
from dataclasses import dataclass
from typing import Final

from setwright.solver.brief.phrase.lexicon import Lexicon
from setwright.solver.brief.phrase.wording.patterns.asides import is_empty
from setwright.solver.brief.phrase.wording.patterns.places import place_said

_SEGMENTS: Final = re.compile(r"\s*[,;.]\s+|\s+(?:and|plus)\s+(?=\d ?(?:x|days?\b|at\b|in\b|with\b|of\b|upper|lower))")
_WHO: Final = r"(?:(?:and|i|we|he|she|client|have|has|train|trains|can|do|lift|the|other) )*"
_COUNT: Final = re.compile(
    rf"^{_WHO}(?P<n>\d)(?: ?x ?(?P<m>\d\d\d?)\b(?: min)?| days?\b(?: x)?|(?= (?:at|in|of|upper|lower)\b))"
)
_WHOLE: Final = re.compile(r"^(\d) days,? (?=\d (?:at|in|with|of|days|x)\b)")
_MINUTES: Final = re.compile(r"\b(\d+) min\b")
_MINUTES_ALONE: Final = re.compile(r"(?:for )?(\d+) min")
_LINKS: Final = re.compile(r"^(?:(?:for|of|at|on|a|each|x) )+|(?: (?:for|of|at|on|each|x))+$|\b(?:for|of)(?= *$)")
_THEME: Final = re.compile(r"(?P<theme>upper|lower|push|pull|arms|full body|full-body|legs)(?: body)?(?: days?| only)?")
_AT_HOME: Final = re.compile(
    r"^(?:(?:at|from) )?home(?: (?:with|using))? ?|^(?:at|in|with|from|using) | (?:at|in) home$"
)


@dataclass
class _Counted:
    count: int
    minutes: int | None
    theme: str
    place: str

    def clause(self) -> str:
        """The days in the words of the day clauses."""
        words = [f"{self.count} days", self.theme, f"x {self.minutes} min", self.place]
        return " ".join(word for word in words if word)


_ELSEWHERE: Final = re.compile(r"\b[1-6] (?:days? )?(?:at|in|from|with) (?!least|most|total|a row|between|\d)")
_COUNTS: Final = re.compile(
    r"\b[1-7] (?:days?\b|x\b)|\b[1-7]x ?\d|\b[1-7] (?=(?:at|in|from|with) (?!least|most|total|a row|between|\d))"
)


def leaves_places_open(text: str) -> bool:
    """Whether a text that is not parted counts its days more than once, and some of them are said of a place."""
    return _ELSEWHERE.search(text) is not None and len(_COUNTS.findall(text)) > 1


def with_placed_counts(text: str, lexicon: Lexicon) -> tuple[str, list[str]]:
    """The text without its counted days, and a clause for each count; unchanged where fewer than two counts have a place
    or a theme each, or one of them cannot be told for sure."""
    whole = _WHOLE.match(text)
    parts = [part.strip() for part in _SEGMENTS.split(text[whole.end() :] if whole else text) if part.strip()]
    total = int(whole[1]) if whole else None
    groups: list[_Counted] = []
    left: list[str] = []
    shared: int | None = None
    for part in parts:
        alone = _MINUTES_ALONE.fullmatch(part)
        if alone and shared is None:
            shared = int(alone[1])
            continue
        if not groups and total is None and (only := re.fullmatch(r"(\d) days", part)):
            total = int(only[1])
            continue
        found = _COUNT.match(part)
        group = _counted(part, found, lexicon) if found else None
        if found and group is None:
            return text, []
        if group:
            groups.append(group)
        else:
            left.append(part)
    for group in groups:
        group.minutes = group.minutes or shared
    open_ = any(group.minutes is None for group in groups) or (shared and all(g.minutes != shared for g in groups))
    uneven = not (all(group.place for group in groups) or all(group.theme and not group.place for group in groups))
    if len(groups) < 2 or open_ or uneven or (total is not None and sum(g.count for g in groups) != total):
        return text, []
    return ", ".join(left), [group.clause() for group in groups]


def _counted(part: str, found: re.Match[str], lexicon: Lexicon) -> _Counted | None:
    """The days of one segment; None where words are left that are no place, theme or minutes."""
    rest = part[found.end() :]
    minutes = int(found["m"]) if found["m"] else None
    said = _MINUTES.findall(rest)
    if len(said) > 1 or (said and minutes):
        return None
    minutes = int(said[0]) if said else minutes
    rest = _LINKS.sub(" ", " ".join(_MINUTES.sub(" ", rest).split())).strip()
    theme = _THEME.fullmatch(rest)
    if theme:
        return _Counted(int(found["n"]), minutes, theme["theme"].replace("-", " "), "")
    if is_empty(rest):
        return _Counted(int(found["n"]), minutes, "", "")
    place = place_said(rest, lexicon) or place_said(_AT_HOME.sub("", rest).strip(), lexicon)
    place = place or place_said(re.sub(r" (?:at|from) home$|^(?:at )?home ", "", rest), lexicon)
    if place is None or place[1] or place[0].startswith("without"):
        return None
    return _Counted(int(found["n"]), minutes, "", place[0])
