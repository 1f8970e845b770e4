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
    (r"\b([a-z]{4,})(?: \1\b)+", r"\1"),
    (r"(?<=[a-z]) (?=\d ?x ?\d\d\b)", ", "),
    (r"\b(ones?|sessions?|days?|workouts?) \((\d+ ?(?:min|mins|minutes|h|hours?|'))\)", r"\1 of \2"),
    (r"\b((?:no|avoid|without) [a-z -]+?) \(([a-z]+),? (?:and )?([a-z]+)\)", r"\1 or \2 or \3"),
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
_OF_SETS: Final = r"(?=(?:-|\b)(?: (?:to|or) (?:\w+))? (?:reps?|repetitions?|exercises|lifts|rir|seconds?|secs?|minutes? (?:of )?rest|minutes? between|in (?:reserve|the tank)))"
NUMBERS_OF_SETS: Final[Rewrites] = (
    *((rf"\b{word}\b{_OF_SETS}", str(number)) for word, number in _IN_WORDS.items()),
    *((rf"(?<=\d to )\b{word}\b(?= (?:reps?|seconds?))", str(number)) for word, number in _IN_WORDS.items()),
)
"""Numbers in words before repetitions, seconds and the like, which are read before the days are."""
_SOON: Final = r"(?: (?:next|this|in|soon) ?[a-z]*| in \d+ (?:weeks|months))?"
AGES: Final[Rewrites] = (
    (r"\b\d\d (?:next|this) (?:month|year|week) so (\d\d)\b", r"\1 years old"),
    (
        rf"\b(?:my |our |the )?(?:client |mum |mom |dad |mother |father |athlete )?(?:is |i'm |she's |he's )?(?:about to turn|turning|turns) 18\b{_SOON}",
        "17 years old",
    ),
    (
        rf"\b(?:my |our |the )?(?:client |mum |mom |dad |mother |father |athlete )?(?:is |i'm |she's |he's |i am )?(?:about to turn|turning|turns) (\d\d)\b{_SOON}",
        r"\1 years old",
    ),
)
"""An age that is near: from 18 on the one that asks for more care, which is the higher."""
NUMBERS: Final[Rewrites] = (
    *((rf"\b{words}\b", str(number)) for words, number in _COMPOUND.items()),
    *((rf"\b{word}\b{_PLAIN_AFTER}", str(number)) for word, number in _IN_WORDS.items()),
)
