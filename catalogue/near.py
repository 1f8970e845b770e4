"""Near misses: the known words most like one that is not known, and how a remedy offers them."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterable
from difflib import get_close_matches
from functools import lru_cache

LIKENESS = 0.6
"""Below this likeness (0 to 1, difflib's ratio) a word is not near."""


def near_misses(word: str, known: Iterable[str], most: int, likeness: float = LIKENESS) -> tuple[str, ...]:
    """At most `most` known words like `word`, the likest first; case does not count, and `word` is not among them."""
    by_lower: dict[str, str] = {}
    for other in known:
        if other != word:
            by_lower.setdefault(other.lower(), other)
    written = word.lower()
    shared = [other for other in by_lower if _most_alike(written, other) >= likeness]
    found = get_close_matches(written, shared, n=most, cutoff=likeness)
    return tuple(by_lower[other] for other in found)


def _most_alike(one: str, other: str) -> float:
    """The likeness (0 to 1) of two words if the letters they share stood in one order: difflib's quick ratio, which its
    ratio never passes, made fast by letters that are counted once a word."""
    length = len(one) + len(other)
    return 2.0 * len(_letters(one) & _letters(other)) / length if length else 1.0


@lru_cache(maxsize=1 << 14)
def _letters(word: str) -> frozenset[tuple[str, int]]:
    """The letters of a word, each with how often it has stood in the word before."""
    return frozenset((letter, time) for letter, count in Counter(word).items() for time in range(count))


def nearest(word: str, known: Iterable[str], likeness: float = LIKENESS) -> str | None:
    """The known word most like `word`, or None when none is near; `word` itself is never given."""
    return next(iter(near_misses(word, known, 1, likeness)), None)


def suggestion(near: str | None) -> str:
    """The remedy that offers a near word, or an empty text where there is none."""
    return f"did you mean {near!r}?" if near else ""


def did_you_mean(word: str, known: Iterable[str]) -> str:
    """The remedy for an unknown word: the nearest known one, or an empty text when none is near."""
    return suggestion(nearest(word, known))
