"""A cursor over a phrase's tokens that answers what stands next."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from itertools import takewhile

from setwright.catalogue.faults import Fault
from setwright.solver.brief.phrase.lexicon import Kind, Lexicon
from setwright.solver.brief.phrase.tokens import DAY_WORDS, Token, tokens_of

NUMBER_WORDS = {
    "one": 1, "two": 2, "three": 3, "four": 4, "five": 5, "six": 6, "seven": 7, "eight": 8, "nine": 9, "ten": 10,
}  # fmt: skip
JOINERS = ("and", "or", "plus", "then", "but")
_NOTHING = Token("other", "", 0, 0)


@dataclass(frozen=True)
class Match:
    """A catalogue word met in a phrase: its kind, its id, how it was written and its length in tokens."""

    kind: Kind
    id: str
    text: str
    length: int


class TokenReader:
    """Reads one phrase from left to right and keeps the faults met.

    `position` is the place of the next token. Methods named `take...` step over what they give; all others leave the
    position as it is, and look `ahead` so many tokens beyond it.
    """

    def __init__(self, text: str, lexicon: Lexicon) -> None:
        self.text = text
        self.lexicon = lexicon
        self.tokens = tokens_of(text)
        self._texts = tuple(token.text for token in self.tokens)
        self._matched: dict[tuple[int, tuple[Kind, ...]], Match | None] = {}
        self.position = 0
        self.faults: list[Fault] = []
        self.stop_words: frozenset[str] = frozenset()
        """Words at which a stretch of unknown words ends."""

    @property
    def done(self) -> bool:
        """Whether all tokens are read."""
        return self.position >= len(self.tokens)

    def peek(self, ahead: int = 0) -> Token:
        """The token so far ahead, or an empty one past the end."""
        place = self.position + ahead
        return self.tokens[place] if place < len(self.tokens) else _NOTHING

    def sees(self, *words: str, ahead: int = 0) -> bool:
        """Whether these words come next."""
        start = self.position + ahead
        return self._texts[start : start + len(words)] == words

    def take(self, *words: str) -> bool:
        """Step over these words if they come next; whether they did."""
        if self.sees(*words):
            self.position += len(words)
            return True
        return False

    def take_any(self, words: Iterable[str]) -> str | None:
        """Step over the next token if it is one of these words; the word, or None."""
        text = self.peek().text
        if text and text in words:
            self.position += 1
            return text
        return None

    def text_from(self, start: int, end: int | None = None) -> str:
        """The text from one token up to, and without, another (the cursor's if not named)."""
        last = (self.position if end is None else end) - 1
        return self.text[self.tokens[start].start : self.tokens[last].end] if last >= start else ""

    def at_separator(self, ahead: int = 0) -> bool:
        """Whether a comma, another separating sign or a joining word such as `and` stands there."""
        token = self.peek(ahead)
        return token.sort == "separator" or token.text in JOINERS

    def skip_separators(self) -> bool:
        """Step over separators; whether any stood there."""
        start = self.position
        while not self.done and self.at_separator():
            self.position += 1
        return self.position > start

    def number(self, ahead: int = 0) -> float | None:
        """The number that stands there, in figures or as a word up to ten."""
        token = self.peek(ahead)
        if token.sort == "number":
            return float(token.text)
        return NUMBER_WORDS.get(token.text)

    def weekday(self, ahead: int = 0) -> str | None:
        """The weekday that stands there, as `mon` to `sun`."""
        return DAY_WORDS.get(self.peek(ahead).text)

    def match(self, kinds: Sequence[Kind], ahead: int = 0) -> Match | None:
        """The longest catalogue word of these kinds that stands there; the earlier kind wins a draw."""
        asked = (self.position + ahead, tuple(kinds))
        if asked not in self._matched:
            self._matched[asked] = self._longest(*asked)
        return self._matched[asked]

    def _longest(self, start: int, kinds: tuple[Kind, ...]) -> Match | None:
        """The longest catalogue word of these kinds that begins at this token."""
        stretch = self.tokens[start : start + self.lexicon.longest]
        words = tuple(token.text for token in takewhile(lambda token: token.sort in ("word", "number"), stretch))
        for length in range(len(words), 0, -1):
            found = self.lexicon.find(words[:length], kinds)
            if found:
                return Match(*found, self.text_from(start, start + length), length)
        return None

    def take_match(self, kinds: Sequence[Kind]) -> Match | None:
        """Step over the longest catalogue word of these kinds; None where none comes next."""
        match = self.match(kinds)
        if match:
            self.position += match.length
        return match

    def take_unknown(self) -> str:
        """Step over the next word and on to a separator, a number, a weekday or a stop word; the text stepped over."""
        start = self.position
        self.position += 1
        while not self.done and not self._stops():
            self.position += 1
        return self.text_from(start)

    def _stops(self) -> bool:
        token = self.peek()
        return self.at_separator() or token.sort != "word" or token.text in self.stop_words or token.text in DAY_WORDS

    def fault(self, said: str, remedy: str = "") -> None:
        """Keep a fault of the phrase."""
        self.faults.append(Fault("phrase", said, remedy))
