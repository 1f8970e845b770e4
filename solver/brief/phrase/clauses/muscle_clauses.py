"""The clauses about muscles: `grow`, `hold` and the like, and limits of weekly sets."""

from __future__ import annotations

from setwright.solver.brief.phrase.clauses.name_lists import take_names
from setwright.solver.brief.phrase.clauses.set_limits import at_limit, take_limits
from setwright.solver.brief.phrase.draft import BriefDraft
from setwright.solver.brief.phrase.lexicon import Kind
from setwright.solver.brief.phrase.token_reader import TokenReader

THE_REST = (("the", "rest"), ("rest",), ("everything", "else"), ("all", "else"), ("all", "others"), ("the", "others"))
MUSCLES: tuple[Kind, ...] = ("muscle", "group")


def emphasis_clause(reader: TokenReader, draft: BriefDraft, emphasis: str, word: str) -> None:
    """Read the muscles after `grow`, `hold` and the like, each with its limits if it has any; or `the rest`."""
    if any(reader.take(*words) for words in THE_REST):
        draft.rest = emphasis
        return
    start = reader.position
    for match in take_names(reader, MUSCLES, word, "a muscle or group"):
        draft.muscle(match.id, emphasis=emphasis, **take_limits(reader))
    if any(token.text == "or" for token in reader.tokens[start : reader.position]):
        said = reader.text_from(start)
        reader.fault(f"'{word} {said}' leaves open which it is", "name one of them, or write and for both")


def sets_clause(reader: TokenReader, draft: BriefDraft) -> bool:
    """Read `10 sets of chest`, `at least 8 sets for back`; whether it stood here."""
    start, before = reader.position, len(reader.faults)
    if not at_limit(reader) or not any(token.text in ("set", "sets") for token in reader.tokens[start : start + 6]):
        return False
    asked = take_limits(reader)
    reader.take_any(("of", "for", "on"))
    if match := asked and reader.take_match(MUSCLES):
        reader.take("a", "week") or reader.take("per", "week") or reader.take("weekly")
        draft.muscle(match.id, **asked)
        return True
    reader.position = start
    del reader.faults[before:]
    return False


def _take_trailing(reader: TokenReader) -> bool:
    """Step over `focus` or `first` after a muscle; whether it stood there and ended the clause."""
    if reader.peek().text in ("focus", "first", "priority", "emphasis") and (
        reader.peek(1).text == "" or reader.at_separator(1)
    ):
        reader.position += 1
        return True
    return False


def limit_clause(reader: TokenReader, draft: BriefDraft) -> bool:
    """Read `chest at most 8 sets`, `chest twice a week` or `glutes and hamstrings focus`; whether it stood here."""
    start = reader.position
    match = reader.take_match(MUSCLES)
    if match is None:
        return False
    before = len(reader.faults)
    if _take_trailing(reader):
        draft.muscle(match.id, emphasis="priority")
        return True
    if reader.at_separator() and not reader.sees("or") and (second := reader.match(MUSCLES, 1)):
        at = reader.position
        reader.position += 1 + second.length
        if _take_trailing(reader):
            draft.muscle(match.id, emphasis="priority")
            draft.muscle(second.id, emphasis="priority")
            return True
        reader.position = at
    asked = take_limits(reader)
    if not asked and len(reader.faults) == before:
        reader.position = start
        return False
    draft.muscle(match.id, **asked)
    return True
