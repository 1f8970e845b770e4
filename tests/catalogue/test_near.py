"""Near words are those that difflib, of the standard library, finds among all known ones, in its order."""

from __future__ import annotations

from difflib import get_close_matches
from random import Random

import pytest

from setwright.catalogue.load import load_catalogue
from setwright.catalogue.near import near_misses

KNOWN = [name for e in load_catalogue().exercises.values() for name in (e.id, e.name.lower(), *e.aliases)]


def spoilt(word: str, random: Random) -> str:
    """A word with up to four letters put in or taken out."""
    letters = list(word)
    for _ in range(random.randrange(5)):
        place = random.randrange(len(letters) + 1)
        letters[place : place + random.randrange(2)] = random.choice(["", "a", "E", "ss", "-"])
    return "".join(letters)


@pytest.mark.parametrize("likeness", [0.6, 0.74])
def test_near_words_are_those_of_difflib(likeness: float) -> None:
    random = Random(7)
    some = random.sample(KNOWN, 120)
    for word in (*(spoilt(word, random) for word in random.sample(KNOWN, 40)), "", "zzyzx"):
        others = list(dict.fromkeys(known.lower() for known in some if known != word))
        found = near_misses(word, some, 3, likeness)
        assert [near.lower() for near in found] == get_close_matches(word.lower(), others, 3, likeness), word
