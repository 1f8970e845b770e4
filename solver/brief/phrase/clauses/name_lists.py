"""Lists of the catalogue's words: `grow chest and back`, `avoid squat, dips`."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from setwright.catalogue.near import suggestion
from setwright.solver.brief.phrase.clauses.set_limits import at_limit
from setwright.solver.brief.phrase.lexicon import ALL_KINDS, KIND_NAMES, Kind
from setwright.solver.brief.phrase.token_reader import Match, TokenReader

_AFTER_A_NAME = ("on", "at", "to", "up", "with", "for", "by")


def take_names(reader: TokenReader, kinds: Sequence[Kind], word: str, wanted: str) -> Iterator[Match]:
    """The catalogue's words of a list, one by one as they are read; a word of none of the kinds ends it with a fault.

    `and` always continues the list, a comma only before a name without a limit. `word` is the word that began the
    list and `wanted` says in words what belongs in it.
    """
    last: Match | None = None
    while last is None or _continues(reader, kinds, last):
        reader.take_any(("the", "my", "a", "for"))
        match = reader.match(kinds)
        if match is None or _runs_on(reader, match, kinds):
            _fault_wrong_name(reader, kinds, word, wanted, known_start=match is not None)
            return
        reader.position += match.length
        yield match
        last = match


def _runs_on(reader: TokenReader, match: Match, kinds: Sequence[Kind]) -> bool:
    """Whether the name is only the start of a longer one, mistyped: `bench pres`."""
    following = reader.peek(match.length)
    if following.sort != "word" or reader.at_separator(match.length) or reader.weekday(match.length):
        return False
    if following.text in (*reader.stop_words, *_AFTER_A_NAME) or reader.match(ALL_KINDS, match.length):
        return False
    start = reader.position
    reader.position += match.length
    reader.take_unknown()
    text = reader.text_from(start)
    reader.position = start
    return reader.lexicon.nearest(text, kinds) is not None


def _continues(reader: TokenReader, kinds: Sequence[Kind], last: Match) -> bool:
    """Step over the separator if the list goes on after it; after a comma an item is not followed by an exercise."""
    start = reader.position
    joined = False
    while not reader.done and reader.at_separator() and not reader.sees("but"):
        joined = joined or reader.peek().sort == "word" or reader.peek().text in "&+/"
        reader.position += 1
    if reader.position > start and not reader.sees("but"):
        match = reader.match(kinds)
        changes = match is not None and (last.kind, match.kind) == ("item", "exercise")
        if (
            match
            and not (changes and not joined)
            and _is_the_longest(reader, match)
            and (joined or not at_limit(reader, match.length))
        ):
            return True
    reader.position = start
    return False


def _is_the_longest(reader: TokenReader, match: Match) -> bool:
    """Whether no longer word of another kind stands here, as in `chest pain`."""
    other = reader.match(ALL_KINDS)
    return other is None or other.length <= match.length


def _fault_wrong_name(reader: TokenReader, kinds: Sequence[Kind], word: str, wanted: str, known_start: bool) -> None:
    """Keep the fault of a name that is missing, of another kind or not known."""
    if reader.done or reader.at_separator():
        reader.fault(f"'{word}' names nothing, expected {wanted} after it")
        return
    other = None if known_start else reader.match(ALL_KINDS)
    if other and other.text not in reader.stop_words:
        reader.position += other.length
        reader.fault(f"'{other.text}' is {KIND_NAMES[other.kind]}, but '{word}' takes {wanted}")
        return
    text = reader.take_unknown()
    remedy = suggestion(reader.lexicon.nearest(text, kinds)) or reader.lexicon.otherwise(kinds)
    reader.fault(f"'{text}' is not {wanted}", remedy)
