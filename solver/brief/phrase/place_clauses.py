"""The clauses that name the place: a kit, items, and how heavy the dumbbells go."""

from __future__ import annotations

from dataclasses import dataclass

from setwright.solver.brief.phrase.draft import Said
from setwright.solver.brief.phrase.lexicon import Kind, key_of
from setwright.solver.brief.phrase.reader import Met, Reader

PLACES: tuple[Kind, ...] = ("kit", "item")
_THINGS: tuple[Kind, ...] = ("item", "kit")
_BEFORE = ("at", "in", "with", "using")
_ARTICLES = ("a", "an", "the", "my", "some", "only", "just")
_SAFETIES = "safeties"
"""An item that is no place to train: `with safeties` is said of what is owned."""
_UNITS = {"kg": "kg", "kilo": "kg", "kilos": "kg", "lb": "lb", "lbs": "lb", "pounds": "lb"}


@dataclass(frozen=True)
class Place:
    """A place read: its kit or items as a brief writes them, and what is said of its dumbbells."""

    equipment: str | tuple[str, ...]
    text: str
    heaviest: float | None = None
    step: float | None = None
    unit: str | None = None

    def into(self, said: Said) -> None:
        """Say it of the whole week."""
        said.set("equipment", self.equipment if isinstance(self.equipment, str) else list(self.equipment))
        self.dumbbells_into(said)

    def dumbbells_into(self, said: Said) -> None:
        if self.heaviest is not None:
            said.set("owned.dumbbell_max", self.heaviest)
        if self.step is not None:
            said.set("owned.dumbbell_step", self.step)
        if self.unit is not None:
            said.set("client.unit", self.unit)


def take_place(r: Reader) -> Place | None:
    """The place that stands here, if one does."""
    start = r.at
    first = _take_thing(r)
    if first is None or first.id == _SAFETIES:
        r.at = start
        return None
    things = [first]
    dumbbells = _take_dumbbells(r, first)
    while more := _take_more(r):
        things.append(more)
        dumbbells = dumbbells or _take_dumbbells(r, more)
    return Place(_equipment(r, things), r.written(start), *(dumbbells or (None, None, None)))


def _take_thing(r: Reader) -> Met | None:
    """A kit or item, with or without `at`, `with`, `a` and the like before it."""
    start = r.at
    for words in (_BEFORE, _ARTICLES):
        if met := r.take_met(PLACES):
            return met
        while r.take_any(words):
            pass
    if met := r.take_met(PLACES):
        return met
    r.at = start
    return None


def _take_more(r: Reader) -> Met | None:
    """Another kit or item after a comma, `and` or `with`."""
    start = r.at
    if (r.skip_separators() or r.take("with")) and not _starts_other(r):
        r.take_any(_ARTICLES)
        if met := r.take_met(PLACES):
            return met
    r.at = start
    return None


def _starts_other(r: Reader) -> bool:
    """Whether a longer word that is no equipment starts here: `dumbbells, leg press at most 8 sets`."""
    other = r.met(("exercise", "muscle", "group", "caution"))
    own = r.met(PLACES)
    return other is not None and (own is None or other.length > own.length)


def _equipment(r: Reader, things: list[Met]) -> str | tuple[str, ...]:
    """One word alone is a kit before it is an item; among several each is an item first."""
    if len(things) == 1:
        return things[0].id if things[0].kind == "kit" else (things[0].id,)
    found = (r.lexicon.find(key_of(thing.text), _THINGS) for thing in things)
    return tuple(dict.fromkeys(met[1] for met in found if met))


def _take_dumbbells(r: Reader, thing: Met) -> tuple[float | None, float | None, str | None] | None:
    """`to 24 kg by 2` after dumbbells: the heaviest, the step and the unit."""
    if "dumbbell" not in thing.text and "db" not in thing.text:
        return None
    start = r.at
    r.take("up")
    if not r.take("to") or r.number() is None:
        r.at = start
        return None
    heaviest = r.number()
    r.at += 1
    unit = r.take_any(_UNITS)
    step = None
    if r.sees("by") and r.number(1) is not None:
        step = r.number(1)
        r.at += 2
        unit = r.take_any(_UNITS) or unit
    return heaviest, step, _UNITS[unit] if unit else None


def place_clause(r: Reader, said: Said) -> bool:
    """Read a place for the whole week if one stands here."""
    if place := take_place(r):
        place.into(said)
        return True
    start = r.at
    r.take_any(_BEFORE)
    if r.take("home"):
        said.home = True
        return True
    r.at = start
    return False
