"""The clauses that name the days: counts, weekdays, minutes and themes."""

from __future__ import annotations

from typing import Any

from setwright.solver.brief.defaults import LIMITS, WEEKDAYS
from setwright.solver.brief.phrase.draft import Said
from setwright.solver.brief.phrase.durations import DAY_NOUNS, at_duration, take_minutes
from setwright.solver.brief.phrase.place_clauses import Place, take_place
from setwright.solver.brief.phrase.reader import Reader

_TIMES = {"once": 1, "twice": 2, "thrice": 3}
_LINKS = ("x", "by", "of", "at", "for")
_EACH = (("each",), ("a", "day"), ("a", "session"), ("a", "time"), ("per", "day"), ("per", "session"))
_WEEKLY = (("a", "week"), ("per", "week"), ("every", "week"), ("each", "week"), ("weekly",))
_THEMES: dict[tuple[str, ...], str] = {
    ("full", "body"): "full-body",
    ("whole", "body"): "full-body",
    ("upper", "body"): "upper",
    ("lower", "body"): "lower",
    ("upper",): "upper",
    ("lower",): "lower",
    ("push",): "push",
    ("pull",): "pull",
    ("arms",): "arms",
}
_NOT_A_THEME = ("reps", "rep", "back", "traps", "at", "on", "ups", "up", "up's")


class Days:
    """The day clauses of one phrase, put together when all are read."""

    def __init__(self) -> None:
        self.counted: list[dict[str, Any]] = []
        self.named: list[tuple[list[dict[str, Any]], Place | None]] = []


def days_clause(r: Reader, said: Said, days: Days) -> bool:
    """Read one clause of days if one stands here."""
    if r.weekday() or (r.peek().text in ("on", "every") and r.weekday(1)):
        return _named(r, said, days)
    start = r.at
    if r.take("daily") or r.take("every", "day"):
        return _counted(r, said, days, start, 7)
    if word := r.take_any(_TIMES):
        return _counted(r, said, days, start, _TIMES[word])
    if r.number() is not None and _leads_days(r):
        count = r.number() or 0
        r.at += 1
        return _counted(r, said, days, start, count)
    if at_duration(r):
        return _reversed(r, said, days, start)
    return False


def _leads_days(r: Reader) -> bool:
    """Whether the number here counts days: `3 days`, `3 x 40`, `3 x a week`, `three 40 minute sessions`."""
    if r.peek(1).text in DAY_NOUNS or r.peek(1).text in ("x", "by"):
        return True
    return r.number(1) is not None and at_duration(r, 1) and r.peek(3).text in DAY_NOUNS


def _counted(r: Reader, said: Said, days: Days, start: int, count: float) -> bool:
    linked = _take_links(r)
    theme = take_theme(r)
    linked = _take_links(r) or linked
    _skip_to_minutes(r)
    minutes = take_minutes(r, feasibility_only=linked)
    if minutes is None:
        text = r.written(start)
        r.fault(f"'{text}' does not say for how many minutes", "write for example 3 days x 40 min")
        return True
    _close(r)
    theme = theme or take_theme(r)
    _add_counted(r, days, count, minutes, theme)
    place = take_place(r)
    if place:
        place.into(said)
    return True


def _reversed(r: Reader, said: Said, days: Days, start: int) -> bool:
    """Minutes first: `40 min x 3 days`."""
    minutes = take_minutes(r, feasibility_only=False)
    _close(r)
    r.take_any(_LINKS)
    if r.separator() and r.number(1) is not None and r.peek(2).text in DAY_NOUNS:
        r.skip_separators()
    count = r.number()
    if count is not None and r.peek(1).text in DAY_NOUNS:
        r.at += 2
    elif word := r.take_any(_TIMES):
        count = _TIMES[word]
    else:
        r.fault(f"'{r.written(start)}' does not say on how many days", "write for example 3 days x 40 min")
        return True
    _close(r)
    _add_counted(r, days, count, minutes or 0, take_theme(r))
    return True


