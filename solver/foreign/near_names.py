"""Exercises by the names a coach writes: a known name is taken, a near one is asked about."""

from __future__ import annotations

import difflib
from typing import Any, Final

from setwright.catalogue.entries import Catalogue
from setwright.solver.brief.phrase.lexicon import NEAR, key_of
from setwright.solver.sheets.common.words import listed
from setwright.solver.sheets.document.week_reader import Reader, kind

MOST_NEAR: Final = 3


class Names(Reader):
    """A reader that knows near names, and takes them only when it is told to."""

    def __init__(self, catalogue: Catalogue, where: str, accept_near: bool, notes: list[str]) -> None:
        super().__init__(catalogue, where)
        self.accept_near = accept_near
        self.notes = notes

    def exercise(self, value: Any, path: str) -> str:
        """An exercise's id from its id, name or alias; a near name is asked about, or noted when accepted."""
        if not isinstance(value, str) or not value.strip():
            self.fault(path, f"is {kind(value) if value not in (None, '') else 'empty'}, expected an exercise's name")
            return ""
        found = self.words.resolve(value.strip(), ("exercise",))
        if found is not None:
            return found[1]
        near = self.near_ones(value.strip())
        if near and self.accept_near:
            name = self.catalogue.exercises[near[0]].name
            self.notes.append(f"{path}: {value!r} was read as {name}")
            return near[0]
        names = listed((repr(self.catalogue.exercises[e].name) for e in near), "or")
        other = "`setwright exercises` lists them all; your own go in a file for --catalogue"
        remedy = f"did you mean {names}? --accept-near takes the first" if near else other
        self.fault(path, f"{value!r} is not in the catalogue, expected an exercise", remedy)
        return ""

    def near_ones(self, text: str) -> list[str]:
        """The exercises nearest to a text: first those whose name holds all of its words, the first choices leading."""
        words = set(key_of(text))
        exercises = self.catalogue.exercises.values()
        whole = [e for e in exercises if words and words <= set(key_of(e.name))]
        whole.sort(key=lambda e: (e.rank, len(key_of(e.name)), e.id))
        spelt = {name.lower(): e.id for e in exercises for name in (e.name, *e.aliases)}
        close = difflib.get_close_matches(text.lower(), list(spelt), n=MOST_NEAR, cutoff=NEAR)
        return list(dict.fromkeys([*(e.id for e in whole), *(spelt[c] for c in close)]))[:MOST_NEAR]
