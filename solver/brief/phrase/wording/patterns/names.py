"""The catalogue's names in one place of a clause: every word there must belong to a name, else there are none."""

from __future__ import annotations

import re
from collections.abc import Mapping
from typing import Final

from setwright.solver.brief.phrase.lexicon import Kind, Lexicon

_KINDS: Final[Mapping[str, tuple[Kind, ...]]] = {
    "m": ("muscle", "group"),
    "g": ("muscle", "group"),
    "l": ("exercise", "movement"),
    "v": ("movement",),
    "i": ("item",),
    "k": ("kit", "item"),
}
"""What may stand in a place of a pattern, by its letter: muscles, muscles to grow, lifts, items, places."""
_OTHERWISE: Final[Mapping[str, Mapping[str, tuple[str, ...]]]] = {
    "m": {
        "upper body": ("chest", "back", "delts", "arms"),
        "posterior chain": ("glutes", "hamstrings", "spinal erectors"),
        "ass": ("glutes",),
        "backside": ("glutes",),
        "bi's": ("biceps",),
        "bis": ("biceps",),
        "booty": ("glutes",),
        "bottom": ("glutes",),
        "bum": ("glutes",),
        "butt": ("glutes",),
        "stomach": ("abs",),
        "thighs": ("legs",),
        "tri's": ("triceps",),
        "tris": ("triceps",),
        "biceps peak": ("biceps",),
    },
    "l": {
        "presses": ("horizontal press", "vertical press"),
        "pressing": ("horizontal press", "vertical press"),
        "overhead": ("overhead press",),
        "press overhead": ("overhead press",),
        "overhead work": ("overhead press",),
        "overhead pressing": ("overhead press",),
        "overhead presses": ("overhead press",),
        "jumps": ("jump squat", "box jump"),
        "jumping": ("jump squat", "box jump"),
        "bodyweight dips": ("dips",),
        "deadlifting": ("deadlift",),
        "deadlifts from the floor": ("barbell deadlift",),
        "deadlifting from the floor": ("barbell deadlift",),
        "squatting": ("squat",),
        "deep squats": ("squat",),
        "benching": ("bench press",),
        "olympic lifts": ("explosive",),
        "rowing movements": ("row",),
        "swings": ("kettlebell swing",),
        "snatches": ("kettlebell snatch",),
    },
    "v": {},
    "i": {"cable station": ("cable",), "cable tower": ("cable",), "pulleys": ("cable",), "squat stands": ("rack",)},
    "k": {
        "cable station": ("cable",),
        "cable tower": ("cable",),
        "free weights": ("barbell", "dumbbells"),
        "landmine plus bar": ("landmine", "barbell"),
        "squat stands": ("rack",),
        "door bar": ("pull-up bar",),
        "doorway bar": ("pull-up bar",),
        "doorway pull-up bar": ("pull-up bar",),
        "dead hang bar": ("pull-up bar",),
        "bumper plates": ("barbell",),
        "weight plate": ("plate",),
        "door anchor": ("anchor",),
    },
}
"""Names that the catalogue writes otherwise, by the letter of their place."""
_ARTICLES: Final = re.compile(
    r"^(?:(?:a|an|the|my|his|her|their|our|your|some|any|all|direct|1|one|both|that|those|these)\s+)+"
)
_BIG: Final = re.compile(r"^(?:(?:big|bigger|stronger|strong|wider|thicker|rounder|larger|more)\s+)+")
_JOINTS: Final = re.compile(r"\s*(?:,\s*(?:and|or)?|/|\b(?:and|plus|as well as|or|nor)\b)\s*")


def names_of(letter: str, text: str, lexicon: Lexicon) -> tuple[str, ...]:
    """The names in a text such as `my chest, back and side delts`, each as the lexicon reads it; none if any is not one.

    The last word of a name may stand for the one before it too: `side and rear delts`.
    """
    parts = [part for part in _JOINTS.split(text) if part]
    if letter == "k":
        parts = [name for part in parts for name in _in_a_row(part, lexicon)]
    found: list[str] = []
    for place, part in enumerate(parts):
        names = _name(letter, part, lexicon, alone=len(parts) == 1)
        if not names and place + 1 < len(parts) and letter in "mgl":
            names = _name(letter, f"{part} {parts[place + 1].split()[-1]}", lexicon, alone=False)
        if not names:
            return ()
        found += names
    if letter == "l" and len(found) > 1:
        found = ["bench press" if name == "bench" else name for name in found]
    return tuple(dict.fromkeys(found))


def _in_a_row(part: str, lexicon: Lexicon) -> list[str]:
    """The names of things written without commas, `barbell bench rack`; the part itself where it is one name or none."""
    if _name("k", part, lexicon, alone=True):
        return [part]
    found, words = [], part.replace(" with ", " ").split()
    while words:
        length = next(
            (n for n in range(min(4, len(words)), 0, -1) if _name("k", " ".join(words[:n]), lexicon, alone=True)), 0
        )
        if not length:
            return [part]
        found.append(" ".join(words[:length]))
        words = words[length:]
    return found


def _name(letter: str, part: str, lexicon: Lexicon, alone: bool) -> tuple[str, ...]:
    """One name, with or without an article before it."""
    bare = _ARTICLES.sub("", part)
    bare = _BIG.sub("", bare) if letter == "g" else bare
    otherwise = _OTHERWISE["m" if letter == "g" else letter]
    for text in dict.fromkeys((part, bare)):
        if text in otherwise:
            return otherwise[text]
        if lexicon.resolve(text, _KINDS[letter]) is not None:
            return (text,)
    return ("bench",) if not alone and letter == "l" and bare == "bench" else ()
