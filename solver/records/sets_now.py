"""The weekly sets that a client does at present, as a person writes them."""

from __future__ import annotations

import re
from typing import Final

WRITE_SETS: Final = "write MUSCLE SETS, such as chest 6"
_NOW: Final = re.compile(r"(.+?)\s+(\d{1,3}(?:\.\d+)?)")


def sets_now_said(text: str) -> tuple[tuple[tuple[str, float], ...], tuple[str, ...]]:
    """(muscle in words, sets) of each part of `chest 6, back 8`, and the parts that say no sets."""
    parts = [part.strip() for part in text.split(",") if part.strip()]
    found = [(part, _NOW.fullmatch(part)) for part in parts]
    wrong = tuple(part for part, said in found if said is None)
    return tuple((said[1], float(said[2])) for _, said in found if said), wrong
