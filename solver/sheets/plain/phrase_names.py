"""Names of the catalogue as a phrase says them: a place, an exercise, all the exercises that one word closes."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from functools import lru_cache
from typing import Final

from setwright.catalogue.entries import Catalogue
from setwright.solver.brief.phrase.lexicon import Kind, lexicon_of

FEW: Final = 3
"""Exercises that are named one by one; more are said by a word that stands for several, where there is one."""


def place_words(equipment: str | tuple[str, ...], catalogue: Catalogue) -> str:
    """A place as a phrase says it: a kit, or items."""
    names = {kit.id: kit.name.lower() for kit in catalogue.kits.values()}
    names |= {item: item_name(item, catalogue) for item in catalogue.items}
    words = (equipment,) if isinstance(equipment, str) else equipment
    return " and ".join(names.get(word, word) for word in words)


def lift_name(exercise: str, catalogue: Catalogue, items: bool = False) -> str:
    """An exercise's full name without the commas that would end it; with `items` none that an item has too."""
    lexicon, entry = lexicon_of(catalogue), catalogue.exercises[exercise]
    kinds: tuple[Kind, ...] = ("item", "exercise") if items else ("exercise",)
    names = [name.lower().replace(",", "") for name in (entry.name, exercise.replace("-", " "), *entry.aliases)]
    clear = [name for name in names if lexicon.resolve(name, kinds) == ("exercise", exercise)]
    alone = (name for name in clear if lexicon.family(name, "exercise", exercise) == (exercise,))
    return next(alone, (clear or names)[0])


def item_name(item: str, catalogue: Catalogue) -> str:
    """An item's name where it is one that a phrase does not end, else its id as words."""
    name = catalogue.items[item].name.lower()
    return item.replace("-", " ") if "," in name or " or " in name else name


def family_names(exercises: Sequence[str], catalogue: Catalogue, items: bool = False) -> list[str]:
    """Words that stand for just these exercises together; in the catalogue's order where few words do."""
    left, found = set(exercises), []
    while len(left) > FEW:
        inside = [(word, family) for word, family in _families(catalogue).items() if family <= left]
        word, family = max(inside, key=lambda pair: (len(pair[1]), -len(pair[0])), default=("", frozenset()))
        if len(family) < 2:
            break
        found.append(word)
        left -= family
    return [*found, *(lift_name(exercise, catalogue, items) for exercise in exercises if exercise in left)]


@lru_cache(maxsize=4)
def _families(catalogue: Catalogue) -> Mapping[str, frozenset[str]]:
    """Each word that stands for several exercises, with them."""
    lexicon = lexicon_of(catalogue)
    table: dict[str, frozenset[str]] = {}
    for word in (*lexicon.spellings["movement"], *lexicon.spellings["exercise"]):
        known = lexicon.resolve(word, ("exercise", "movement"))
        family = frozenset(lexicon.family(word, *known)) if known else frozenset()
        if len(family) > 1 and "," not in word:
            table.setdefault(word, family)
    return table
