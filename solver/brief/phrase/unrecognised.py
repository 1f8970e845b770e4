"""Words of a phrase that no clause takes: each told with the nearest right word."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from typing import Final

from setwright.catalogue.near import suggestion
from setwright.solver.brief.phrase.clauses.fixed_clauses import FIXED
from setwright.solver.brief.phrase.durations import DAY_NOUNS, HOURS, MINUTES
from setwright.solver.brief.phrase.lexicon import Kind, key_of
from setwright.solver.brief.phrase.token_reader import Match, TokenReader
from setwright.solver.brief.phrase.tokens import DAY_WORDS

_OTHERWISE = "say it in other words or in a brief file"
_LINKS = ("at", "in", "with", "using", "for", "on", "to", "by")
_USED_IN_CLAUSES: tuple[Kind, ...] = ("muscle", "group", "exercise", "movement", "caution")
_KNOWN: tuple[Kind, ...] = ("muscle", "group", "kit", "item", "exercise", "caution")


_NOT_HELD: Final[Mapping[str, tuple[str, str]]] = {
    "failure": (
        "is not planned",
        "sets end with 1 or 2 repetitions in reserve; write nothing to failure, or at least 2 RIR",
    ),
    "tempo": ("is not printed", "write the time it takes, for example 5 seconds a rep"),
    "eccentrics": ("are not printed", "write the time they take, for example 5 seconds a rep"),
    "slow": ("says no time", "write it, for example 5 seconds a rep"),
    "rest": (
        "is not understood",
        "write for example rest at most 90 s, rest at least 2 min, short rests or long rests",
    ),
    "rests": (
        "are not understood",
        "write for example rest at most 90 s, rest at least 2 min, short rests or long rests",
    ),
    "rir": ("is not understood", "write for example at least 2 RIR"),
    "exercises": ("is not held", "write for example at most 5 exercises a day, or the lifts to avoid and to like"),
}
"""What a clause speaks of that no brief holds so, with the nearest thing that one does."""


def take_unrecognised(reader: TokenReader, leaders: Sequence[str]) -> None:
    """Step over what no clause takes and keep its fault; `leaders` are the words that begin a clause."""
    if _take_not_held(reader):
        return
    if reader.peek().sort == "number":
        _number(reader)
    elif match := reader.match(_USED_IN_CLAUSES):
        _lone_word(reader, match)
    else:
        _words(reader, leaders)


def _take_not_held(reader: TokenReader) -> bool:
    """Step over a clause about what no brief holds and keep its fault; whether one stood here."""
    start = end = reader.position
    while end < len(reader.tokens) and not reader.at_separator(end - start):
        end += 1
    spoken = next((token.text for token in reader.tokens[start:end] if token.text in _NOT_HELD), None)
    if spoken is None:
        return False
    reader.position = end
    said, remedy = _NOT_HELD[spoken]
    reader.fault(f"'{reader.text_from(start)}' {said}", remedy)
    return True


def _lone_word(reader: TokenReader, match: Match) -> None:
    """A word of the catalogue without the word that says what is asked of it."""
    reader.position += match.length
    remedy = _use_of(match.kind, match.text)
    if match.kind == "movement" and reader.lexicon.find(key_of(match.text), ("caution",)):
        remedy = f"write caution {match.text} for the joint or must {match.text} for the movement"
    reader.fault(f"'{match.text}' stands alone", remedy)


def _use_of(kind: Kind, text: str) -> str:
    """How a word of this kind is used."""
    if kind in ("muscle", "group"):
        return f"write grow {text}, hold {text}, no {text} or {text} at most 8 sets"
    if kind == "exercise":
        return f"write pin {text}, avoid {text}, like {text} or dislike {text}"
    return {
        "kit": f"write at {text}",
        "item": f"write with {text}",
        "movement": f"write must {text}",
        "caution": f"write caution {text}",
    }[kind]


def _number(reader: TokenReader) -> None:
    """A number that nothing takes, with the word after it; the rest of its clause is passed over."""
    start = reader.position
    word = reader.peek(1).text if reader.peek(1).sort == "word" else ""
    reader.position += 2 if word else 1
    text = reader.text_from(start)
    near = reader.lexicon.nearest(word, (), (*DAY_NOUNS, *MINUTES, *HOURS)) if word else None
    if word in (*MINUTES, *HOURS, *DAY_NOUNS) or not near:
        reader.fault(f"'{text}' is not understood", "write for example 3 days x 40 min")
    else:
        reader.fault(f"'{text}' is not understood", f"did you mean '{reader.tokens[start].text} {near}'?")
    _to_separator(reader)


def _to_separator(reader: TokenReader) -> None:
    """Pass over the rest of a clause, so that one wrong word is told once."""
    while not reader.done and not reader.at_separator():
        reader.position += 1


def _words(reader: TokenReader, leaders: Sequence[str]) -> None:
    """Words that are not known, or known ones after a linking word that does not go with them."""
    lead = reader.position
    linked = reader.take_any(_LINKS)
    if linked:
        reader.take_any(("a", "an", "the", "my"))
    if _take_lone_word(reader):
        return
    if linked and (reader.done or reader.at_separator() or _leads_on(reader)):
        if reader.peek().sort != "word":
            _to_separator(reader)
        reader.fault(f"'{reader.text_from(lead)}' is not understood", _OTHERWISE)
        return
    start = reader.position
    text = reader.take_unknown()
    fixed = tuple(" ".join(words) for words in FIXED)
    known = (*leaders, *fixed, *DAY_WORDS, *DAY_NOUNS, *MINUTES[:4], *HOURS[1:])
    near = reader.lexicon.nearest(text, _KNOWN, known)
    first = reader.tokens[start].text
    if near is None and first != text:
        near = reader.lexicon.nearest(first, (), known)
        if near is not None:
            text = first
            reader.position = start + 1
    if near is None and reader.tokens[lead].text == "for":
        remedy = "the goals are growth, efficiency and balanced"
    else:
        remedy = suggestion(near) or _OTHERWISE
    if near in DAY_WORDS:
        _to_separator(reader)
    reader.fault(f"'{text}' is not understood", remedy)


def _take_lone_word(reader: TokenReader) -> bool:
    """Step over a word of the catalogue and keep its fault, unless it only begins a longer unknown text."""
    match = reader.match((*_USED_IN_CLAUSES, "kit", "item"))
    if match is None:
        return False
    start = reader.position
    text = reader.take_unknown()
    reader.position = start
    if len(match.text) < len(text):
        return False
    _lone_word(reader, match)
    return True


def _leads_on(reader: TokenReader) -> bool:
    """Whether what comes next is no word, or one that begins a clause of its own."""
    return reader.peek().sort != "word" or reader.peek().text in reader.stop_words
