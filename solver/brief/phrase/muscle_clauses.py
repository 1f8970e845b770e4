"""The clauses about muscles: `grow`, `hold`, limits of weekly sets, days."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from typing import Any

from setwright.solver.brief.phrase.draft import Said
from setwright.solver.brief.phrase.lexicon import ALL_KINDS, KIND_NAMES, Kind
from setwright.solver.brief.phrase.reader import Met, Reader

MUSCLES: tuple[Kind, ...] = ("muscle", "group")
_SETS = ("sets", "set")
_DAYS = ("days", "day")
_MOST = (("at", "most"), ("up", "to"), ("no", "more", "than"))
_LEAST = (("at", "least"), ("no", "less", "than"), ("no", "fewer", "than"))
_AFTER_A_NAME = ("on", "at", "to", "up", "with", "for", "by")
_EACH_WEEK = (("a", "week"), ("per", "week"), ("weekly",))


def emphasis_clause(r: Reader, said: Said, emphasis: str, word: str) -> None:
    """Read the muscles after `grow`, `hold` and the like, each with its limits if it has any."""
    for met in names(r, MUSCLES, word, "a muscle or group"):
        said.muscle(met.id, emphasis=emphasis, **limits(r))


def limit_clause(r: Reader, said: Said) -> bool:
    """Read `chest at most 8 sets` if it stands here."""
    start = r.at
    met = r.take_met(MUSCLES)
    if met is None:
        return False
    before = len(r.faults)
    asked = limits(r)
    if not asked and len(r.faults) == before:
        r.at = start
        return False
    said.muscle(met.id, **asked)
    return True


def names(r: Reader, kinds: Sequence[Kind], word: str, wanted: str, most: int = 99) -> Iterator[Met]:
    """The names of a list as they are read: `and` always continues it, a comma only before a name without a limit."""
    first = True
    while first or _continues(r, kinds):
        r.take_any(("the", "my", "a", "for"))
        met = r.met(kinds)
        if met is None or _runs_on(r, met, kinds):
            _wrong_name(r, kinds, word, wanted, known_start=met is not None)
            return
        r.at += met.length
        yield met
        first = False


def _runs_on(r: Reader, met: Met, kinds: Sequence[Kind]) -> bool:
    """Whether the name is only the start of a longer one, mistyped: `bench pres`."""
    following = r.peek(met.length)
    if following.sort != "word" or r.separator(met.length) or r.weekday(met.length):
        return False
    if following.text in (*r.stops, *_AFTER_A_NAME) or r.met(ALL_KINDS, met.length):
        return False
    start = r.at
    r.at += met.length
    r.unknown()
    text = r.written(start)
    r.at = start
    return r.lexicon.near(text, kinds) is not None


def _continues(r: Reader, kinds: Sequence[Kind]) -> bool:
    """Step over the separator if the list goes on after it."""
    start = r.at
    joined = False
    while not r.done and r.separator():
        joined = joined or r.peek().sort == "word" or r.peek().text in "&+/"
        r.at += 1
    if r.at > start:
        met = r.met(kinds)
        if met and _is_the_longest(r, met) and (joined or not _limited(r, met.length)):
            return True
    r.at = start
    return False


def _is_the_longest(r: Reader, met: Met) -> bool:
    """Whether no longer word of another kind stands here, as in `chest pain`."""
    other = r.met(ALL_KINDS)
    return other is None or other.length <= met.length


def _limited(r: Reader, ahead: int) -> bool:
    """Whether a limit follows a name."""
    phrases = (*_MOST, *_LEAST)
    if any(r.sees(*words, ahead=ahead) for words in phrases):
        return True
    return r.number(ahead) is not None or (r.sees("on", ahead=ahead) and r.number(ahead + 1) is not None)


def _wrong_name(r: Reader, kinds: Sequence[Kind], word: str, wanted: str, known_start: bool) -> None:
    """Keep the fault of a name that is missing, of another kind or not known."""
    if r.done or r.separator():
        r.fault(f"'{word}' names nothing, expected {wanted} after it")
        return
    other = None if known_start else r.met(ALL_KINDS)
    if other and other.text not in r.stops:
        r.at += other.length
        r.fault(f"'{other.text}' is {KIND_NAMES[other.kind]}, but '{word}' takes {wanted}")
        return
    text = r.unknown()
    near = r.lexicon.near(text, kinds)
    r.fault(f"'{text}' is not {wanted}", f"did you mean {near!r}?" if near else "")


def limits(r: Reader) -> dict[str, Any]:
    """The limits that stand here: at_least, at_most, days_at_least."""
    found: dict[str, Any] = {}
    while part := _limit(r):
        for field, value in part.items():
            if field in found and found[field] != value:
                said = f"{field.replace('_', ' ')} is said twice: {found[field]:g} and {value:g}"
                r.fault(said, "keep one of the two")
            found.setdefault(field, value)
    return found


def _limit(r: Reader) -> dict[str, Any]:
    """One limit, or nothing and the cursor unmoved."""
    start = r.at
    if start and r.sees("and") and _limited(r, 1) and r.number(1) is None:
        r.at += 1
    if any(r.take(*words) for words in _MOST):
        number = _take_number(r, _SETS)
        return {"at_most": number} if number is not None else _no_number(r, start)
    if any(r.take(*words) for words in _LEAST):
        days = _take_days(r)
        if days is not None:
            return {"days_at_least": days}
        number = _take_number(r, _SETS)
        return {"at_least": number} if number is not None else _no_number(r, start)
    if r.take("on"):
        days = _take_days(r)
        if days is not None:
            return {"days_at_least": days}
    elif r.number() is not None:
        return _band(r)
    r.at = start
    return {}


def _no_number(r: Reader, start: int) -> dict[str, Any]:
    """Keep the fault of a limit without its number and step over it."""
    text = r.written(start)
    r.take_any(_SETS)
    r.fault(f"'{text}' names no number of sets", f"write for example {text} 8 sets")
    return {}


def _take_number(r: Reader, nouns: Sequence[str]) -> float | None:
    number = r.number()
    if number is None:
        return None
    r.at += 1
    r.take_any(nouns)
    _ = any(r.take(*words) for words in _EACH_WEEK)
    return number


def _take_days(r: Reader) -> int | None:
    number = r.number()
    if number is None or r.peek(1).text not in _DAYS or number != int(number):
        return None
    r.at += 2
    _ = any(r.take(*words) for words in _EACH_WEEK)
    return int(number)


def _band(r: Reader) -> dict[str, Any]:
    """`6-10 sets`, `6 to 10 sets` or `8 sets`."""
    low = r.number()
    if r.peek(1).text in _SETS:
        r.at += 2
        found = {"at_least": low, "at_most": low}
    elif (r.peek(1).sort == "range" or r.sees("to", ahead=1)) and r.peek(3).text in _SETS:
        high = r.number(2)
        r.at += 4
        found = {"at_least": low, "at_most": high}
    elif r.peek(1).sort == "range" and r.number(2) is not None:
        text = f"{r.peek().text}-{r.peek(2).text}"
        r.at += 3
        r.fault(f"'{text}' does not say of what", f"write {text} sets")
        return {}
    else:
        return {}
    _ = any(r.take(*words) for words in _EACH_WEEK)
    return found
