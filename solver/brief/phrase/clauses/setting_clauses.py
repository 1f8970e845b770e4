"""The clauses of one number or word: `keep 90 %`, `warm up 5 min`, `rule third-day off`."""

from __future__ import annotations

from setwright.solver.brief.phrase.draft import BriefDraft
from setwright.solver.brief.phrase.durations import take_duration
from setwright.solver.brief.phrase.token_reader import TokenReader


def keep_clause(reader: TokenReader, draft: BriefDraft, word: str) -> None:
    """`keep 90 %`: the share of the stimulus kept when minutes are cut."""
    number = reader.number()
    if number is None or reader.peek(1).text not in ("%", "percent"):
        reader.fault(f"'{word}' takes a share", "write for example keep 90 %")
        return
    reader.position += 2
    draft.set("keep_share", number / 100)


def time_clause(reader: TokenReader, draft: BriefDraft, word: str) -> None:
    """`warm up 5 min` and `spare 3 min`, kept in seconds."""
    field = {"warm": "warm_up", "spare": "spare"}[word]
    name = field.replace("_", " ")
    if word == "warm":
        reader.take("up")
    minutes = take_duration(reader)
    if minutes is None:
        reader.fault(f"'{name}' takes minutes", f"write for example {name} 5 min")
        return
    draft.set(f"clock.{field}", round(60 * minutes))


def rule_clause(reader: TokenReader, draft: BriefDraft, word: str) -> None:
    """`rule spacing off`: an id with off, hard or a cost."""
    start = reader.position
    while reader.peek().sort == "word" and reader.peek().text not in ("off", "hard") and not reader.at_separator():
        reader.position += 1
    name = "-".join(token.text for token in reader.tokens[start : reader.position])
    value: str | float | None = reader.take_any(("off", "hard"))
    if value is None and (number := reader.number()) is not None:
        reader.position += 1
        value = number
    if not name or value is None:
        reader.fault(f"'{word}' takes a rule's id and off, hard or a cost", "write for example rule third-day off")
        return
    draft.set(f"rules.{name}", value)
