"""Numbers in words as digits, and marks between words as commas."""

from __future__ import annotations

from typing import Final

Rewrites = tuple[tuple[str, str], ...]
"""(regular expression, what it becomes), applied in order to a text in small letters."""

_SMALL: Final = [
    "one",
    "two",
    "three",
    "four",
    "five",
    "six",
    "seven",
    "eight",
    "nine",
    "ten",
    "eleven",
    "twelve",
    "thirteen",
    "fourteen",
    "fifteen",
    "sixteen",
    "seventeen",
    "eighteen",
    "nineteen",
]
_TENS: Final = ["twenty", "thirty", "forty", "fifty", "sixty", "seventy", "eighty", "ninety"]
_IN_WORDS: Final = {
    **{word: number for number, word in enumerate(_SMALL, 1)},
    **{word: 10 * number for number, word in enumerate(_TENS, 2)},
}
_COMPOUND: Final = {f"{tens}[- ]{small}": _IN_WORDS[tens] + _IN_WORDS[small] for tens in _TENS for small in _SMALL[:9]}
_PLAIN_AFTER: Final = r"(?!-?(?:arm|leg|side|hand|limb)\b)"
"""Not the one of one-arm."""
MARKS: Final[Rewrites] = (
    (r"[\u2018\u2019\u2032]", "'"),
    (r"[\u201c\u201d\"]", " "),
    (r"[!?]+", "."),
    (r"\s*\u2026\s*|\.{2,}", ". "),
    (r"\bw/\s*(?=[a-z]{2})", "with "),
    (r"\s[-~]+\s", ", "),
    (r"\((?:left|right|both)\)", ""),
    (r"\(((?:max |up to |to )?\d[^()]*(?:kg|lbs?|kilos?|pounds))\)", r" \1 "),
    (r"\(([^()]*\d[^()]*)\)", r", \1,"),
    (r"(?<=[a-z])\s*>\s*(?=[a-z])", " over "),
    (
        r"\b(gym|garage|studio|setup|set-up|office|basement|shed|equipment|cellar)(?: at lunch| at work| downstairs| upstairs| here)?\s*:\s*(?=[a-z0-9])",
        r"\1 with ",
    ),
    (r"\b(block|phase|posture|notes?|version|summary|here)\s*:\s*(?=[a-z])", r"\1, "),
    (r"((?:[a-z'-]+ ){3,}(?!do\b|is\b|are\b|on\b|for\b|avoid\b|skip\b|like\b)[a-z'-]+):\s*(?=[a-z])", r"\1, "),
    (r"(?<=[a-z])\s*:\s*(?=[a-z])", " "),
    (r":\s", ", "),
    (r"@\s*", " "),
    (r"\s*&\s*|\s\+\s|(?<=[a-z])\+(?=[a-z])|\s+n\s+", " and "),
    (r"(\d)\s*\*\s*(\d)", r"\1 x \2"),
)
NUMBERS: Final[Rewrites] = (
    *((rf"\b{words}\b", str(number)) for words, number in _COMPOUND.items()),
    *((rf"\b{word}\b{_PLAIN_AFTER}", str(number)) for word, number in _IN_WORDS.items()),
)
