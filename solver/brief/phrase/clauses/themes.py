"""The theme of a day in a phrase: upper, lower, push, pull, arms or the full body."""

from __future__ import annotations

from setwright.catalogue.near import suggestion
from setwright.solver.brief.phrase.durations import DAY_NOUNS, at_duration
from setwright.solver.brief.phrase.token_reader import TokenReader

LINKS = ("x", "by", "of", "at", "for")
"""The words that link a count of days, or weekdays, to their minutes."""
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
_OF_A_NAMED_DAY = {("legs",): "lower", ("leg", "day"): "lower"}
"""What after a number of days may as well be muscles to grow."""
CYCLES: dict[tuple[str, ...], tuple[str, ...]] = {
    ("push", "pull", "legs", "upper", "lower"): ("push", "pull", "lower", "upper", "lower"),
    ("upper", "lower", "push", "pull", "legs"): ("upper", "lower", "push", "pull", "lower"),
    ("upper", "lower", "full", "body"): ("upper", "lower", "full-body"),
    ("push", "pull", "legs"): ("push", "pull", "lower"),
    ("push", "pull", "lower"): ("push", "pull", "lower"),
    ("upper", "lower"): ("upper", "lower"),
    ("full", "body"): ("full-body",),
    ("whole", "body"): ("full-body",),
    ("ppl",): ("push", "pull", "lower"),
}
"""Themes that the days of a week take in turn, the longest first."""
_NOT_A_THEME = ("reps", "rep", "back", "traps", "at", "on", "ups", "up", "up's")


def take_theme(reader: TokenReader, named: bool = False) -> str | None:
    """Step over the theme of a day; the focus it stands for, or None where no theme stands here.

    `named` says that it is said of a weekday.
    """
    for words, theme in (_THEMES | (_OF_A_NAMED_DAY if named else {})).items():
        if reader.sees(*words) and reader.peek(len(words)).text not in _NOT_A_THEME:
            reader.position += len(words)
            return theme
    return None


def take_cycle(reader: TokenReader) -> tuple[str, ...]:
    """Step over themes that days take in turn, `push pull legs` or `upper/lower split`; none where none stand here."""
    for words, themes in CYCLES.items():
        start = reader.position
        for place, word in enumerate(words):
            if place and not reader.sees(word):
                reader.take_any(("/", ",", "and"))
            if not reader.take(word):
                break
        else:
            reader.take_any(("split", "splits", "sessions", "workouts"))
            if reader.done or reader.at_separator() or at_duration(reader):
                return themes
        reader.position = start
    return ()


def fault_mistyped_theme(reader: TokenReader) -> None:
    """Step over a word between a weekday and its minutes that is no theme, and keep its fault."""
    word = reader.peek()
    if (
        word.sort != "word"
        or reader.at_separator()
        or reader.weekday()
        or word.text in (*LINKS, *DAY_NOUNS, "on", "every")
    ):
        return
    if reader.number() is not None or at_duration(reader) or not at_duration(reader, 1):
        return
    reader.position += 1
    spellings = tuple(" ".join(words) for words in _THEMES)
    near = reader.lexicon.nearest(word.text, (), spellings)
    remedy = suggestion(near) or f"choose one of {', '.join(dict.fromkeys(_THEMES.values()))}"
    reader.fault(f"'{word.text}' is not the theme of a day", remedy)
