"""The catalogue's words: from what a person writes to the id it stands for."""

from __future__ import annotations

import re
from collections.abc import Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass
from functools import cached_property, lru_cache
from typing import Literal, Protocol

from setwright.catalogue.entries import Catalogue
from setwright.catalogue.near import nearest

Kind = Literal["muscle", "group", "item", "kit", "exercise", "movement", "caution"]
Key = tuple[str, ...]

KIND_NAMES: Mapping[Kind, str] = {
    "muscle": "a muscle",
    "group": "a group of muscles",
    "item": "an item of equipment",
    "kit": "a kit",
    "exercise": "an exercise",
    "movement": "a movement",
    "caution": "a caution",
}
ALL_KINDS: tuple[Kind, ...] = ("muscle", "group", "item", "exercise", "kit", "movement", "caution")
NEAR = 0.74
"""The least likeness (0 to 1) at which another word is offered; below it `please` would be taken for a plate."""
SHORT: Mapping[str, str] = {"db": "dumbbell", "bb": "barbell", "kb": "kettlebell"}
"""Short words for equipment, as they stand in the names of lifts."""
_WORD = re.compile(r"[^\W\d_]+(?:'[^\W\d_]+)*|\d+(?:\.\d+)?")


class _Named(Protocol):
    @property
    def id(self) -> str: ...
    @property
    def name(self) -> str: ...
    @property
    def aliases(self) -> tuple[str, ...]: ...


@dataclass(frozen=True)
class Lift:
    """An exercise as it may be called: the key of its full name, and the words of each of its names in every form."""

    id: str
    movement: str
    name: Key
    called: tuple[frozenset[str], ...]


def key_of(text: str) -> Key:
    """The words and numbers of a text in small letters; hyphens and spaces count alike."""
    return tuple(_WORD.findall(text.lower().replace("\N{RIGHT SINGLE QUOTATION MARK}", "'")))


@dataclass(frozen=True)
class Lexicon:
    """Every known word by kind: its key to its id, and the spellings to offer for a near miss."""

    ids: Mapping[Kind, Mapping[Key, str]]
    spellings: Mapping[Kind, tuple[str, ...]]
    longest: int
    lifts: tuple[Lift, ...]
    machines: tuple[str, ...] = ()
    """Ids of the items that are machines, which one word stands for."""

    @cached_property
    def _known(self) -> Mapping[Kind, frozenset[str]]:
        """The ids of each kind."""
        return {kind: frozenset(ids.values()) for kind, ids in self.ids.items()}

    def find(self, key: Key, kinds: Sequence[Kind]) -> tuple[Kind, str] | None:
        """The first kind that knows the key, with the id; a plural stands for its singular, db for dumbbell."""
        for candidate in _forms_of(key):
            for kind in kinds:
                if candidate in self.ids[kind]:
                    return kind, self.ids[kind][candidate]
        return None

    def resolve(self, text: str, kinds: Sequence[Kind]) -> tuple[Kind, str] | None:
        """The kind and id a text stands for; an exact id wins over any alias."""
        for kind in kinds:
            if text in self._known[kind]:
                return kind, text
        return self.find(key_of(text), kinds)

    def family(self, text: str, kind: Kind, id: str) -> tuple[str, ...]:
        """The exercises that a text closes where it is said of none in particular, by id in the catalogue's order.

        A movement stands for all its exercises. An exercise's own id or full name stands for it alone; any other way to
        call it, such as `squats`, for those of the same movement that are called by all of the words.
        """
        if kind == "movement":
            return tuple(lift.id for lift in self.lifts if lift.movement == id)
        named = next((lift for lift in self.lifts if lift.id == id), None)
        if named is None or key_of(text) == named.name:
            return (id,)
        words = [_alike(word) for word in key_of(text)]
        return tuple(
            lift.id
            for lift in self.lifts
            if lift.movement == named.movement and any(all(word & called for word in words) for called in lift.called)
        )

    def nearest(self, text: str, kinds: Sequence[Kind], more: Iterable[str] = ()) -> str | None:
        """The known spelling nearest to a text among these kinds and words, if one is near enough to be meant."""
        words = [word for kind in kinds for word in self.spellings[kind]]
        found = nearest(text, [*words, *more], NEAR)
        if found:
            return found
        asked = frozenset(key_of(text))
        whole = [word for word in words if asked < _words_of(word)] if asked else []
        return min(whole, key=len) if whole else None

    def otherwise(self, kinds: Sequence[Kind]) -> str:
        """The remedy for a word that no known one is near to: for cautions the list of them, else an empty text."""
        if tuple(kinds) != ("caution",):
            return ""
        known = ", ".join(dict.fromkeys(self.ids["caution"].values()))
        return f"the cautions are {known}; for any other ask a professional, and avoid the lifts that are not allowed"


