"""Words and labels as people type them: techniques, the letters of pairs, and what leads an exercise's name."""

from __future__ import annotations

import re
from typing import Any, Final

from setwright.solver.brief.fault_words import shown

_LABEL: Final = re.compile(r"([a-z])\s*([1-9])?")
_LED: Final = re.compile(r"(?:([A-Za-z])([1-9])[.):\s-]*\s|(?:\d{1,2}|[A-Za-z])[.)]\s*|[-*\N{BULLET}]\s+)(?=\S)")
NO_TECHNIQUE: Final = frozenset(
    ("", "-", "none", "no", "normal", "regular", "straight", "straight set", "straight sets")
)
DONE_SLOWLY: Final = frozenset(
    ("tempo", "slow", "pause", "paused", "pauses", "eccentric", "slow eccentric", "slow lowering")
)
"""Ways to do a set that are read as straight sets, with a note."""
_TECHNIQUES: Final = {
    "drop set": "drop",
    "drop sets": "drop",
    "dropset": "drop",
    "dropsets": "drop",
    "double drop": "drop 2",
    "double drop set": "drop 2",
    "triple drop": "drop 3",
    "triple drop set": "drop 3",
    "rest pause": "rest-pause",
    "rest-pause set": "rest-pause",
    "rp": "rest-pause",
}


def technique(value: Any) -> tuple[Any, str]:
    """A technique's word, and a note where the sets are counted as straight ones."""
    text = value.lower().strip() if isinstance(value, str) else value
    if text is None or text in NO_TECHNIQUE:
        return "straight", ""
    if isinstance(text, str) and text in DONE_SLOWLY:
        return "straight", f"{shown(value)} was counted as straight sets"
    return (_TECHNIQUES.get(text, text) if isinstance(text, str) else text), ""


def is_technique(value: Any) -> bool:
    """Whether a text names a drop set or rest-pause set."""
    return isinstance(value, str) and (
        value.lower().strip() in _TECHNIQUES or value.lower().strip() in ("drop", "rest-pause")
    )


def pair_letter(value: Any) -> str:
    """The letter of A, A1 or b2, by which lines stand together; empty where the cell is none."""
    found = _LABEL.fullmatch(value.strip().lower()) if isinstance(value, str) else None
    return found[1].upper() if found else ""


def without_label(name: str) -> tuple[str, str]:
    """An exercise's name without the A1., 2) or dash that leads it, and the letter of a label with a number."""
    found = _LED.match(name)
    if found is None or found.end() == 0:
        return name, ""
    return name[found.end() :].strip(), (found[1] or "").upper()
