"""The clauses that are always the same words, with the field and value each one sets."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Final

from setwright.solver.brief.phrase.draft import BriefDraft
from setwright.solver.brief.phrase.token_reader import TokenReader

Words = tuple[str, ...]


def _table(rows: Mapping[tuple[str, str | bool], str]) -> dict[Words, tuple[str, str | bool]]:
    """The rows turned round: each spelling to its field and value."""
    return {tuple(words.split()): field for field, line in rows.items() for words in line.split("|")}


FIXED: Final = _table(
    {
        ("goal", "growth"): (
            "growth|for growth|most growth|for most growth|goal growth|max growth|maximum growth|maximal growth|"
            "maximise growth|maximize growth"
        ),
        ("goal", "efficiency"): (
            "efficiency|efficient|for efficiency|goal efficiency|pressed for time|short of time|in a hurry|"
            "time efficient|efficiently|short on time|to save time|little time"
        ),
        ("goal", "balanced"): "balanced|for balanced|goal balanced|for balance",
        ("client.experience", "novice"): (
            "novice|beginner|a novice|a beginner|for a novice|for a beginner|first time in a gym|new to the gym|"
            "new to lifting|new to training|i am a beginner|i'm a beginner|as a beginner|a total beginner"
        ),
        ("client.experience", "intermediate"): "intermediate",
        ("client.experience", "advanced"): "advanced",
        ("client.trains_alone", True): "alone|trains alone|train alone|training alone|lifts alone",
        ("client.unit", "kg"): "kg|in kg",
        ("client.unit", "lb"): "lb|in lb|lbs|pounds|in pounds",
        ("owned.busy", True): "busy|peak hour|peak hours|at peak hour|at peak hours",
        ("owned.safeties", True): "safeties|with safeties",
        ("pairs", True): "pairs|paired sets|with pairs|with paired sets|supersets|with supersets|superset everything",
        ("pairs", False): "no pairs|no paired sets|without pairs|no supersets|without supersets",
        ("techniques", True): "techniques|with techniques|with drop sets|drop sets",
        ("techniques", False): "no techniques|without techniques|no drop sets|straight sets only",
        ("reps", "lower"): "lower reps",
        ("reps", "usual"): "usual reps",
        ("reps", "higher"): "higher reps",
        ("dose", "minimum"): "minimum dose|minimal dose",
        ("dose", "usual"): "usual dose",
        ("any_order", True): "any order|in any order",
    }
)
PLAIN: Final = frozenset(
    tuple(words.split())
    for line in (
        "hypertrophy|for hypertrophy|muscle growth|for muscle growth|muscle building|build muscle|to build muscle",
        "gain muscle|to gain muscle|train|i train|i can train|i want to train",
        "female|male|woman|man|a woman|a man",
    )
    for words in line.split("|")
)
"""What every plan is for, and words that ask for nothing."""
_LONGEST = max(len(words) for words in (*FIXED, *PLAIN))


OTHER_AIMS: Final = frozenset(
    tuple(words.split())
    for line in (
        "strength|for strength|get strong|get stronger|to get stronger|powerlifting|endurance|cardio|conditioning",
        "lose weight|to lose weight|fat loss|for fat loss|weight loss|for weight loss",
    )
    for words in line.split("|")
)
"""What people train for and these weeks do not."""


def other_aim(reader: TokenReader) -> bool:
    """Keep the fault of an aim that these weeks are not for; whether one stood here."""
    for length in range(4, 0, -1):
        words = tuple(reader.peek(ahead).text for ahead in range(length))
        if words in OTHER_AIMS:
            start = reader.position
            reader.position += length
            reader.fault(f"'{reader.text_from(start)}' is not what these weeks are for", "they are for muscle growth")
            return True
    return False


def fixed_clause(reader: TokenReader, draft: BriefDraft) -> bool:
    """Read the longest fixed clause that stands here; whether any did."""
    for length in range(_LONGEST, 0, -1):
        words = tuple(reader.peek(ahead).text for ahead in range(length))
        if words in FIXED:
            reader.position += length
            draft.set(*FIXED[words])
            return True
        if words in PLAIN:
            reader.position += length
            return True
    return False


def rest_between(reader: TokenReader, draft: BriefDraft) -> bool:
    """Read `2 rest days between`; whether it stood here."""
    start = reader.position
    reader.take("with")
    number = reader.number()
    if number is not None and reader.sees("rest", ahead=1) and reader.peek(2).text in ("day", "days"):
        reader.position += 3
        reader.take("between")
        if number != int(number):
            reader.fault(f"got {number:g} rest days between sessions, expected a whole number")
        draft.set("rest_days_between", int(number))
        return True
    reader.position = start
    return False
