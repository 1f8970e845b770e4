"""Words of a phrase that no clause takes: each told with the nearest right word."""

from __future__ import annotations

from collections.abc import Sequence

from setwright.solver.brief.phrase.durations import DAY_NOUNS, HOURS, MINUTES
from setwright.solver.brief.phrase.fixed_clauses import FIXED
from setwright.solver.brief.phrase.lexicon import Kind, key_of
from setwright.solver.brief.phrase.reader import Reader
from setwright.solver.brief.phrase.tokens import DAY_WORDS

_OTHERWISE = "say it in other words or in a brief file"
_LINKS = ("at", "in", "with", "using", "for", "on", "to", "by")
_KNOWN: tuple[Kind, ...] = ("muscle", "group", "kit", "item", "exercise", "caution")


def leftover(r: Reader, leaders: Sequence[str]) -> None:
    """Step over what stands here and keep its fault."""
    if r.peek().sort == "number":
        _number(r)
    elif met := r.met(("muscle", "group", "exercise", "movement", "caution")):
        r.at += met.length
        remedy = _use_of(met.kind, met.text)
        if met.kind == "movement" and r.lexicon.find(key_of(met.text), ("caution",)):
            remedy = f"write caution {met.text} for the joint or must {met.text} for the movement"
        r.fault(f"'{met.text}' stands alone", remedy)
    else:
        _words(r, leaders)


def _use_of(kind: Kind, text: str) -> str:
    """How a word of this kind is used."""
    if kind in ("muscle", "group"):
        return f"write grow {text}, hold {text}, no {text} or {text} at most 8 sets"
    if kind == "exercise":
        return f"write pin {text}, avoid {text}, like {text} or dislike {text}"
    return f"write must {text}" if kind == "movement" else f"write caution {text}"


def _number(r: Reader) -> None:
    """A number that nothing takes, with the word after it; the rest of its clause is passed over."""
    start = r.at
    word = r.peek(1).text if r.peek(1).sort == "word" else ""
    r.at += 2 if word else 1
    text = r.written(start)
    near = r.lexicon.near(word, (), (*DAY_NOUNS, *MINUTES, *HOURS)) if word else None
    if word in (*MINUTES, *HOURS, *DAY_NOUNS) or not near:
        r.fault(f"'{text}' is not understood", "write for example 3 days x 40 min")
    else:
        r.fault(f"'{text}' is not understood", f"did you mean '{r.tokens[start].text} {near}'?")
    _to_separator(r)


def _to_separator(r: Reader) -> None:
    """Pass over the rest of a clause, so that one wrong word is told once."""
    while not r.done and not r.separator():
        r.at += 1


def _words(r: Reader, leaders: Sequence[str]) -> None:
    lead = r.at
    if r.take_any(_LINKS):
        r.take_any(("a", "an", "the", "my"))
        if r.done or r.separator() or r.peek().sort != "word" or r.peek().text in r.stops:
            if r.peek().sort != "word":
                _to_separator(r)
            r.fault(f"'{r.written(lead)}' is not understood", _OTHERWISE)
            return
    start = r.at
    text = r.unknown()
    fixed = tuple(" ".join(words) for words in FIXED)
    known = (*leaders, *fixed, *DAY_WORDS, *DAY_NOUNS, *MINUTES[:4], *HOURS[1:])
    near = r.lexicon.near(text, _KNOWN, known)
    first = r.tokens[start].text
    if near is None and first != text:
        near = r.lexicon.near(first, (), known)
        if near is not None:
            text = first
            r.at = start + 1
    if near is None and r.tokens[lead].text == "for":
        remedy = "the goals are growth, efficiency and balanced"
    else:
        remedy = f"did you mean {near!r}?" if near else _OTHERWISE
    if near in DAY_WORDS:
        _to_separator(r)
    r.fault(f"'{text}' is not understood", remedy)
