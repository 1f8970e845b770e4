"""The nearest known word to a mistyped one."""

from __future__ import annotations

from collections.abc import Iterable
from difflib import get_close_matches


def nearest(word: str, known: Iterable[str]) -> str | None:
    """The known word closest to `word`, or None when nothing is near (similarity below 0.6)."""
    words = {w.lower(): w for w in known}
    found = get_close_matches(word.lower(), list(words), n=1, cutoff=0.6)
    return words[found[0]] if found else None


def did_you_mean(word: str, known: Iterable[str]) -> str:
    """The remedy sentence for an unknown word, or an empty text."""
    near = nearest(word, known)
    return f"did you mean {near!r}?" if near else ""
