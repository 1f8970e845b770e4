"""The clauses that name the place: a kit, items, and how heavy the dumbbells go."""

from __future__ import annotations

from dataclasses import dataclass

from setwright.solver.brief.phrase.draft import BriefDraft
from setwright.solver.brief.phrase.lexicon import Kind, key_of
from setwright.solver.brief.phrase.token_reader import Match, TokenReader

PLACES: tuple[Kind, ...] = ("kit", "item")
_THINGS: tuple[Kind, ...] = ("item", "kit")
_BEFORE = ("at", "in", "with", "using")
_ARTICLES = ("a", "an", "the", "my", "some", "only", "just")
_SAFETIES = "safeties"
"""An item that is no place to train: `with safeties` is said of what is owned."""
OWNED = ("dumbbells", "bands", "kettlebells", "bodyweight")
"""Kits that are also things: `dumbbells or bands` is both."""
_UNITS = {"kg": "kg", "kilo": "kg", "kilos": "kg", "lb": "lb", "lbs": "lb", "pounds": "lb"}


@dataclass(frozen=True)
class Place:
    """A place read: its kit or items as a brief writes them, and what is said of its dumbbells.

    `heaviest` and `step` are in `unit`, or in the client's unit where none is said.
    """

    equipment: str | tuple[str, ...]
    text: str
    heaviest: float | None = None
    step: float | None = None
    unit: str | None = None

    def put_into(self, draft: BriefDraft) -> None:
        """Say the place of the whole week, with what is said of its dumbbells."""
        draft.set("equipment", self.equipment if isinstance(self.equipment, str) else list(self.equipment))
        self.put_dumbbells_into(draft)

    def put_dumbbells_into(self, draft: BriefDraft) -> None:
        """Say what is said of its dumbbells: the heaviest, the step and the unit."""
        if self.heaviest is not None:
            draft.set("owned.dumbbell_max", self.heaviest)
        if self.step is not None:
            draft.set("owned.dumbbell_step", self.step)
        if self.unit is not None:
            draft.set("client.unit", self.unit)


def take_place(reader: TokenReader) -> Place | None:
    """Step over a place; None, with the reader unmoved, where none stands here."""
    start = reader.position
    _step_over_home(reader)
    weight = _take_weight(reader)
    first = _take_thing(reader)
    if weight and (first is None or not _are_dumbbells(first)):
        reader.position = start
        return None
    if first is None or first.id == _SAFETIES:
        reader.position = start
        return None
    things = [first]
    reader.take_any(("only",))
    dumbbells = weight or _take_dumbbells(reader, first)
    while more := _take_more(reader):
        things.append(more)
        dumbbells = dumbbells or _take_dumbbells(reader, more)
    if any(token.text == "or" for token in reader.tokens[start : reader.position]) and _is_a_choice(things):
        _fault_choice(reader, start)
    return Place(_equipment(reader, things), reader.text_from(start), *(dumbbells or (None, None, None)))


def _step_over_home(reader: TokenReader) -> None:
    """Step over `at home with` where what is there follows: `at home with bands`."""
    start = reader.position
    reader.take("at")
    whole = reader.match(("kit",))
    if (whole and whole.length > 1) or not (reader.take("home", "with") and reader.match(("item",))):
        reader.position = start


def _is_a_choice(things: list[Match]) -> bool:
    """Whether two whole places are among the things, of which a day can have but one."""
    return sum(thing.kind == "kit" and thing.text not in OWNED for thing in things) > 1


def _fault_choice(reader: TokenReader, start: int) -> None:
    """Keep the fault of two places where one is meant."""
    said = reader.text_from(start)
    reader.fault(f"'{said}' leaves open which place it is", "name one of them, or give each day its own")


def _take_thing(reader: TokenReader) -> Match | None:
    """A kit or item, with or without `at`, `with`, `a` and the like before it."""
    start = reader.position
    for words in (_BEFORE, _ARTICLES):
        if match := reader.take_match(PLACES):
            return match
        while reader.take_any(words):
            pass
    if match := reader.take_match(PLACES):
        return match
    reader.position = start
    return None


def _take_more(reader: TokenReader) -> Match | None:
    """Another kit or item after a comma, `and` or `with`."""
    start = reader.position
    if (reader.skip_separators() or reader.take("with")) and not _starts_other(reader):
        reader.take_any(_ARTICLES)
        if match := reader.take_match(PLACES):
            return match
    reader.position = start
    return None


def _starts_other(reader: TokenReader) -> bool:
    """Whether a longer word that is no equipment starts here: `dumbbells, leg press at most 8 sets`."""
    other = reader.match(("exercise", "muscle", "group", "caution"))
    own = reader.match(PLACES)
    return other is not None and (own is None or other.length > own.length)


def _equipment(reader: TokenReader, things: list[Match]) -> str | tuple[str, ...]:
    """One word alone is a kit before it is an item; among several each is an item first."""
    if len(things) == 1:
        return things[0].id if things[0].kind == "kit" else (things[0].id,)
    return tuple(dict.fromkeys(_in_a_list(reader, thing) for thing in things))


def _in_a_list(reader: TokenReader, thing: Match) -> str:
    """The id of one thing among several: a home barbell is the barbell there, not the whole garage."""
    bare = thing.text.removesuffix(" at home").removeprefix("home ")
    item = reader.lexicon.find(key_of(bare), ("item",))
    found = item or reader.lexicon.find(key_of(thing.text), _THINGS)
    return found[1] if found else thing.id


def _are_dumbbells(thing: Match) -> bool:
    return "dumbbell" in thing.text or "db" in thing.text


def _take_weight(reader: TokenReader) -> tuple[float | None, float | None, str | None] | None:
    """`20 kg` before dumbbells: the heaviest and its unit."""
    start = reader.position
    while reader.take_any(_BEFORE):
        pass
    heaviest, unit = reader.number(), reader.peek(1).text
    if heaviest is None or unit not in _UNITS:
        reader.position = start
        return None
    reader.position += 2
    return heaviest, None, _UNITS[unit]


def _take_dumbbells(reader: TokenReader, thing: Match) -> tuple[float | None, float | None, str | None] | None:
    """`to 24 kg by 2` after dumbbells: the heaviest, the step and the unit."""
    if not _are_dumbbells(thing):
        return None
    start = reader.position
    reader.take("up")
    if not reader.take("to") or reader.number() is None:
        reader.position = start
        return None
    heaviest = reader.number()
    reader.position += 1
    unit = reader.take_any(_UNITS)
    step = None
    if reader.sees("by") and reader.number(1) is not None:
        step = reader.number(1)
        reader.position += 2
        unit = reader.take_any(_UNITS) or unit
    return heaviest, step, _UNITS[unit] if unit else None


def place_clause(reader: TokenReader, draft: BriefDraft) -> bool:
    """Read a place for the whole week; whether one stood here."""
    if place := take_place(reader):
        place.put_into(draft)
        return True
    start = reader.position
    reader.take_any(_BEFORE)
    if reader.take("home"):
        draft.home = True
        if reader.sees("or"):
            reader.position += 1
            if take_place(reader):
                _fault_choice(reader, start)
        return True
    reader.position = start
    return False
