"""The lifts of a log by the names that stand in its file, each distinct name looked up once."""

from __future__ import annotations

from typing import Final

from pydantic_core import PydanticCustomError

from setwright.catalogue.entries import Catalogue
from setwright.solver.brief.validation_faults import refusal
from setwright.solver.foreign.near_names import NearNames
from setwright.solver.foreign.notes import Notes
from setwright.solver.foreign.rows.typed_words import without_label
from setwright.solver.sheets.common.json_values import MOST_FAULTS

MOST_NAMES: Final = 2_000
LONGEST: Final = 200
"""Different names in one file, and letters of one: beyond them it is no log, and near names would take long to find."""


class LiftNames:
    """Finds lifts by id, name, alias or near name; the context in which a log's models are read."""

    def __init__(self, catalogue: Catalogue, accept_near: bool, notes: Notes) -> None:
        self.catalogue = catalogue
        self._names = NearNames(catalogue, accept_near)
        self._notes = notes
        self._found: dict[str, str | PydanticCustomError] = {}
        self._unknown = 0

    def exercise_id(self, text: str) -> str:
        """The id of the exercise that a text names; raises PydanticCustomError where it names none."""
        found = self._found.get(text)
        if found is None:
            found = self._found[text] = self._looked_up(text)
        if isinstance(found, PydanticCustomError):
            raise found
        return found

    def _looked_up(self, text: str) -> str | PydanticCustomError:
        """The id, or the error that says why there is none; what was read as another name is noted."""
        if len(text) > LONGEST:
            return refusal(f"is {len(text)} letters long, expected an exercise")
        if len(self._found) >= MOST_NAMES:
            return refusal(f"is one of more than {MOST_NAMES} names, expected a log of fewer lifts", "split the file")
        if self._unknown >= MOST_FAULTS and not self._names.knows(text):
            return refusal(f"{text!r} is not in the catalogue, expected an exercise")
        try:
            name = text if self._names.knows(text) else without_label(text)[0]
            found = self._names.exercise_id(name)
        except PydanticCustomError as error:
            self._unknown += 1
            return error
        while self._names.taken:
            said, taken = self._names.taken.pop(0)
            self._notes.add(f"{said!r} was read as {taken}")
        return found
