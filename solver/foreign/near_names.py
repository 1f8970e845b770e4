"""Exercises by the names a coach writes: a known name is taken, a near one is asked about."""

from __future__ import annotations

import re
from collections.abc import Mapping
from types import MappingProxyType
from typing import Final

from setwright.catalogue.entries import Catalogue
from setwright.catalogue.near import near_misses
from setwright.solver.brief.phrase.lexicon import NEAR, key_of
from setwright.solver.brief.validation_faults import refusal
from setwright.solver.sheets.common.exercise_names import ExerciseNames
from setwright.solver.sheets.common.words import listed

MOST_NEAR: Final = 3
COMMONEST: Final[Mapping[str, str]] = MappingProxyType(
    {
        "row": "barbell-row-to-chest",
        "curl": "dumbbell-curl",
        "press": "barbell-bench-press",
        "fly": "dumbbell-fly",
        "flye": "dumbbell-fly",
        "adduction": "adductor-machine",
        "abduction": "abductor-machine",
        "ab wheel": "ab-wheel-rollout",
    }
)
"""A name that several lifts share -> the id of the commonest of them (common practice, no source)."""

_BRACKETS: Final = re.compile(r"\s*\(([^)]*)\)\s*")


def _short(text: str) -> str:
    """A name in small letters and in the singular."""
    key = " ".join(key_of(text))
    return key if key in COMMONEST else key.removesuffix("s")


def _without_brackets(text: str) -> tuple[str, ...]:
    """Seated row (wide grip) as wide grip seated row, then as seated row; nothing where there are no brackets."""
    inner = _BRACKETS.search(text)
    if inner is None:
        return ()
    rest = _BRACKETS.sub(" ", text).strip()
    return (f"{inner[1]} {rest}", rest) if rest else (inner[1],)


class NearNames(ExerciseNames):
    """Knows near names as well, and takes the nearest only when it is told to; `taken` holds what was read as what."""

    def __init__(self, catalogue: Catalogue, accept_near: bool) -> None:
        super().__init__(catalogue)
        self.accept_near = accept_near
        self.taken: list[tuple[str, str]] = []

    def knows(self, text: str) -> bool:
        """Whether a text is an exercise's id, name or alias, or the short name of a common one."""
        return self.lexicon.resolve(text, ("exercise",)) is not None or _short(text) in COMMONEST

    def unknown(self, text: str) -> str:
        """The commonest exercise of a short name, or the nearest one where near ones are accepted.

        Raises PydanticCustomError otherwise.
        """
        if (common := COMMONEST.get(_short(text))) and common in self.catalogue.exercises:
            self.taken.append((text, self.catalogue.exercises[common].name))
            return common
        for form in _without_brackets(text):
            if found := self.lexicon.resolve(form, ("exercise",)):
                self.taken.append((text, self.catalogue.exercises[found[1]].name))
                return found[1]
        near = self.near_ones(text)
        if near and self.accept_near:
            self.taken.append((text, self.catalogue.exercises[near[0]].name))
            return near[0]
        names = listed((repr(self.catalogue.exercises[e].name) for e in near), "or")
        other = "write a name of the list of exercises; your own go in a catalogue file of yours"
        remedy = f"did you mean {names}? Where nearest names are accepted, the first is taken" if near else other
        raise refusal(f"{text!r} is not in the catalogue, expected an exercise", remedy)

    def near_ones(self, text: str) -> list[str]:
        """The ids nearest to a text: first those whose name holds all of its words, the first choices leading."""
        words = set(key_of(text))
        exercises = self.catalogue.exercises.values()
        whole = [e for e in exercises if words and words <= set(key_of(e.name))]
        whole.sort(key=lambda e: (e.rank, len(key_of(e.name)), e.id))
        spelt = {name.lower(): e.id for e in exercises for name in (e.name, *e.aliases)}
        close = near_misses(text.lower(), spelt, MOST_NEAR, NEAR)
        return list(dict.fromkeys([*(e.id for e in whole), *(spelt[c] for c in close)]))[:MOST_NEAR]
