"""A phrase cut into words, numbers and separators."""

from __future__ import annotations

import re
from dataclasses import dataclass
from typing import Literal

from setwright.solver.brief.defaults import WEEKDAY_NAMES, WEEKDAYS

Sort = Literal["word", "number", "separator", "range", "percent", "other"]

_PIECE = re.compile(
    r"(?P<number>\d+(?:\.\d+)?)|(?P<word>[^\W\d_]+(?:'[^\W\d_]+)*)|(?P<separator>[,;.&+/])"
    r"|(?P<dash>-)|(?P<percent>%)|(?P<other>\S)"
)
_PLAIN = str.maketrans(
    {
        "\N{MULTIPLICATION SIGN}": "x",
        "\N{EN DASH}": "-",
        "\N{EM DASH}": "-",
        "\N{MINUS SIGN}": "-",
        "\N{NON-BREAKING HYPHEN}": "-",
        "\N{RIGHT SINGLE QUOTATION MARK}": "'",
        "\N{NO-BREAK SPACE}": " ",
    }
)
DAY_WORDS = {
    **{day: day for day in WEEKDAYS},
    **dict(zip(WEEKDAY_NAMES, WEEKDAYS, strict=True)),
    **{f"{name}s": day for name, day in zip(WEEKDAY_NAMES, WEEKDAYS, strict=True)},
    "tues": "tue",
    "weds": "wed",
    "thur": "thu",
    "thurs": "thu",
}
"""Every spelling of a weekday."""


@dataclass(frozen=True)
class Token:
    """One piece of a phrase, with where it stands in the text."""

    sort: Sort
    text: str
    start: int
    end: int


def plain(text: str) -> str:
    """The text in small letters, with typographic signs as plain ones."""
    return " ".join(text.translate(_PLAIN).lower().split())


def tokens_of(text: str) -> tuple[Token, ...]:
    """The tokens of a plain text; a hyphen inside a word only parts it, one between numbers or weekdays is a range."""
    pieces = list(_PIECE.finditer(text))
    found: list[Token] = []
    for place, piece in enumerate(pieces):
        sort = piece.lastgroup or "other"
        if sort == "dash":
            after = pieces[place + 1] if place + 1 < len(pieces) else None
            dash = _dash(piece, found[-1] if found else None, after)
            if dash is not None:
                found.append(dash)
        else:
            found.append(Token(sort, piece.group(), piece.start(), piece.end()))  # type: ignore[arg-type]
    return tuple(found)


def _dash(dash: re.Match[str], before: Token | None, after: re.Match[str] | None) -> Token | None:
    """A range, a separator when it stands apart, else nothing: a hyphen."""
    start, end = dash.span()
    if before is None or after is None:
        return Token("other", "-", start, end)
    numbers = before.sort == "number" and after.lastgroup == "number"
    days = before.text in DAY_WORDS and after.group() in DAY_WORDS
    if numbers or days:
        return Token("range", "-", start, end)
    apart = before.end < start or after.start() > end
    return Token("separator", "-", start, end) if apart else None
