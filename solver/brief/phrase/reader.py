"""A cursor over a phrase's tokens that answers what stands next."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import dataclass

from setwright.catalogue.faults import Fault
from setwright.solver.brief.phrase.lexicon import Kind, Lexicon
from setwright.solver.brief.phrase.tokens import DAY_WORDS, Token, tokens_of

NUMBER_WORDS = {
    "one": 1, "two": 2, "three": 3, "four": 4, "five": 5, "six": 6, "seven": 7, "eight": 8, "nine": 9, "ten": 10,
}  # fmt: skip
JOINERS = ("and", "or", "plus", "then", "but")
_NOTHING = Token("other", "", 0, 0)


@dataclass(frozen=True)
class Met:
    """A catalogue word met in a phrase: its kind, its id and how it was written."""

    kind: Kind
    id: str
    text: str
    length: int


class Reader:
    """Reads one phrase from left to right and keeps the faults met."""

    def __init__(self, text: str, lexicon: Lexicon) -> None:
        self.text = text
        self.lexicon = lexicon
        self.tokens = tokens_of(text)
        self.at = 0
        self.faults: list[Fault] = []
        self.stops: frozenset[str] = frozenset()
        """Words at which a stretch of unknown words ends."""

    @property
    def done(self) -> bool:
        return self.at >= len(self.tokens)

    def peek(self, ahead: int = 0) -> Token:
        """The token so far ahead, or an empty one past the end."""
        place = self.at + ahead
        return self.tokens[place] if place < len(self.tokens) else _NOTHING

    def sees(self, *words: str, ahead: int = 0) -> bool:
        """Whether these words come next."""
        return all(self.peek(ahead + place).text == word for place, word in enumerate(words))

    def take(self, *words: str) -> bool:
        """Step over these words if they come next."""
        if self.sees(*words):
            self.at += len(words)
            return True
        return False

    def take_any(self, words: Iterable[str]) -> str | None:
        """Step over the next token if it is one of these words."""
        text = self.peek().text
        if text and text in words:
            self.at += 1
            return text
        return None

    def written(self, start: int, end: int | None = None) -> str:
        """The text from one token up to, and without, another (the cursor's if not named)."""
        last = (self.at if end is None else end) - 1
        return self.text[self.tokens[start].start : self.tokens[last].end] if last >= start else ""

    def separator(self, ahead: int = 0) -> bool:
        token = self.peek(ahead)
        return token.sort == "separator" or token.text in JOINERS

    def skip_separators(self) -> bool:
        """Step over separators; whether there was any."""
        start = self.at
        while not self.done and self.separator():
            self.at += 1
        return self.at > start

    def number(self, ahead: int = 0) -> float | None:
        """The number that stands there, in figures or as a word up to ten."""
        token = self.peek(ahead)
        if token.sort == "number":
            return float(token.text)
        return NUMBER_WORDS.get(token.text)

    def weekday(self, ahead: int = 0) -> str | None:
        return DAY_WORDS.get(self.peek(ahead).text)

    def met(self, kinds: Sequence[Kind], ahead: int = 0) -> Met | None:
        """The longest catalogue word of these kinds that stands there; the earlier kind wins a draw."""
        start = self.at + ahead
        stretch = self.tokens[start : start + self.lexicon.longest]
        for length in range(len(stretch), 0, -1):
            part = stretch[:length]
            if any(token.sort not in ("word", "number") for token in part):
                continue
            found = self.lexicon.find(tuple(token.text for token in part), kinds)
            if found:
                return Met(*found, self.written(start, start + length), length)
        return None

    def take_met(self, kinds: Sequence[Kind]) -> Met | None:
        met = self.met(kinds)
        if met:
            self.at += met.length
        return met

    def unknown(self) -> str:
        """Step over the next stretch of words up to a separator, a number, a weekday or a word known to lead."""
        start = self.at
        self.at += 1
        while not self.done and not self._stops():
            self.at += 1
        return self.written(start)

    def _stops(self) -> bool:
        token = self.peek()
        return self.separator() or token.sort != "word" or token.text in self.stops or token.text in DAY_WORDS

    def fault(self, said: str, remedy: str = "") -> None:
        self.faults.append(Fault("phrase", said, remedy))