def _add_counted(r: Reader, days: Days, count: float, minutes: int, theme: str | None) -> None:
    low, high = LIMITS["days"]
    if count != int(count) or not low <= count <= high:
        r.fault(f"got {count:g} days, expected a whole number from {low:g} to {high:g}")
        return
    days.counted.extend(_row(None, minutes, theme) for _ in range(int(count)))


def _named(r: Reader, said: Said, days: Days) -> bool:
    start = r.at
    found: list[tuple[str, str | None]] = []
    while True:
        if r.peek().text in ("on", "every") and r.weekday(1):
            r.at += 1
        first = r.weekday()
        if first is None:
            break
        r.at += 1
        if (r.peek().sort == "range" or r.sees("to")) and (last := r.weekday(1)):
            r.at += 2
            found.extend((day, None) for day in _between(first, last))
        else:
            theme = take_theme(r)
            if theme is None:
                _tell_mistyped_theme(r)
            found.append((first, theme))
        _skip_to_weekday(r)
    _skip_to_minutes(r)
    r.take_any(_LINKS)
    minutes = take_minutes(r, feasibility_only=True)
    if minutes is None:
        r.fault(f"'{r.written(start)}' does not say for how many minutes", "write for example mon wed 40 min")
        return True
    _close(r)
    theme = take_theme(r)
    rows = [_row(day, minutes, own or theme) for day, own in found]
    days.named.append((rows, take_place(r)))
    return True


def _row(weekday: str | None, minutes: int, theme: str | None) -> dict[str, Any]:
    row: dict[str, Any] = {"weekday": weekday, "minutes": minutes, "focus": theme}
    return {field: value for field, value in row.items() if value is not None}


def _between(first: str, last: str) -> tuple[str, ...]:
    """The weekdays from one to another, past Sunday if need be."""
    start, end = WEEKDAYS.index(first), WEEKDAYS.index(last)
    count = (end - start) % 7 + 1
    return tuple(WEEKDAYS[(start + step) % 7] for step in range(count))


def _skip_to_weekday(r: Reader) -> None:
    """Step over separators when another weekday follows them."""
    start = r.at
    r.skip_separators()
    if not r.weekday() and not (r.peek().text in ("on", "every") and r.weekday(1)):
        r.at = start


def _skip_to_minutes(r: Reader) -> None:
    start = r.at
    if r.skip_separators() and not (at_duration(r) and r.peek(2).text not in ("x", "by")):
        r.at = start


def _take_links(r: Reader) -> bool:
    """Step over `days`, `a week`, `x` and the like; whether a word linking a count to minutes was there."""
    linked = False
    while True:
        if r.take_any(_LINKS):
            linked = True
        elif not (r.take_any(DAY_NOUNS) or any(r.take(*words) for words in _WEEKLY)):
            return linked


def _close(r: Reader) -> None:
    """Step over `each`, `a session`, `a week` after the minutes."""
    r.take_any(DAY_NOUNS)
    while any(r.take(*words) for words in (*_WEEKLY, *_EACH)):
        pass


def _tell_mistyped_theme(r: Reader) -> None:
    """Keep the fault of a word between a weekday and its minutes that is no theme."""
    word = r.peek()
    if word.sort != "word" or r.separator() or r.weekday() or word.text in (*_LINKS, *DAY_NOUNS, "on", "every"):
        return
    if r.number() is not None or at_duration(r) or not at_duration(r, 1):
        return
    r.at += 1
    patterns = tuple(" ".join(words) for words in _THEMES)
    near = r.lexicon.near(word.text, (), patterns)
    remedy = f"did you mean {near!r}?" if near else f"choose one of {', '.join(dict.fromkeys(_THEMES.values()))}"
    r.fault(f"'{word.text}' is not the theme of a day", remedy)


def take_theme(r: Reader) -> str | None:
    """The theme of a day if one stands here."""
    for words, theme in _THEMES.items():
        if r.sees(*words) and r.peek(len(words)).text not in _NOT_A_THEME:
            r.at += len(words)
            return theme
    return None
