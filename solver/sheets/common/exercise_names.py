"""Exercises by the names that stand in a week's file."""

from __future__ import annotations

from setwright.catalogue.entries import Catalogue
from setwright.solver.brief.phrase.lexicon import lexicon_of
from setwright.solver.brief.validation_faults import refusal


class ExerciseNames:
    """Finds the catalogue's exercises by id, name or alias; the context in which a week's models are read."""

    def __init__(self, catalogue: Catalogue) -> None:
        self.catalogue = catalogue
        self.lexicon = lexicon_of(catalogue)

    def exercise_id(self, text: str) -> str:
        """The id of the exercise that a text names; raises PydanticCustomError where it names none."""
        found = self.lexicon.resolve(text, ("exercise",))
        return found[1] if found is not None else self.unknown(text)

    def unknown(self, text: str) -> str:
        """What stands for a name that the catalogue has not; here nothing does: raises PydanticCustomError."""
        near = self.lexicon.nearest(text, ("exercise",))
        remedy = f"did you mean {near!r}?" if near else "write a name of the list of exercises"
        raise refusal(f"{text!r} is not in the catalogue, expected an exercise", remedy)
