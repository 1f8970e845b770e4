"""Words that a person writes, looked up in the catalogue: what each stands for, or the nearest known word."""

from __future__ import annotations

from typing import TYPE_CHECKING

from setwright.catalogue.faults import Fault, UsageFault
from setwright.catalogue.near import suggestion

if TYPE_CHECKING:
    from setwright.catalogue.entries import Catalogue, Exercise
    from setwright.solver.brief.phrase.lexicon import Kind


def exercise_named(name: str, catalogue: Catalogue) -> Exercise:
    """The exercise of an id, a name or an alias; raises UsageFault with the nearest one."""
    return catalogue.exercises[entry_named(name, "exercises", ("exercise",), catalogue)[1]]


def entry_named(word: str, where: str, kinds: tuple[Kind, ...], catalogue: Catalogue) -> tuple[Kind, str]:
    """The kind and the id that a word stands for; raises UsageFault with the nearest known word."""
    from setwright.solver.brief.phrase.lexicon import KIND_NAMES, lexicon_of

    words = lexicon_of(catalogue)
    found = words.resolve(word, kinds)
    if found is None:
        wanted = " or ".join(KIND_NAMES[kind] for kind in kinds)
        remedy = suggestion(words.nearest(word, kinds))
        raise UsageFault(Fault(where, f"{word!r} is not in the catalogue, expected {wanted}", remedy))
    return found
