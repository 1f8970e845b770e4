"""What the card's typeface can draw, and text made fit for it: no character steers the page, none is lost unnoticed."""

from __future__ import annotations

import unicodedata
from collections.abc import Iterator, Mapping, Sequence
from functools import cache
from pathlib import Path
from typing import Any, Final

from setwright.catalogue.faults import Fault, SetwrightError

DATA: Final = Path(__file__).parents[1] / "data"
REMEDY: Final = "write it in Latin, Greek or Cyrillic letters, or hand the week over as html"
BREAKS: Final = ("Zl", "Zp", "Zs")
UNSEEN: Final = ("Cc", "Cf")
"""Unicode's categories of control and format characters: line ends, joiners, marks that turn the writing around."""
SILENT: Final = ("sessions", "rows", "details", "text")
"""Names of the card's parts that say nothing about where a letter stands."""
SAID_ELSEWHERE: Final = ("chart", "exercises")
"""Parts whose every word stands in another part too, so that a fault is not named twice."""


class LetterFault(SetwrightError):
    """Text holds characters that the typeface cannot draw."""


@cache
def drawn() -> frozenset[int]:
    """The code points that every weight of the typeface draws."""
    lines = (DATA / "letters.txt").read_text(encoding="ascii").split()
    ends = ([int(end, 16) for end in line.split("-")] for line in lines)
    return frozenset(point for low, high in ends for point in range(low, high + 1))


def plain(text: str) -> str:
    """Text in composed form (Unicode NFC) on one line, without the characters that have no ink but steer a line.

    A letter that the typeface lacks but can build from its parts stays in parts.
    """
    kept = (_inked(letter) for letter in unicodedata.normalize("NFC", text))
    return " ".join("".join(kept).split())


def _inked(letter: str) -> str:
    """A character as the card sets it: white space of any kind as a space, control characters as nothing."""
    if letter.isspace() or unicodedata.category(letter) in BREAKS:
        return " "
    if unicodedata.category(letter) in UNSEEN:
        return ""
    parts = unicodedata.normalize("NFD", letter)
    return parts if ord(letter) not in drawn() and drawn().issuperset(map(ord, parts)) else letter


def fitted(value: Any, where: str = "") -> Any:
    """A JSON value with every text in it made plain; raises LetterFault that names each undrawable character."""
    found = _plain_value(value)
    faults = tuple(_undrawn(found, where))
    if faults:
        raise LetterFault(faults)
    return found


def _plain_value(value: Any) -> Any:
    """A JSON value with every text in it made plain."""
    match value:
        case str():
            return plain(value)
        case Mapping():
            return {name: _plain_value(held) for name, held in value.items()}
        case Sequence():
            return [_plain_value(held) for held in value]
        case _:
            return value


def _undrawn(value: Any, where: str) -> Iterator[Fault]:
    """A fault for each character of each text that the typeface cannot draw, in the order of the text."""
    match value:
        case str():
            for letter in dict.fromkeys(letter for letter in value if ord(letter) not in drawn()):
                yield Fault(where, f"the card's typeface has no {_named(letter)}", REMEDY)
        case Mapping():
            for name, held in value.items():
                if name not in SAID_ELSEWHERE:
                    yield from _undrawn(held, where if name in SILENT else _joined(where, str(name)))
        case Sequence():
            for place, held in enumerate(value, start=1):
                yield from _undrawn(held, _joined(where, _called(held, place)))


def _named(letter: str) -> str:
    """A character as a reader can look it up, its Unicode name beside it."""
    point = f"U+{ord(letter):04X}"
    name = unicodedata.name(letter, "a character without a name")
    return f"{letter!a} ({name}, {point})" if 0xD800 <= ord(letter) <= 0xDFFF else f"'{letter}' ({name}, {point})"


def _called(value: Any, place: int) -> str:
    """What a part of a list is called: by what it is, its title or its label where it has one, else by its place."""
    names = [value.get(key) for key in ("what", "title", "label")] if isinstance(value, Mapping) else []
    return str(next((name for name in names if name), place))


def _joined(where: str, name: str) -> str:
    return f"{where}: {name}" if where else name
