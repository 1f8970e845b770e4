"""The clauses about exercises, equipment, movements, cautions and sport."""

from __future__ import annotations

from typing import Any

from setwright.solver.brief.phrase.clauses.muscle_clauses import MUSCLES, THE_REST
from setwright.solver.brief.phrase.clauses.name_lists import take_names
from setwright.solver.brief.phrase.draft import BriefDraft
from setwright.solver.brief.phrase.lexicon import KIND_NAMES, Kind
from setwright.solver.brief.phrase.token_reader import Match, TokenReader

_EXERCISES: tuple[Kind, ...] = ("exercise",)
_NO: tuple[Kind, ...] = (*MUSCLES, "item", "exercise", "movement")
_AVOIDED: tuple[Kind, ...] = ("exercise", "movement")
_KEPT: tuple[Kind, ...] = ("item", "exercise", "movement")
_LIKED: tuple[Kind, ...] = ("item", "exercise", "movement")
_CAUTIONS: tuple[Kind, ...] = ("caution",)
_JOINTS = ("shoulder", "elbow", "wrist", "hip", "knee", "ankle", "neck")
"""Cautions whose word alone says too little: a movement or a place may be meant."""
EVERY_DAY = ("every day", "both days")
"""What stands for the weekday of a pin until the days are known."""
_HAVING = ("with", "has", "have", "having", "had", "on", "a", "an", "the", "some", "mild")
"""Words before a condition that change nothing of it."""


def no_clause(reader: TokenReader, draft: BriefDraft, word: str) -> None:
    """`no X`: none for a muscle, absent for an item, avoided for an exercise and all that are called like it."""
    if any(reader.take(*words) for words in THE_REST):
        draft.rest = "none"
        return
    if _machines(reader, draft, "without"):
        return
    start, more_items = reader.position, False
    for place, match in enumerate(take_names(reader, _NO, word, "a muscle, an item of equipment or an exercise")):
        more_items = more_items or (place > 0 and match.kind == "item")
        if match.kind in MUSCLES:
            draft.muscle(match.id, emphasis="none")
        elif match.kind == "item":
            draft.add("without", match.id)
        else:
            _add_family(reader, draft, "avoid", match)
    if more_items:
        _ask_how_far_it_goes(reader, word, start)
    _but(reader, draft)


def _ask_how_far_it_goes(reader: TokenReader, word: str, start: int) -> None:
    """Fault `no barbell, dumbbells and bench`: what stands after the comma may be there or not; `or` is clear."""
    between = [token.text for token in reader.tokens[start : reader.position]]
    if "," in between and "or" not in between:
        said = reader.text_from(start)
        first, *others = (part.strip() for part in said.split(","))
        reader.fault(
            f"'{word} {said}' may mean that the last of these are there or that they are not",
            f"write {word} {first} or {' or '.join(others)}, or: {word} {first}, with {', '.join(others)}",
        )


def _but(reader: TokenReader, draft: BriefDraft) -> None:
    """`no squats but goblet squats`: what stands after `but` stays open."""
    start = reader.position
    while not reader.done and reader.at_separator():
        reader.position += 1
    joined = [token.text for token in reader.tokens[start : reader.position]]
    if "but" not in joined or not reader.match(_KEPT):
        reader.position = start
        return
    for match in take_names(reader, _KEPT, "but", "an item of equipment or an exercise"):
        if match.kind == "item":
            draft.remove("without", match.id)
        else:
            for exercise in reader.lexicon.family(match.text, match.kind, match.id):
                draft.remove("avoid", exercise)


def list_clause(reader: TokenReader, draft: BriefDraft, word: str) -> None:
    """`avoid`, `without`, `like`, `dislike` and `single`, each with its list."""
    field, kinds = {
        "without": ("without", ("item", *_AVOIDED)),
        "avoid": ("avoid", _AVOIDED),
        "like": ("like", _LIKED),
        "dislike": ("dislike", _LIKED),
        "single": ("owned.single", ("item",)),
    }[word]
    if word != "single" and _machines(reader, draft, "without" if word == "avoid" else word):
        return
    wanted = " or ".join(KIND_NAMES[kind] for kind in kinds if word == "avoid" or kind != "movement")
    for match in take_names(reader, kinds, word, wanted):
        if match.kind == "movement" or (match.kind == "exercise" and word in ("avoid", "dislike", "without")):
            _add_family(reader, draft, "avoid" if word == "without" else field, match)
        else:
            draft.add(field, match.id)


def _machines(reader: TokenReader, draft: BriefDraft, field: str) -> bool:
    """Read `machines` where it is all that is named, and put every machine in a list; whether it stood here."""
    if not reader.sees("machines") or not (reader.peek(1).text == "" or reader.peek(1).sort == "separator"):
        return False
    reader.position += 1
    for item in reader.lexicon.machines:
        draft.add(field, item)
    return True


def _add_family(reader: TokenReader, draft: BriefDraft, field: str, match: Match) -> None:
    """Put every exercise that the name stands for in a list."""
    for exercise in reader.lexicon.family(match.text, match.kind, match.id):
        draft.add(field, exercise)