@lru_cache(maxsize=1 << 14)
def _words_of(text: str) -> frozenset[str]:
    """The words and numbers of a known spelling, taken apart once."""
    return frozenset(key_of(text))


@lru_cache(maxsize=1 << 14)
def _forms_of(key: Key) -> tuple[Key, ...]:
    """The key itself, then its last word in the singular; then the same with short words for equipment in full."""
    full = tuple(SHORT.get(word, word) for word in key)
    forms: list[Key] = []
    for words in dict.fromkeys((key, full)):
        forms.append(words)
        forms += ((*words[:-1], one) for one in (_singulars(words[-1]) if words else ()))
    return tuple(forms)


def _alike(word: str) -> set[str]:
    """A word with what it may be the plural of and what it is short for."""
    full = SHORT.get(word, word)
    return {full, *_singulars(full)}


def _singulars(word: str) -> Iterator[str]:
    """What a plural may be the plural of: rows of row, presses of press, carries of carry, flyes of fly."""
    if word.endswith("s") and len(word) > 2:
        yield word[:-1]
    if word.endswith(("sses", "ches", "shes", "yes")):
        yield word[:-2]
    if word.endswith("ies"):
        yield f"{word[:-3]}y"


@lru_cache(maxsize=4)
def lexicon_of(catalogue: Catalogue) -> Lexicon:
    """The words of one catalogue, gathered once: ids are entered first, then names, then aliases; the first stays."""
    parts: dict[Kind, Iterable[_Named]] = {
        "muscle": catalogue.muscles.values(),
        "group": catalogue.groups.values(),
        "item": catalogue.items.values(),
        "kit": catalogue.kits.values(),
        "exercise": catalogue.exercises.values(),
        "caution": catalogue.cautions.values(),
    }
    ids: dict[Kind, Mapping[Key, str]] = {kind: _keys(list(rows)) for kind, rows in parts.items()}
    spellings: dict[Kind, tuple[str, ...]] = {kind: _spelt(list(rows)) for kind, rows in parts.items()}
    movements = tuple(dict.fromkeys(slot.movement for slot in catalogue.slots.values()))
    ids["movement"] = {key_of(movement): movement for movement in movements}
    spellings["movement"] = movements
    longest = max(len(key) for table in ids.values() for key in table)
    lifts = tuple(
        Lift(
            e.id,
            e.movement,
            key_of(e.name),
            tuple(frozenset().union(*map(_alike, key_of(name))) for name in (e.name, *e.aliases)),
        )
        for e in catalogue.exercises.values()
    )
    machines = tuple(item.id for item in catalogue.items.values() if item.machine)
    return Lexicon(ids, spellings, longest, lifts, machines)


def _keys(rows: Sequence[_Named]) -> dict[Key, str]:
    table: dict[Key, str] = {}
    for row in rows:
        table.setdefault(key_of(row.id), row.id)
    for row in rows:
        table.setdefault(key_of(row.name), row.id)
    for row in rows:
        for alias in row.aliases:
            table.setdefault(key_of(alias), row.id)
    return table


def _spelt(rows: Sequence[_Named]) -> tuple[str, ...]:
    """Every way to write the rows: their ids, names and aliases."""
    return (
        *(row.id for row in rows),
        *(row.name.lower() for row in rows),
        *(alias for row in rows for alias in row.aliases),
    )