def must_clause(reader: TokenReader, draft: BriefDraft, word: str) -> None:
    """`must hinge and row`: movements; what is not one is left as written, for the check of names to fault."""
    reader.take_any(("have", "include", "a"))
    if reader.done or reader.at_separator():
        reader.fault(f"'{word}' names nothing, expected a movement after it")
        return
    while True:
        match = reader.take_match(("movement",))
        draft.add("must", match.id if match else reader.take_unknown())
        start = reader.position
        if not (reader.skip_separators() and reader.match(("movement",))):
            reader.position = start
            return


def pin_clause(reader: TokenReader, draft: BriefDraft, word: str) -> None:
    """`pin X on wed 3 sets with Y`; what follows an unknown exercise still belongs to it."""
    before = len(reader.faults)
    for match in take_names(reader, _EXERCISES, word, "an exercise"):
        pin: dict[str, Any] = {"exercise": match.id}
        while _pin_part(reader, pin):
            pass
        draft.add("pins", pin)
    if len(reader.faults) > before:
        while _pin_part(reader, {}):
            pass


def _pin_part(reader: TokenReader, pin: dict[str, Any]) -> bool:
    """Read one more thing said of a pin, its day, sets or partner; whether one stood here."""
    for every in EVERY_DAY:
        if "day" not in pin and reader.take("on", *every.split()):
            pin["day"] = every
            return True
    ahead = 1 if reader.sees("on") else 0
    if "day" not in pin and (day := reader.weekday(ahead)):
        reader.position += ahead + 1
        pin["day"] = day
        return True
    number = reader.number()
    if "sets" not in pin and number is not None and reader.peek(1).text in ("sets", "set", "x"):
        reader.position += 2
        pin["sets"] = int(number) if number == int(number) else number
        return True
    for words in (("paired", "with"), ("beside",), ("with",)):
        if "pair_with" not in pin and reader.sees(*words) and (match := reader.match(_EXERCISES, len(words))):
            reader.position += len(words) + match.length
            pin["pair_with"] = match.id
            return True
    return False


def caution_clause(reader: TokenReader, draft: BriefDraft, word: str) -> None:
    """`caution knee`, `bad knee`: who said so and when a phrase cannot say."""
    if word == "bad":
        reader.position -= 1
        if not reader.match(_CAUTIONS):
            reader.position += 1
    for match in take_names(reader, _CAUTIONS, word, "a caution"):
        draft.caution(match.id)


def bare_caution(reader: TokenReader, draft: BriefDraft) -> bool:
    """Read a condition said by itself, `pregnant`, `with a hernia` or `knee pain`; whether one stood here.

    A joint alone says too little and is no condition.
    """
    start = reader.position
    while reader.take_any(_HAVING):
        pass
    if _take_condition(reader, draft):
        while reader.at_separator() and (joint := reader.match(_CAUTIONS, 1)) and _stands_to_the_end(reader, joint):
            reader.position += 1 + joint.length
            draft.caution(joint.id)
        return True
    reader.position = start
    return False


def _stands_to_the_end(reader: TokenReader, joint: Match) -> bool:
    """Whether `and shoulder` after `bad knee` is one more of the same: the joint alone, joined by a word."""
    joined = reader.peek().sort == "word" or reader.peek().text in "&+/"
    ahead = 1 + joint.length
    return joined and joint.id in _JOINTS and (reader.peek(ahead).text == "" or reader.at_separator(ahead))


def _take_condition(reader: TokenReader, draft: BriefDraft) -> bool:
    """Step over a condition; whether one stood here."""
    match = reader.match(_CAUTIONS)
    if match is None or (match.length == 1 and match.text == match.id and match.id in _JOINTS):
        return False
    other = reader.match((*MUSCLES, "exercise", "item", "kit"))
    if other and other.length >= match.length:
        return False
    reader.position += match.length
    draft.caution(match.id)
    return True


def sport_clause(reader: TokenReader, draft: BriefDraft, word: str) -> None:
    """`sport football on tue lower`: the words up to the weekday are its name."""
    start = reader.position
    while not reader.done and not reader.at_separator() and not reader.weekday() and not reader.sees("on"):
        reader.position += 1
    name = reader.text_from(start)
    found = False
    regions: list[str] = []
    reader.take("on")
    days: list[str] = []
    while day := reader.weekday():
        reader.position += 1
        days.append(day)
        found = True
        if reader.at_separator() and reader.weekday(1) and reader.number(2) is None:
            reader.position += 1
    while region := reader.take_any(("lower", "push", "pull")):
        regions.append(region)
        if reader.peek(1).text in ("lower", "push", "pull"):
            reader.take("and")
    name = name or (word if found else "")
    if not found:
        text = f"{word} {name}".strip()
        reader.fault(f"'{text}' does not say on which day", "write sport football on tue lower")
    for day in days if name else []:
        draft.add("other", {"weekday": day, "name": name, **({"regions": regions} if regions else {})})
